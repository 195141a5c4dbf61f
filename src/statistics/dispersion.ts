/** Whether counts spread as those of events do that come one by one, independently and always at the same rate. */
import { bothSides, chiSquareAbove, chiSquareAtMost } from './tails.js'

/** A statistic that is chi-square with its degrees of freedom, at least 1, where nothing is the matter; p-value of as much or more. */
export interface ChiSquareTest {
  statistic: number
  degreesOfFreedom: number
  pValue: number
}

/** Index of dispersion of counts of alike spans. */
export interface Dispersion extends ChiSquareTest {
  mean: number
  /** Sample variance, divisor n - 1. */
  variance: number
}

/**
 * Whether counts of alike spans, two or more and not all 0, vary as those of a Poisson process: (n - 1) variance / mean against chi-square with
 * n - 1. The p-value is two-sided: above, events come in bunches; below, more evenly than by chance. Cox & Lewis, The Statistical
 * Analysis of Series of Events (1966), sec. 6.3 (from memory). Null where it cannot be said.
 */
export function dispersion(counts: readonly number[]): Dispersion | null {
  const n = counts.length
  const mean = counts.reduce((sum, count) => sum + count, 0) / n
  if (n < 2 || mean === 0) return null
  const squares = counts.reduce((sum, count) => sum + (count - mean) ** 2, 0)
  const statistic = squares / mean
  return {
    mean,
    variance: squares / (n - 1),
    statistic,
    degreesOfFreedom: n - 1,
    pValue: bothSides(chiSquareAtMost(statistic, n - 1), chiSquareAbove(statistic, n - 1)),
  }
}

/** Counts of classes against what was expected. */
export interface Classes {
  /** Pearson's sum of (count - expected)^2 / expected. */
  pearson: ChiSquareTest
  /** Twice the logarithm of the likelihood ratio, 2 sum count ln(count / expected). */
  likelihoodRatio: ChiSquareTest
  /** Least of the expected counts: where it is below 5 the p-values are rough (Cochran, Biometrics 10 (1954) 417-451, from memory). */
  leastExpected: number
}

/**
 * Counts of classes, more than `estimated` + 1 of them, against expected ones (above 0, of the same sum) for which so many parameters were estimated from
 * these counts. Null of too few classes.
 */
export function againstExpected(
  counts: readonly number[],
  expected: readonly number[],
  estimated: number,
): Classes | null {
  const degreesOfFreedom = counts.length - 1 - estimated
  if (degreesOfFreedom < 1) return null
  let [pearson, ratio] = [0, 0]
  for (const [index, count] of counts.entries()) {
    const due = expected[index]!
    pearson += (count - due) ** 2 / due
    if (count > 0) ratio += 2 * count * Math.log(count / due)
  }
  // a sum of terms of both signs: rounding must not take it below 0
  const test = (statistic: number): ChiSquareTest => ({
    statistic,
    degreesOfFreedom,
    pValue: chiSquareAbove(Math.max(0, statistic), degreesOfFreedom),
  })
  return { pearson: test(pearson), likelihoodRatio: test(ratio), leastExpected: Math.min(...expected) }
}

/**
 * Whether events come at one rate in all classes, such as hours of the day: their counts against shares of their sum by exposure. Classes without
 * exposure count for nothing. Null where fewer than two classes have any, or nothing happened.
 */
export function againstExposure(counts: readonly number[], exposures: readonly number[]): Classes | null {
  const exposed = counts
    .map((count, index) => ({ count, exposure: exposures[index]! }))
    .filter(({ exposure }) => exposure > 0)
  const events = exposed.reduce((sum, { count }) => sum + count, 0)
  if (events === 0) return null
  const whole = exposed.reduce((sum, { exposure }) => sum + exposure, 0)
  return againstExpected(
    exposed.map(({ count }) => count),
    exposed.map(({ exposure }) => (events * exposure) / whole),
    0,
  )
}
