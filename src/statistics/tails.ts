/** How likely what lies as far out as was seen is under the laws that tests are made of: tails that keep their digits far out. */
import betainc from '@stdlib/math-base-special-betainc'
import { gammaAbove, gammaBelow } from '../engine/gamma-shares.js'

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
