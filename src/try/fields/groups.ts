/** All fields of a scenario in groups: its pieces, its cases, and what holds for the whole line. */

import { bareOf } from '../../manual/schema-keys.js'
import { casesFile, namesFile } from '../../scenario/cases-file.js'
import { isMap } from '../../scenario/is-map.js'
import { scenarioSchema } from '../../scenario/schema.js'
import { child, definition, type Schema } from '../../scenario/walk.js'
import { suited } from '../draft/steps.js'
import type { Tree } from '../draft/yaml-text.js'
import type { FieldGroup } from './field.js'
import { fieldsOf, type Part } from './fields-of.js'
import { type Says, saysOnce } from './leaf.js'

/** Parts of the file that are maps of one thing, with their titles, in the order in which they are shown. */
const parts: Readonly<Record<string, string>> = {
  tape: 'Tape',
  shift: 'Shift',
  money: 'Costs',
  closure: 'Closure',
  site: 'Site',
  study: 'Study',
}

/** Parts of the file that hold things by name, with what one of these is called. */
const named: Readonly<Record<string, string>> = {
  line: 'Piece',
  arrivals: 'Arrivals',
  cases: 'Case',
  crew: 'Crew',
}

/** Keys of the file that are no fields of a line, and why. */
export const noFields: Readonly<Record<string, string>> = {
  size: 'choices and promises of `tapeshift size`: another question',
  variants: 'other designs, which are changed in the text',
}

/** Which names a key takes, and of what. */
const takesNames: Readonly<Record<string, keyof typeof named>> = {
  ...{ to: 'line', 'rejects-to': 'line', 'right-of-way': 'line', 'stands-at': 'line' },
  ...{ of: 'line', full: 'line', clear: 'line', by: 'crew', needs: 'crew', case: 'cases' },
}

/** A group before its fields are made. */
interface Planned {
  schema: Schema
  value: unknown
  at: readonly string[]
  title: string
  /** Keys that are no fields. */
  without: readonly string[]
}

/** The groups of a scenario, those of parts that are not given too; `told` is kept by who asks often. */
export const groupsOf = (tree: Tree, told: Says = saysOnce()): FieldGroup[] =>
  plannedOf(tree).map((each) => groupOf(each, tree, told))

/** The group at a path; null where there is none. */
export function groupAt(tree: Tree, path: string, told: Says = saysOnce()): FieldGroup | null {
  const planned = plannedOf(tree).find(({ at }) => at.join('.') === path)
  return planned ? groupOf(planned, tree, told) : null
}

/** Paths and titles of all groups. */
export const groupTitles = (tree: Tree): { path: string; title: string }[] =>
  plannedOf(tree).map(({ at, title }) => ({ path: at.join('.'), title }))

const partOf = (key: string): Schema => child(scenarioSchema, key)!

function plannedOf(tree: Tree): Planned[] {
  const shape = definition(scenarioSchema).shape!
  const ofFile = ['title', 'target', 'display']
  return [
    {
      ...{ schema: scenarioSchema, value: tree, at: [], title: 'Line' },
      without: Object.keys(shape).filter((key) => !ofFile.includes(key)),
    },
    ...Object.entries(named).flatMap(([key, title]) => namedGroups(tree, key, title)),
    ...Object.entries(parts).map(([key, title]) => ({
      ...{ schema: partOf(key), value: tree[key], at: [key], title, without: [] },
    })),
  ]
}

function namedGroups(tree: Tree, key: string, title: string): Planned[] {
  if (key === 'cases' && namesFile(tree.cases))
    return [{ schema: casesFile, value: tree.cases, at: ['cases'], title: 'Cases from a file', without: [] }]
  const { valueType } = definition(bareOf(partOf(key)).schema)
  return namesIn(tree, key).map((name) => ({
    ...{ schema: valueType!, value: (tree[key] as Tree)[name], at: [key, name] },
    ...{ title: `${title} ${name}`, without: ['type'] },
  }))
}

const namesIn = (tree: Tree, key: string): string[] => Object.keys(isMap(tree[key]) ? tree[key] : {})

function groupOf({ schema, value, at, title, without }: Planned, tree: Tree, told: Says): FieldGroup {
  const money = isMap(tree.money) ? tree.money : {}
  const ofPieces = namesIn(tree, 'line').map((name) => `line.${name}`)
  const part: Part = {
    ...{ at, of: at, told },
    currency: typeof money.currency === 'string' ? money.currency : 'EUR',
    // only prices and power are given by pieces
    names: ({ steps }) => (steps[0] === 'money' && steps.length === 2 ? ofPieces : []),
    choices: (key) => {
      const of = Object.hasOwn(takesNames, key) && at[0] !== 'cases' ? takesNames[key]! : null
      if (of === null || (of === 'cases' && namesFile(tree.cases))) return []
      return [...namesIn(tree, of), ...(key.endsWith('to') ? ['exit'] : [])]
    },
  }
  const kind = isMap(value) ? definition(suited(schema, value)).shape?.type?.description : undefined
  return {
    ...{ path: at.join('.'), title },
    explanation: kind ?? bareOf(schema).schema.description ?? '',
    fields: fieldsOf(schema, value, part, without),
  }
}
