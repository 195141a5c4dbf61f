/** How much times and counts can say, before they are looked at: what to expect of so many. */
import { countLimits } from '../events.js'
import { studentT } from '../quantile.js'

/**
 * Half-width of the interval of a mean of `n` times, at least 2, whose standard deviation over mean is `cv`, as a share of the mean: Student's,
 * which holds where times are not very skewed.
 */
export const halfWidthOfMean = (n: number, cv: number, confidence: number): number =>
  (studentT((1 + confidence) / 2, n - 1) * cv) / Math.sqrt(n)

/** Ends of the interval of a rate of which `events`, at least 1, were seen, over its estimate: Garwood, Biometrika 28 (1936) 437-442. */
export function rateFactors(events: number, confidence: number): { low: number; high: number } {
  const { low, high } = countLimits(events, confidence)
  return { low: low / events, high: high / events }
}
