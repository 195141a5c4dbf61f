/** What a line reports of one shift: named numbers with their unit, and how they are averaged over shifts. */

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
  | 'kg/case'
  | 'money'
  | 'rolls'

/**
 * One measure. `mean`: each shift gives a value, the study averages them. `total`: the same for what adds up over the
 * shifts of a campaign, and is divided by their number. `share`: each shift gives 0 or 1. `ratio`: totals over totals,
 * `value` over `over`.
 */
export interface Measure {
  /** Place in the result document, such as `equipment`, `sealer`, `measures`, `jams`. */
  path: readonly string[]
  label: string
  unit: Unit
  kind: 'mean' | 'total' | 'share' | 'ratio'
  /** Reads the shift that has just ended; NaN where the shift says nothing. */
  value: () => number
  /** The denominator of a ratio. */
  over?: () => number
}

/** A place whose number of cases is drawn over the shift. */
export interface HeldSeries {
  name: string
  samples: Float64Array
}
