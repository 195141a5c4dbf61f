/** What a line reports of one shift: named numbers with their unit, and how they are averaged over shifts. */

import type { Level } from '../engine/tally.js'

/** Units that a measure may have, SI. */
export type Unit =
  | 's'
  | 'm'
  | 'kg'
  | 'cases'
  | 'cases/s'
  | 'share'
  | 'count'
  | 'm/case'
  | 'money'
  | 'money/yr'
  | 'rolls'

/**
 * One measure. `mean`: each shift gives a value, the study averages them. `total`: the same for what adds up over the
 * shifts of a campaign, and is divided by their number, as far as they are counted; `count`: a total of whole events. `share`: each shift
 * gives 0 or 1. `ratio`: totals over totals, `value` over `over`.
 */
export interface Measure {
  /** Place in the result document, such as `equipment`, `sealer`, `measures`, `jams`. */
  path: readonly string[]
  label: string
  unit: Unit
  kind: 'mean' | 'total' | 'count' | 'share' | 'ratio'
  /** Reads the shift that has just ended; NaN where the shift says nothing. */
  value: () => number
  /** The denominator of a ratio. */
  over?: () => number
  /** Counts of the events that the figure tells of, such as the stops whose mean time it is: with few of them little is known. */
  restsOn?: readonly (readonly string[])[]
  /** Counts of rare events of which a single one can outweigh all others. */
  upsetBy?: readonly (readonly string[])[]
  /** A rare long stop of any piece moves it by much. */
  isUpset?: boolean
  /** It counts stops that are rare and long: breakdowns, and those that wait out a break. */
  isLongStop?: boolean
  /** Of a ratio: both count cases, some of all, so that it rests on those of the rarer sort. */
  isPart?: boolean
  /** The scenario allows no other value. */
  isFixed?: boolean
}

/** What is told of every place that holds cases. `where` is its words, such as `on infeed`. */
export function heldMeasures(name: string, where: string, level: Level, shareFull: () => number): Measure[] {
  const path = (key: string) => ['equipment', name, 'measures', key]
  const cases = (key: string, words: string, value: () => number): Measure => ({
    path: path(key),
    label: `Cases ${where}, ${words}`,
    unit: 'cases',
    kind: 'mean',
    value,
  })
  return [
    cases('held', 'mean over time', () => level.mean()),
    cases('held-p95', 'not passed in 95 % of the time', () => level.quantile(0.95)),
    { ...cases('held-largest', 'most at one time', () => level.largest), isUpset: true },
    {
      path: path('share-full'),
      label: `Share of time full, ${name}`,
      unit: 'share',
      kind: 'mean',
      value: shareFull,
      isUpset: true,
    },
  ]
}

/** A place whose number of cases is drawn over the shift. */
export interface HeldSeries {
  name: string
  samples: Float64Array
}
