/** All fields of a scenario in groups: its pieces, its cases, and what holds for the whole line. */

import { bareOf } from '../../manual/schema-keys.js'
import { casesFile, namesFile } from '../../scenario/cases-file.js'
import { isMap } from '../../scenario/is-map.js'
import { scenarioSchema } from '../../scenario/schema.js'
import { child, definition, type Schema } from '../../scenario/walk.js'
import { suited } from '../draft/steps.js'
import type { Tree } from '../draft/yaml-text.js'
import type { FieldGroup } from './field.js'
import { type Common, fieldsOf } from './fields-of.js'
import type { Says } from './leaf.js'

/** Parts of the file that are maps of one thing, with their titles, in the order in which they are shown. */
const parts: Readonly<Record<string, string>> = {
  tape: 'Tape',
  shift: 'Shift',
  money: 'Costs',
  closure: 'Closure',
  site: 'Site',
  study: 'Study',
}

/** Parts of the file that hold things by name. */
const named = ['line', 'arrivals', 'cases', 'crew'] as const

/** Keys of the file that are no fields of a line, and why. */
export const noFields: Readonly<Record<string, string>> = {
  size: 'choices and promises of `tapeshift size`: another question',
  variants: 'other designs, which are changed in the text',
}

/** Which names a key takes, and of what. */
const takesNames: Readonly<Record<string, (typeof named)[number]>> = {
  ...{ to: 'line', 'rejects-to': 'line', 'right-of-way': 'line', 'stands-at': 'line' },
  ...{ of: 'line', full: 'line', clear: 'line', by: 'crew', needs: 'crew', case: 'cases' },
}

/** A group before its fields are made. */
interface Planned {
  schema: Schema
  value: unknown
  at: readonly string[]
  /** Where several are in one room that of the entry, else a title. */
  name: string
  /** Keys that are no fields. */
  without: readonly string[]
}

/** A part of a scenario that has fields of its own: a piece of the line, a kind of case, a crew, or what is for the whole line. */
export interface Part {
  /** `line.sealer`, `tape`; empty of the file itself. */
  path: string
  /** The room it stands in: `line`, `cases`; its own where it is the only one. */
  room: string
  name: string
}

/** The parts of a scenario in the order in which they are shown, those that are not given too. */
export const partsOf = (tree: Tree): Part[] =>
  plannedOf(tree).map(({ at, name }) => ({ path: at.join('.'), room: at[0] ?? '', name }))

/** The fields of the part at a path; null where there is none. `told` is kept by who asks often. */
export function groupAt(tree: Tree, path: string, told: Says): FieldGroup | null {
  const planned = plannedOf(tree).find(({ at }) => at.join('.') === path)
  return planned ? groupOf(planned, tree, told) : null
}

const partOf = (key: string): Schema => child(scenarioSchema, key)!

function plannedOf(tree: Tree): Planned[] {
  return [
    {
      ...{ schema: scenarioSchema, value: tree, at: [], name: 'Target and title' },
      without: [...named, ...Object.keys({ ...parts, ...noFields })],
    },
    ...named.flatMap((key) => namedGroups(tree, key)),
    ...Object.entries(parts).map(([key, name]) => ({
      ...{ schema: partOf(key), value: tree[key], at: [key], name, without: [] },
    })),
  ]
}

function namedGroups(tree: Tree, key: string): Planned[] {
  if (key === 'cases' && namesFile(tree.cases))
    return [{ schema: casesFile, value: tree.cases, at: ['cases'], name: 'Cases from a file', without: [] }]
  const { valueType } = definition(bareOf(partOf(key)).schema)
  return namesIn(tree, key).map((name) => ({
    ...{ schema: valueType!, value: (tree[key] as Tree)[name], at: [key, name] },
    ...{ name, without: ['type'] },
  }))
}

const namesIn = (tree: Tree, key: string): string[] => Object.keys(isMap(tree[key]) ? tree[key] : {})

function groupOf({ schema, value, at, without }: Planned, tree: Tree, told: Says): FieldGroup {
  const money = isMap(tree.money) ? tree.money : {}
  const ofPieces = namesIn(tree, 'line').map((name) => `line.${name}`)
  const part: Common = {
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
    explanation: kind ?? bareOf(schema).schema.description ?? '',
    fields: fieldsOf(schema, value, part, without),
  }
}
