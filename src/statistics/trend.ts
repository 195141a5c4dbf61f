/** Whether events come oftener or more seldom as time goes on. Times run from the begin of the record; it ends at a time fixed beforehand. */
import { bothSides, chiSquareAbove, chiSquareAtMost, normalAtMost, normalBeyond } from './tails.js'

/** A test of trend. */
export interface Trend {
  statistic: number
  /** Chance of a statistic as low, or lower, where there is no trend. */
  atMost: number
  /** Two-sided. */
  pValue: number
}

/**
 * Laplace's test of events at `times`, at least one, each between 0 and `end`: the mean of the times against the middle, standard normal where there is no trend. Above 0 they
 * come oftener as time goes on. Cox & Lewis, The Statistical Analysis of Series of Events (1966), sec. 3.3 (from memory).
 */
export function laplace(times: readonly number[], end: number): Trend {
  const beyond = times.reduce((sum, time) => sum + (time - end / 2), 0)
  const statistic = (Math.sqrt(12 * times.length) * beyond) / (times.length * end)
  return { statistic, atMost: normalAtMost(statistic), pValue: normalBeyond(statistic) }
}

/** Sum of ln(end / time): r times the mean of what is exponential where there is no trend. */
const sumOfLogs = (times: readonly number[], end: number): number =>
  times.reduce((sum, time) => sum + Math.log(end / time), 0)

/**
 * Test of a power-law trend for events at `times`, at least one, each above 0 and at most `end`: twice the sum of ln(end / time), chi-square with twice
 * as many degrees of freedom as events where there is no trend. High: they come more seldom as time goes on. MIL-HDBK-189 (1981), as in NIST/SEMATECH
 * e-Handbook of Statistical Methods, sec. 8.2.3.4.
 */
export function powerLawTrend(times: readonly number[], end: number): Trend {
  const statistic = 2 * sumOfLogs(times, end)
  const atMost = chiSquareAtMost(statistic, 2 * times.length)
  return { statistic, atMost, pValue: bothSides(atMost, chiSquareAbove(statistic, 2 * times.length)) }
}

/** Whether gaps grow or shrink with their order. */
export interface OrderTrend {
  /** Pairs in which the later gap is the longer one. */
  reversals: number
  /** Their expected number where there is no trend and no two gaps are alike: a half of all pairs. */
  expected: number
  /** Kendall's tau-b, from -1 to 1: above 0 gaps grow. 0 where all are alike. */
  tau: number
  /** Two-sided; 1 where all gaps are alike. */
  pValue: number
}

/** Gaps up to which the p-value is exact, if no two are alike; beyond, the normal law serves. */
const mostForExact = 50

/**
 * Kendall's tau of two or more gaps against their order, which is the reversal test as well. Kendall, Rank Correlation Methods (1970),
 * ch. 1, 4 and 5 (from memory); NIST/SEMATECH e-Handbook, sec. 8.2.3.4. Of alike gaps the variance is that with ties.
 */
export function orderTrend(gaps: readonly number[]): OrderTrend {
  const n = gaps.length
  const pairs = (n * (n - 1)) / 2
  const { rising, ties } = risingPairs(gaps)
  const tied = ties.reduce((sum, t) => sum + (t * (t - 1)) / 2, 0)
  const expected = pairs / 2
  if (tied === pairs) return { reversals: 0, expected, tau: 0, pValue: 1 }
  const falling = pairs - tied - rising
  const spread = (t: number) => t * (t - 1) * (2 * t + 5)
  const variance = (spread(n) - ties.reduce((sum, t) => sum + spread(t), 0)) / 18
  return {
    reversals: rising,
    expected,
    tau: (rising - falling) / Math.sqrt(pairs * (pairs - tied)),
    pValue:
      tied === 0 && n <= mostForExact
        ? exactOrder(Math.min(rising, falling), n)
        : normalBeyond((rising - falling) / Math.sqrt(variance)),
  }
}

/** Pairs of which the later is the greater, and how many there are of each of the values. Sums over ranks are kept in a tree (Fenwick, 1994). */
function risingPairs(values: readonly number[]): { rising: number; ties: number[] } {
  const distinct = [...new Set(values)].sort((a, b) => a - b)
  const rankOf = new Map(distinct.map((value, index) => [value, index + 1]))
  const ties = distinct.map(() => 0)
  const tree = new Float64Array(distinct.length + 1)
  let rising = 0
  for (const value of values) {
    const rank = rankOf.get(value)!
    for (let below = rank - 1; below > 0; below -= below & -below) rising += tree[below]!
    for (let at = rank; at < tree.length; at += at & -at) tree[at]!++
    ties[rank - 1]!++
  }
  return { rising, ties }
}

/** Two-sided chance that of n different gaps in any order as few pairs, or fewer, rise or fall as `fewer`. */
function exactOrder(fewer: number, n: number): number {
  // chances of 0, 1, 2, ... falling pairs: the i-th gap stands behind 0 to i - 1 greater ones with even chance
  let chances = [1]
  for (let i = 2; i <= n; i++) {
    const next = new Array<number>(chances.length + i - 1).fill(0)
    for (const [falling, chance] of chances.entries())
      for (let more = 0; more < i; more++) next[falling + more]! += chance / i
    chances = next
  }
  return Math.min(1, 2 * chances.slice(0, fewer + 1).reduce((sum, chance) => sum + chance, 0))
}
