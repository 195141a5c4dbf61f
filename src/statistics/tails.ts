/** How likely what lies as far out as was seen is under the laws that tests are made of: tails that keep their digits far out. */
import betainc from '@stdlib/math-base-special-betainc'
import gammaln from '@stdlib/math-base-special-gammaln'
import { gammaAbove, gammaBelow } from '../engine/gamma-shares.js'
import { binomialAtMost } from './quantile.js'
import { firstWhere } from './search.js'

/**
 * Chance that chi-square with `degreesOfFreedom` (above 0) is above `x` (at least 0): Q(df / 2, x / 2). Abramowitz & Stegun, Handbook
 * of Mathematical Functions, 26.4.19 (from memory). 0 for Infinity.
 */
export const chiSquareAbove = (x: number, degreesOfFreedom: number): number =>
  x === Infinity ? 0 : gammaAbove(x / 2, degreesOfFreedom / 2)

/** Chance that chi-square with `degreesOfFreedom` (above 0) is at most `x` (at least 0). */
export const chiSquareAtMost = (x: number, degreesOfFreedom: number): number =>
  x === Infinity ? 1 : gammaBelow(x / 2, degreesOfFreedom / 2)

/**
 * Chance that F with `above` and `below` degrees of freedom is above `x` (at least 0): I_y(below / 2, above / 2) with y = below / (below +
 * above x). Abramowitz & Stegun, 26.6.2 (from memory).
 */
export const fAbove = (x: number, above: number, below: number): number =>
  x === Infinity ? 0 : betainc(below / (below + above * x), below / 2, above / 2)

/** Chance that a standard normal number lies as far from 0 as `z`, or farther, on either side: its square is chi-square with 1. */
export const normalBeyond = (z: number): number => chiSquareAbove(z * z, 1)

/** Chance that a standard normal number is at most `z`. */
export const normalAtMost = (z: number): number => (z < 0 ? normalBeyond(z) / 2 : 1 - normalBeyond(z) / 2)

/** A two-sided p-value from the chances of what lies on either side, what was seen included in both: twice the smaller. */
export const bothSides = (below: number, above: number): number => Math.min(1, 2 * Math.min(below, above))

/** Chance of exactly `k` successes in `n` trials of chance `p` on (0, 1), as its logarithm. */
const logBinomial = (k: number, n: number, p: number): number =>
  gammaln(n + 1) - gammaln(k + 1) - gammaln(n - k + 1) + k * Math.log(p) + (n - k) * Math.log1p(-p)

/** Chances that differ by less, relatively, are alike: what rounding makes of equal ones. */
const hair = 1e-7

/**
 * Two-sided p-value of `k` successes in `n` trials where the chance is `p`, on (0, 1): the chance of all counts that are as unlikely as `k`, or
 * more so. Sterne, Biometrika 41 (1954) 275-278 (from memory).
 */
export function binomialTest(k: number, n: number, p: number): number {
  const seen = logBinomial(k, n, p) + hair
  const mode = Math.floor((n + 1) * p)
  if (k === mode || n === 0) return 1
  const isUnlikely = (count: number) => logBinomial(count, n, p) <= seen
  // the chances fall away from the mode on both sides, so the first unlikely count of the other side is found by halving
  if (k < mode) {
    const from = firstWhere(mode, n + 1, isUnlikely)
    return Math.min(1, binomialAtMost(k, n, p) + atLeast(from, n, p))
  }
  const until = n - firstWhere(n - mode, n + 1, (failures) => isUnlikely(n - failures))
  return Math.min(1, binomialAtMost(until, n, p) + atLeast(k, n, p))
}

/** P(X >= k) = I_p(k, n - k + 1). Abramowitz & Stegun, 26.5.24 (from memory). */
const atLeast = (k: number, n: number, p: number): number =>
  k <= 0 ? 1 : k > n ? 0 : betainc(p, k, n - k + 1, true, false)
