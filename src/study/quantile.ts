/** Quantiles of the laws that intervals are made of. */
import jStat from 'jstat'

/** Value of Student's t with `degreesOfFreedom` (at least 1) below which the share `p`, on (0, 1), lies. */
export const studentT = (p: number, degreesOfFreedom: number): number =>
  jStat.studentt.inv(p, degreesOfFreedom)

/** Value of the standard normal law below which the share `p`, on (0, 1), lies. */
export const standardNormal = (p: number): number => jStat.normal.inv(p, 0, 1)

/** Value of chi-square with `degreesOfFreedom` (at least 1) below which the share `p`, on (0, 1), lies. */
export const chiSquare = (p: number, degreesOfFreedom: number): number =>
  jStat.chisquare.inv(p, degreesOfFreedom)

/** Value of the beta law with shapes `a` and `b` (above 0) below which the share `p`, on (0, 1), lies. */
export const beta = (p: number, a: number, b: number): number => jStat.beta.inv(p, a, b)

/** Chance of at most `k` successes in `n` trials of chance `p`: 1 - I_p(k + 1, n - k). 0 for k below 0, 1 from n up. */
export function binomialAtMost(k: number, n: number, p: number): number {
  if (k < 0) return 0
  return k >= n ? 1 : 1 - jStat.ibeta(p, k + 1, n - k)
}
