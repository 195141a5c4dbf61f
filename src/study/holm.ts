/** Several comparisons at once: which of them show a difference, and intervals that hold together. */
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
  /**
   * A difference is shown: the chance that it is of any comparison of the family without one is what the confidence
   * leaves.
   */
  isShown: boolean
}

/**
 * Adjusted p-values of Holm's step-down, in the order given: the smallest of m times m, the next times m - 1, and so
 * on, none less than the one before, at most 1. NaN counts as a member that shows nothing and stays NaN. S. Holm,
 * Scandinavian Journal of Statistics 6 (1979) 65-70; in this form: Wright, Biometrics 48 (1992) 1005-1013 (both from
 * memory).
 */
export function holm(pValues: readonly number[]): number[] {
  const order = pValues
    .map((_, index) => index)
    .filter((index) => !Number.isNaN(pValues[index]!))
    .sort((a, b) => pValues[a]! - pValues[b]!)
  const adjusted = pValues.map(() => Number.NaN)
  let least = 0
  for (const [step, index] of order.entries()) {
    least = Math.max(least, Math.min(1, (pValues.length - step) * pValues[index]!))
    adjusted[index] = least
  }
  return adjusted
}

/**
 * Judges comparisons at the confidence of the family, on (0, 1), however they hang together.
 *
 * Shown is what Holm's step-down shows. The intervals are those of Bonferroni, each at 1 - (1 - confidence) / m, so
 * that the chance that any of the m misses is at most 1 - confidence. These are two statements, each with the
 * confidence of the family. An interval off 0 is always shown; one that reaches 0 may be shown too, because step-down
 * shows more.
 *
 * Such an interval is not cut at 0. With all but one truly different, step-down may test the one that is not at the
 * whole risk; cut intervals would then fail with that risk and that of each other interval besides, together (2 - 1 /
 * m) times what was promised. Intervals that fit step-down and hold together say of what is shown no more than that it
 * is not 0, unless all are shown: Strassburger & Bretz, Statistics in Medicine 27 (2008) 4914-4927; Guilbaud,
 * Biometrical Journal 50 (2008) 678-692 (both from memory). A planner needs how much, so these do not do.
 *
 * An interval that stands off 0 where the test shows nothing (of shares the test is the more cautious) is drawn out to
 * 0, which costs no coverage.
 */
export function family(comparisons: readonly Comparison[], confidence: number): Judged[] {
  const adjusted = holm(comparisons.map(({ pValue }) => pValue))
  const each = 1 - (1 - confidence) / comparisons.length
  return comparisons.map(({ at }, index) => {
    const adjustedP = adjusted[index]!
    const isShown = adjustedP <= 1 - confidence
    const estimate = at(each)
    if (isShown) return { estimate, adjustedP, isShown }
    // a missing end (NaN) stays missing
    const low = Math.min(estimate.low, 0)
    const high = Math.max(estimate.high, 0)
    return { estimate: { ...estimate, low, high }, adjustedP, isShown }
  })
}
