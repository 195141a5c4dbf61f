/** Several comparisons or tests at once: intervals that hold together, and which of them show a difference; p-values that may all be called out together. */
import type { Estimate } from './estimate.js'

/** One comparison of a family. */
export interface Comparison {
  /** Two-sided p-value of no difference; NaN where there is none. */
  pValue: number
  /** The difference with its interval at a confidence, on (0, 1). */
  at: (confidence: number) => Estimate
}

/** What may be said of one comparison as a member of its family. */
export interface Judged {
  /**
   * The difference; its interval and those of the others cover all together with the family's confidence, or oftener.
   */
  estimate: Estimate
  /** Least risk of the family at which this difference would be shown; NaN where there is no p-value. */
  adjustedP: number
  /** A difference is shown: its interval, the one that is printed, lies off 0. */
  isShown: boolean
}

/**
 * Judges comparisons at the confidence of the family, on (0, 1), however they hang together: each interval at 1 - (1 -
 * confidence) / m, so that the chance that any of the m misses is at most 1 - confidence (Bonferroni; Miller, Simultaneous
 * Statistical Inference (1981), sec. 2.3, from memory). Shown is what such an interval says. Step-down tests would show a little more, of which no
 * interval that holds could say more than that it is not 0: so what is printed and what is called shown would differ.
 *
 * An interval that stands off 0 where the test shows nothing (of shares the test is the more cautious) is drawn out to
 * 0, which costs no coverage.
 */
export function family(comparisons: readonly Comparison[], confidence: number): Judged[] {
  const risk = 1 - confidence
  const each = 1 - risk / comparisons.length
  return comparisons.map(({ pValue, at }) => {
    const adjustedP = Math.min(1, comparisons.length * pValue)
    const estimate = at(each)
    const isOff = estimate.low > 0 || estimate.high < 0
    if (isOff && adjustedP <= risk) return { estimate, adjustedP, isShown: true }
    // a missing end (NaN) stays missing
    const [low, high] = [Math.min(estimate.low, 0), Math.max(estimate.high, 0)]
    return { estimate: { ...estimate, low, high }, adjustedP, isShown: false }
  })
}

/**
 * For each p-value the least risk of the whole family at which that test would be called out, however the tests hang together: step-down, Holm,
 * Scandinavian Journal of Statistics 6 (1979) 65-70 (from memory). NaN, a test that could not be made, stays NaN and is no member of the family.
 */
export function holm(pValues: readonly number[]): number[] {
  const order = pValues
    .map((p, index) => ({ p, index }))
    .filter(({ p }) => !Number.isNaN(p))
    .sort((a, b) => a.p - b.p)
  const adjusted = pValues.map(() => Number.NaN)
  let least = 0
  for (const [rank, { p, index }] of order.entries()) {
    least = Math.min(1, Math.max(least, (order.length - rank) * p))
    adjusted[index] = least
  }
  return adjusted
}
