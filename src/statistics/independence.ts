/** Whether values in their order hang together: one long after another long one. */
import { median } from 'simple-statistics'
import type { ChiSquareTest } from './dispersion.js'
import { chiSquareAbove, normalBeyond } from './tails.js'

/**
 * Autocorrelations at lags 1 to `lags`, which are fewer than the values, of values that are not all alike: sums of products over the sum of squares,
 * all about the one mean. Box, Jenkins & Reinsel, Time Series Analysis, sec. 2.1 (from memory). NaN where all are alike.
 */
export function autocorrelations(values: readonly number[], lags: number): number[] {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length
  const from = values.map((value) => value - mean)
  const squares = from.reduce((sum, each) => sum + each * each, 0)
  return Array.from({ length: lags }, (_, index) => {
    let products = 0
    for (let at = index + 1; at < from.length; at++) products += from[at]! * from[at - index - 1]!
    return products / squares
  })
}

/**
 * Whether values are correlated with those before them, up to `lags` back: n (n + 2) sum r_k^2 / (n - k). Ljung & Box, Biometrika 65 (1978) 297-303 (from
 * memory). Null where there are not more values than lags and one, or all are alike.
 */
export function ljungBox(values: readonly number[], lags: number): ChiSquareTest | null {
  const n = values.length
  if (n <= lags + 1 || values.every((value) => value === values[0])) return null
  const statistic = autocorrelations(values, lags).reduce(
    (sum, r, index) => sum + (n * (n + 2) * r * r) / (n - index - 1),
    0,
  )
  return { statistic, degreesOfFreedom: lags, pValue: chiSquareAbove(statistic, lags) }
}

/** Runs of values on one side of their median. */
export interface Runs {
  runs: number
  expected: number
  /** How many lie above and below; those on it count for nothing. */
  above: number
  below: number
  /** Standard normal where the order is chance; below 0 there are fewer, longer runs. */
  statistic: number
  /** Two-sided. */
  pValue: number
}

/**
 * Runs above and below the median. Wald & Wolfowitz, Annals of Mathematical Statistics 11 (1940) 147-162 (from memory), without
 * correction for continuity. Null where fewer than two lie on either side.
 */
export function runsAboutMedian(values: readonly number[]): Runs | null {
  if (values.length === 0) return null
  const middle = median(values as number[])
  const sides = values.filter((value) => value !== middle).map((value) => value > middle)
  const above = sides.filter(Boolean).length
  const below = sides.length - above
  if (above < 2 || below < 2) return null
  const runs = sides.filter((side, index) => side !== sides[index - 1]).length
  const [n, product] = [sides.length, 2 * above * below]
  const expected = 1 + product / n
  const statistic = (runs - expected) / Math.sqrt((product * (product - n)) / (n * n * (n - 1)))
  return { runs, expected, above, below, statistic, pValue: normalBeyond(statistic) }
}
