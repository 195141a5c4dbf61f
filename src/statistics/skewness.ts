/**
 * Intervals of a mean whose observations are skewed: Student's t after a transformation that takes the skewness out. P. Hall,
 * On the removal of skewness by transformation, J. R. Stat. Soc. B 54 (1992) 221-228 (from memory).
 */

import { mean, sampleVariance } from 'simple-statistics'
import { cubeRoot } from '../engine/powers.js'

/** Observations from which their skewness is used: that of fewer is mostly luck. */
export const leastForSkewness = 30

/** Below this the transformation is none. */
const hair = 1e-9

/**
 * Skewness of three values or more, corrected for their number: G1 of Joanes & Gill, The Statistician 47 (1998) 183-189 (from memory). Not the
 * library's, which takes a power that engines round as they like.
 */
export function sampleSkewness(values: readonly number[]): number {
  const n = values.length
  const middle = mean(values as number[])
  const cubes = values.reduce((sum, value) => sum + (value - middle) * (value - middle) * (value - middle), 0)
  const spread = Math.sqrt(sampleVariance(values as number[]))
  return (n * cubes) / ((n - 1) * (n - 2) * spread * spread * spread)
}

/** Skewness of the mean of `values`: theirs over the root of their number; 0 of few, and where nothing varies. */
export function skewnessOfMean(values: readonly number[]): number {
  const n = values.length
  if (n < leastForSkewness) return 0
  const skewness = sampleSkewness(values)
  return Number.isFinite(skewness) ? skewness / Math.sqrt(n) : 0
}

/** What is compared with Student's t: `t` = (mean - true mean) / standard error, of a mean of that skewness. */
export const withoutSkewness = (t: number, skewness: number): number =>
  t + (skewness / 3) * t * t + (skewness * skewness * t * t * t) / 27 + skewness / 6

/** The inverse of `withoutSkewness`: the `t` that comes out as `value`. */
export const withSkewness = (value: number, skewness: number): number =>
  Math.abs(skewness) < hair ? value : (3 / skewness) * (cubeRoot(1 + skewness * (value - skewness / 6)) - 1)

/** The interval about `mean`, with its standard error, the quantile `t` of Student's law and the skewness of the mean. */
export const skewedInterval = (
  mean: number,
  error: number,
  t: number,
  skewness: number,
): { low: number; high: number } => ({
  low: mean - withSkewness(t, skewness) * error,
  high: mean - withSkewness(-t, skewness) * error,
})
