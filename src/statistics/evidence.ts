/**
 * How far ahead a mean must lie before one may say so while shifts still come. The boundary is that of Kim & Nelson, Operations
 * Research 54 (2006) 475-488 (from memory), whose variance is estimated anew as shifts come, made safe for differences that are
 * rarely large, as stops make them.
 */
import { power } from '../engine/powers.js'

/** Shifts before anything is told: of what happens in one shift of ten, one of 200 such stages sees nothing. */
export const firstStage = 50

/** What happens rarely must have happened in so many shifts, and a variance rest on so many differences. */
export const fewest = 5

/** The number of shifts at which one looks again after a look at `shifts`: a twentieth more. */
export const nextLook = (shifts: number): number => Math.ceil(shifts * 1.05)

/**
 * h^2 of the procedure with its constant c = 1: 2 eta d with eta = ((2 risk)^(-2 / d) - 1) / 2, for a variance that is known with
 * `degrees` of freedom d, above 0. `risk`, on (0, 1/2), is the chance of one wrong verdict on one difference.
 */
export const boundary = (risk: number, degrees: number): number =>
  degrees * (power(2 * risk, -2 / degrees) - 1)

/** Differences shift by shift in their sums. */
export interface Spread {
  sum: number
  /** Sample variance; 0 where it is rounding. */
  variance: number
  /** Third central moment over the variance: by so much the variance grows with the mean, unit for unit. */
  slope: number
  /**
   * How many differences of one size would know their variance as well, (sum e^2)^2 / sum e^4 of the deviations e: a third of the
   * shifts where they are normal, about the number of large ones where these are rare.
   */
  effective: number
}

/** A share of `within` that is rounding. */
const hair = 1e-9

export function spreadOf(differences: readonly number[], within: number): Spread {
  const n = differences.length
  let total = 0
  for (const each of differences) total += each
  const mean = total / n
  let [second, third, fourth] = [0, 0, 0]
  for (const each of differences) {
    const from = each - mean
    const square = from * from
    second += square
    third += square * from
    fourth += square * square
  }
  const sum = Math.abs(mean) <= hair * within ? 0 : total
  const variance = second / (n - 1)
  if (Math.sqrt(variance) <= hair * within) return { sum, variance: 0, slope: 0, effective: n }
  return { sum, variance, slope: third / second, effective: (second * second) / fourth }
}

/**
 * How far from 0 the sum of these differences may lie while it is not told which side of 0 their mean lies on, at least 0: what is
 * told then is wrong with at most the chance `risk` if the mean lies `within` or more on the other side. Infinity where too few
 * differences know the variance.
 *
 * The variance is that which goes with the mean that would be ruled out: a lucky row of shifts shows few of the rare losses, and
 * with them too small a variance as well. In an exponential family the variance grows with the mean as the third central moment over the
 * variance (Barndorff-Nielsen, Information and Exponential Families, 1978, from memory). It is never taken for less than was
 * seen, nor for more than where luck may have led from, three standard errors away.
 * Its degrees of freedom are Satterthwaite's (Biometrics Bulletin 2 (1946) 110-114), 2 over its squared coefficient of
 * variation, which is 1 / effective - 1 / n.
 */
export function allowance(spread: Spread, shifts: number, within: number, risk: number): number {
  const { sum, variance, slope, effective } = spread
  // of differences that are no numbers neither
  if (!(effective >= fewest)) return Infinity
  const degrees = 2 / Math.max(1 / effective - 1 / shifts, 2 / (shifts - 1))
  // as far as the mean seen lies from the one ruled out, which is on the other side
  const away = -(sum / shifts + Math.sign(sum) * within)
  const there = Math.min(variance + Math.max(0, slope * away), byLuck(variance, slope, shifts))
  return Math.max(0, (boundary(risk, degrees) * there) / (2 * within) - (within * shifts) / 2)
}

/** The variance u^2 at a mean that is three of its own standard errors away: u^2 = variance + |slope| 3 u / sqrt(shifts), solved for u. */
function byLuck(variance: number, slope: number, shifts: number): number {
  const half = (1.5 * Math.abs(slope)) / Math.sqrt(shifts)
  return (half + Math.sqrt(half * half + variance)) ** 2
}
