/** Changes to a scenario by dotted path: of its variants, and of the command line. */

import { parse as parseValue } from 'yaml'
import { isMap } from './is-map.js'
import { name } from './kit.js'
import { shown } from './printable.js'
import { refusal } from './problems.js'
import type { Path } from './walk.js'
import { isWithin } from './within.js'

/** A value by dotted path, and the words for where it came from. */
export interface Change {
  path: string
  value: unknown
  source: string
}

/** One change to the scenario of a file. */
export interface Override extends Change {
  /** Place in the file, for a variant's line. */
  at: Path | null
  /** The piece at `path` is added, or taken out; else the value there is changed. */
  does?: 'add' | 'remove'
}

/** A change as it is written: of a piece that is added or taken out too. */
const written = ({ path, value, does }: Override): [key: string, value: unknown] =>
  does === undefined ? [path, value] : [path.replace('line', does), value]

/** What changes, by what is written for it; pieces that are taken out in one list. */
export function writtenSet(overrides: readonly Override[]): Record<string, unknown> {
  const names = overrides
    .filter(({ does }) => does === 'remove')
    .map(({ path }) => path.slice('line.'.length))
  return Object.fromEntries([
    ...overrides.filter(({ does }) => does !== 'remove').map(written),
    ...(names.length > 0 ? [['remove', names.join(', ')]] : []),
  ])
}

/** What is to be removed, by the name that messages call it: what is no name is shown as it is written. */
const nameOf = (piece: unknown): string =>
  typeof piece === 'object' && piece !== null ? shown(piece) : String(piece)

/** Changes of the command line with those of pieces as what they are: `add.NAME=PIECE`, `remove=NAME` or `remove=[NAME, NAME]`. */
export function ofPieces(override: Override): Override[] {
  const { path, value } = override
  if (path.startsWith('add.'))
    return [{ ...override, path: `line.${path.slice('add.'.length)}`, does: 'add' }]
  if (path !== 'remove') return [override]
  const names: unknown[] = Array.isArray(value) ? value : [value]
  return names.map((each) => ({ ...override, path: `line.${nameOf(each)}`, value: each, does: 'remove' }))
}

/** The override that brought the value at `path`, if any. */
export function originOf(path: Path, overrides: readonly Override[]): Override | undefined {
  const dotted = path.join('.')
  return overrides.findLast((each) => isWithin(dotted, each.path))
}

/** One change written `PATH=VALUE` in the words `source`. */
export function readSet(set: string, source = `--set ${shown(set)}`): Override {
  const cut = set.indexOf('=')
  if (cut <= 0)
    throw refusal(
      source,
      'no-such-path',
      'an override must be PATH=VALUE',
      'such as --set "line.sealer.belt-speed=30 m/min"',
    )
  let value: unknown
  try {
    value = parseValue(set.slice(cut + 1), { maxAliasCount: 0 })
  } catch {
    throw refusal(source, 'not-yaml', 'the value must be YAML', 'put the whole option in quotes')
  }
  return { path: set.slice(0, cut).trim(), value, source, at: null }
}

/** A named set of changes, as it stands in the file or on the command line. */
export interface Changes {
  name: string
  note: string
  overrides: Override[]
}

/** A change up to the next `;`, quoted texts whole. */
const change = /(?:(?<=[\s=:,[{])(?:"(?:[^"\\]|\\.)*"|'(?:[^']|'')*')|[^;])+/g

/** Variants of the command line; one without a name is called by its number. */
export function whatIfsOf(texts: readonly string[], known: readonly Changes[]): Changes[] {
  const taken = new Set(known.map(({ name: each }) => each))
  return texts.map((text, index) => {
    const source = `--what-if ${shown(text)}`
    const [, given, changes = ''] = /^(?:\s*([^:=;.]+?)\s*:)?(.*)$/s.exec(text) ?? []
    const called = given ?? `what-if-${index + 1}`
    const fault = !name.safeParse(called).success
      ? 'a name must begin with a letter and have only letters, digits, spaces, - and _; at most 40'
      : taken.has(called)
        ? `a variant \`${shown(called)}\` exists already`
        : null
    if (fault !== null) throw refusal(source, 'bad-name', fault, 'such as --what-if "wide: tape.width=72 mm"')
    taken.add(called)
    const parts = (changes.match(change) ?? []).filter((each) => each.trim() !== '')
    // one that changes nothing is a slip
    const overrides = (parts.length > 0 ? parts : ['']).flatMap((each) => ofPieces(readSet(each, source)))
    return { name: called, note: '', overrides }
  })
}

export function variantsOf(raw: Record<string, unknown>): Changes[] {
  const { variants } = raw
  return entriesOf(variants).map(([name, variant]) => {
    const { set, note, add, remove } = (isMap(variant) ? variant : {}) as Record<string, unknown>
    const source = `variant ${name}`
    const change = (key: string, place: string | number, path: string, value: unknown): Override => {
      return { path, value, source, at: ['variants', name, key, place] }
    }
    const changes = entriesOf(set).map(([path, value]) => change('set', path, path, value))
    const added = entriesOf(add).map(
      ([piece, value]): Override => ({ ...change('add', piece, `line.${piece}`, value), does: 'add' }),
    )
    const names: unknown[] = Array.isArray(remove) ? remove : []
    const removed = names.map(
      (piece, at): Override => ({ ...change('remove', at, `line.${nameOf(piece)}`, piece), does: 'remove' }),
    )
    return { name, note: typeof note === 'string' ? note : '', overrides: [...added, ...changes, ...removed] }
  })
}

const entriesOf = (value: unknown): [string, unknown][] => (isMap(value) ? Object.entries(value) : [])
