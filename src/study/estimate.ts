/** Estimates over shifts: a shift is one observation, and every figure comes with its interval. */
import { mean, sampleVariance } from 'simple-statistics'
import { standardNormal, studentT } from './quantile.js'

/**
 * A figure with its interval at the study's confidence. `sd` is the spread over shifts, `n` the number of shifts that
 * say something of it. Without two of those low, high and sd are NaN; without one, mean is too.
 */
export interface Estimate {
  mean: number
  low: number
  high: number
  sd: number
  n: number
}

/** Mean over shifts with a Student t interval; shifts that say nothing (NaN) do not count. Law, Simulation Modeling and Analysis, ch. 9. */
export function meanEstimate(values: readonly number[], confidence: number): Estimate {
  const said = values.filter((value) => !Number.isNaN(value))
  return around(said.length > 0 ? mean(said) : Number.NaN, said, confidence)
}

/** `centre` with the t interval of the mean of `values`. */
function around(centre: number, values: readonly number[], confidence: number): Estimate {
  const n = values.length
  if (n < 2) return { mean: centre, low: Number.NaN, high: Number.NaN, sd: Number.NaN, n }
  const sd = Math.sqrt(sampleVariance(values as number[]))
  const half = (studentT((1 + confidence) / 2, n - 1) * sd) / Math.sqrt(n)
  return { mean: centre, low: centre - half, high: centre + half, sd, n }
}

/** Share of shifts with a Wilson score interval. Wilson, J. Am. Stat. Assoc. 22 (1927) 209-212. */
export function shareEstimate(values: readonly number[], confidence: number): Estimate {
  const n = values.length
  if (n === 0) return { mean: Number.NaN, low: Number.NaN, high: Number.NaN, sd: Number.NaN, n }
  const share = mean(values as number[])
  const z = standardNormal((1 + confidence) / 2)
  const shrink = 1 + (z * z) / n
  const centre = (share + (z * z) / (2 * n)) / shrink
  const half = (z / shrink) * Math.sqrt((share * (1 - share)) / n + (z * z) / (4 * n * n))
  const low = share === 0 ? 0 : Math.max(0, centre - half)
  const high = share === 1 ? 1 : Math.min(1, centre + half)
  return { mean: share, low, high, sd: Math.sqrt(share * (1 - share)), n }
}

/**
 * Total over total with the variance of the ratio estimator: residuals value - ratio x over, divided by the mean of
 * `over`. Cochran, Sampling Techniques, ch. 6 (from memory). `sd` is that of the scaled residuals.
 */
export function ratioEstimate(
  values: readonly number[],
  overs: readonly number[],
  confidence: number,
): Estimate {
  const n = values.length
  const total = overs.reduce((sum, over) => sum + over, 0)
  if (n === 0 || total === 0)
    return { mean: Number.NaN, low: Number.NaN, high: Number.NaN, sd: Number.NaN, n: 0 }
  const ratio = values.reduce((sum, value) => sum + value, 0) / total
  const meanOver = total / n
  const scaled = values.map((value, index) => (value - ratio * overs[index]!) / meanOver)
  return around(ratio, scaled, confidence)
}
