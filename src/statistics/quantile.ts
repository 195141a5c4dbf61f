/** Quantiles and tails of the laws that intervals and tests are made of. */

import betainc from '@stdlib/math-base-special-betainc'
import betaQuantile from '@stdlib/stats-base-dists-beta-quantile'
import studentQuantile from '@stdlib/stats-base-dists-t-quantile'
import { exp } from '../engine/logarithms.js'
import { logGammaQuantile, normalQuantile } from '../engine/tails.js'

/** Value of Student's t with `degreesOfFreedom` (at least 1) below which the share `p`, on (0, 1), lies. */
export const studentT = (p: number, degreesOfFreedom: number): number => studentQuantile(p, degreesOfFreedom)

/**
 * Chance that Student's t with `degreesOfFreedom` (at least 1) lies as far from 0 as `t`, or farther, on either side:
 * I_x(df / 2, 1 / 2) with x = df / (df + t^2), which keeps its digits in the tails. Abramowitz & Stegun, Handbook of
 * Mathematical Functions, 26.7.1 and 26.5.27 (from memory).
 */
export const studentTBeyond = (t: number, degreesOfFreedom: number): number =>
  betainc(degreesOfFreedom / (degreesOfFreedom + t * t), degreesOfFreedom / 2, 1 / 2)

/**
 * Half-width of the interval of a mean of `n` values, at least 2, whose standard deviation over mean is `cv`, as a share of the mean: Student's,
 * which holds where they are not very skewed.
 */
export const halfWidthOfMean = (n: number, cv: number, confidence: number): number =>
  (studentT((1 + confidence) / 2, n - 1) * cv) / Math.sqrt(n)

/** Value of the standard normal law below which the share `p`, on (0, 1), lies. */
export const standardNormal = (p: number): number => normalQuantile(p)

/** Value of chi-square with `degreesOfFreedom` (at least 1) below which the share `p`, on (0, 1), lies. */
export const chiSquare = (p: number, degreesOfFreedom: number): number =>
  2 * exp(logGammaQuantile(p, degreesOfFreedom / 2))

/** Value of the beta law with shapes `a` and `b` (above 0) below which the share `p`, on (0, 1), lies. */
export const beta = (p: number, a: number, b: number): number => betaQuantile(p, a, b)

/** Chance of at most `k` successes in `n` trials of chance `p`: 1 - I_p(k + 1, n - k). 0 for k below 0, 1 from n up. */
export function binomialAtMost(k: number, n: number, p: number): number {
  if (k < 0) return 0
  return k >= n ? 1 : betainc(p, k + 1, n - k, true, true)
}

/**
 * Chance that of `ups + downs` fair coins at least as many fall one way, whichever, as the more frequent of the two
 * did: the sign test. 1 where there is no coin. Conover, Practical Nonparametric Statistics (1999), sec. 3.4 (from
 * memory).
 */
export function signTest(ups: number, downs: number): number {
  const [fewer, more] = [Math.min(ups, downs), Math.max(ups, downs)]
  // P(X <= fewer) = I_1/2(more, fewer + 1): not as a difference from 1, which would lose the small ones
  return more === fewer ? 1 : Math.min(1, 2 * betainc(1 / 2, more, fewer + 1))
}
