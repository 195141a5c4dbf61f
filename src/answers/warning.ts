/** What must be known before any figure of a study is read: what `check` calls impossible, and prices that are given and cannot be used. */
import type { CheckFinding } from '../hand/finding.js'
import { type Dropped, droppedFix, droppedText } from '../scenario/dropped.js'

/** One line at the head of an answer. */
export interface Warning {
  /** `error`: the line cannot work as described. `warning`: the cost leaves out what is given. */
  severity: 'error' | 'warning'
  /** Of the finding, as `check` has it. */
  code: string
  meaning: string
  /** What the worst finding says. */
  text: string
  fix: string
  /** Findings of this code, and the keys of the worst three. */
  count: number
  paths: string[]
  /** Designs that it is about, in their order; empty where that is the only one, or all. */
  designs: string[]
  /** Of a price: the element of cost that is left out, what is given for it and what is missing. */
  leavesOut?: string
  given?: string[]
  missing?: string[]
  /** Of a price: designs of the study differ in what is left out, so their costs do not say which one is cheaper. */
  differs?: boolean
}

/** A document that has such a head; without one there is nothing of that kind to be known. */
export interface Warned {
  warnings?: Warning[]
}

/** The head as a document has it: none where there is nothing to be known. */
export const headed = (warnings: readonly Warning[] = []): Warned =>
  warnings.length > 0 ? { warnings: [...warnings] } : {}

/** A finding that is an error. */
export interface FoundError extends Pick<CheckFinding, 'path' | 'message' | 'fix' | 'over' | 'others'> {
  code: string
  meaning: string
}

/** What speaks against a design; its name is null where it needs none. */
export interface WarnedDesign {
  name: string | null
  errors: readonly FoundError[]
  dropped: readonly Dropped[]
}

/** Keys that are named of one code. */
const mostPaths = 3

/** The lines at the head: a line for each code of error, whatever their number, then one for each element of cost that is left out. */
export function warningsOf(designs: readonly WarnedDesign[]): Warning[] {
  return [...errorsOf(designs), ...pricesOf(designs)]
}

function errorsOf(designs: readonly WarnedDesign[]): Warning[] {
  const found = designs.flatMap(({ name, errors }) => errors.map((error) => ({ name, ...error })))
  return [...byKey(found, ({ code }) => code)].map(([code, all]): Warning => {
    const worst = [...all].sort((a, b) => (b.over ?? 0) - (a.over ?? 0))
    return {
      severity: 'error',
      code,
      meaning: worst[0]!.meaning,
      text: worst[0]!.message,
      fix: worst[0]!.fix,
      count: all.reduce((sum, { others = 0 }) => sum + 1 + others, 0),
      paths: [...new Set(worst.map(({ path }) => path))].slice(0, mostPaths),
      designs: unlike(all.map(({ name }) => name)),
    }
  })
}

function pricesOf(designs: readonly WarnedDesign[]): Warning[] {
  const all = designs.flatMap(({ name, dropped }) => dropped.map((each) => ({ name, each })))
  return [...byKey(all, ({ each }) => each.leavesOut)].map(([leavesOut, own]): Warning => {
    const { given, missing } = own[0]!.each
    const amounts = designs.map(({ dropped }) =>
      JSON.stringify(dropped.find((each) => each.leavesOut === leavesOut)?.amounts ?? null),
    )
    return {
      severity: 'warning',
      code: 'price-dropped',
      meaning: `no cost counts ${own[0]!.each.words}`,
      text: droppedText(own[0]!.each),
      fix: droppedFix(own[0]!.each),
      count: 1,
      paths: given.slice(0, mostPaths),
      designs: own.length === designs.length ? [] : unlike(own.map(({ name }) => name)),
      leavesOut,
      given,
      missing: missing.map(({ path }) => path),
      differs: new Set(amounts).size > 1,
    }
  })
}

/** All that have one key, under it, in the order of first sight. */
export function byKey<T>(all: readonly T[], keyOf: (each: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>()
  for (const each of all) {
    const group = groups.get(keyOf(each))
    if (group) group.push(each)
    else groups.set(keyOf(each), [each])
  }
  return groups
}

const unlike = (names: readonly (string | null)[]): string[] => [
  ...new Set(names.filter((name) => name !== null)),
]
