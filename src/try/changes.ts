/** What differs between two texts of a scenario, as the changes that make one of the other: those of `--set` and of variants. */
import { bareOf } from '../manual/schema-keys.js'
import { isMap } from '../scenario/is-map.js'
import type { Override } from '../scenario/overrides.js'
import { scenarioSchema } from '../scenario/schema.js'
import { fillDefaults } from '../scenario/walk.js'
import { changed } from './asked-text.js'
import { isSame } from './draft/differences.js'
import { schemaAt, stepsOf } from './draft/steps.js'
import type { Tree } from './draft/yaml-text.js'

const setting = (path: string, value: unknown): Override => ({ path, value, source: '', at: null })

/** Changes that make `after` of `before`, as short as they can be said; null where none do, as where a part of the file is left out. */
export function changesBetween(before: Tree, after: Tree): Override[] | null {
  const [own, wanted] = [withoutVariants(before), withoutVariants(after)]
  for (const attempt of [ofPieces, ofValues, ofParts]) {
    const changes = attempt(own, wanted)
    if (changes && isMade(own, wanted, changes)) return changes
  }
  return null
}

/** Other designs are no part of this one. */
const withoutVariants = (tree: Tree): Tree =>
  Object.fromEntries(Object.entries(tree).filter(([key, value]) => key !== 'variants' && value !== undefined))

/** Whether the changes bring about what is wanted, defaults written out. */
function isMade(before: Tree, wanted: Tree, changes: readonly Override[]): boolean {
  const made = structuredClone(before)
  return changed(made, structuredClone(changes)) === null && isSame(whole(made), whole(wanted))
}

/** With its defaults, and keys in an order of their own, but for the pieces of the line, whose order says where they stand. */
function whole(tree: Tree): unknown {
  const copy = structuredClone(tree)
  fillDefaults(scenarioSchema, copy)
  const line = isMap(copy.line) ? Object.keys(copy.line) : []
  return [line, sorted(copy)]
}

function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted)
  if (!isMap(value)) return value
  return Object.keys(value)
    .sort()
    .map((key) => [key, sorted(value[key])])
}

/** Single values; null where a whole part of the file is left out. */
const ofValues = (before: Tree, wanted: Tree): Override[] | null => {
  const changes = valuesAt(before, wanted, '', before)
  return changes?.some(({ path }) => path === '') ? null : changes
}

/** Changes below `path`: each value by itself, or the whole of what holds it where that cannot be said. */
function valuesAt(before: unknown, wanted: unknown, path: string, tree: Tree): Override[] {
  if (isSame(before, wanted)) return []
  const all = [setting(path, wanted)]
  if (!isMap(before) || !isMap(wanted)) return all
  const changes: Override[] = []
  for (const key of new Set([...Object.keys(before), ...Object.keys(wanted)])) {
    const inner = path === '' ? key : `${path}.${key}`
    if (isSame(before[key], wanted[key])) continue
    // a name that is new, or a key that has a value only together with others
    if (!Array.isArray(stepsOf(tree, inner))) return all
    const value = wanted[key] ?? usualAt(tree, inner)
    if (value === undefined) return all
    changes.push(...valuesAt(before[key], value, inner, tree))
  }
  return isOneOf(before, wanted) ? all : changes
}

/** What holds where nobody says; undefined where nothing does. */
function usualAt(tree: Tree, path: string): unknown {
  const schema = schemaAt(tree, path)
  return schema ? bareOf(schema).usual : undefined
}

/** Of maps of one key, such as laws, another key is another value. */
const isOneOf = (before: Tree, wanted: Tree): boolean =>
  Object.keys(before).length === 1 && Object.keys(before)[0] !== Object.keys(wanted)[0]

/** Pieces that are added and taken out, and values of those that stay. */
function ofPieces(before: Tree, wanted: Tree): Override[] | null {
  const [line, to] = [before.line, wanted.line]
  if (!isMap(line) || !isMap(to)) return null
  const names = Object.keys(to)
  const added = names
    .filter((name) => !Object.hasOwn(line, name))
    .map((name): Override => {
      const after = names[names.indexOf(name) - 1]
      return { ...setting(`line.${name}`, { after, ...(to[name] as Tree) }), does: 'add' }
    })
  const removed = Object.keys(line)
    .filter((name) => !Object.hasOwn(to, name))
    .map((name): Override => ({ ...setting(`line.${name}`, name), does: 'remove' }))
  if (added.length + removed.length === 0) return null
  const made = structuredClone(before)
  if (changed(made, structuredClone([...added, ...removed])) !== null) return null
  const values = ofValues(made, wanted)
  return values && [...added, ...values, ...removed]
}

/** Whole parts of the file. */
const ofParts = (before: Tree, wanted: Tree): Override[] | null =>
  Object.keys(wanted).flatMap((key) => (isSame(before[key], wanted[key]) ? [] : [setting(key, wanted[key])]))
