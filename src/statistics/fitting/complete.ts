/** Maximum likelihood where every time is known and none is missing: closed forms, and Newton in one dimension. Quick, for bootstraps. */

import digamma from '@stdlib/math-base-special-digamma'
import trigamma from '@stdlib/math-base-special-trigamma'
import { exp, ln } from '../../engine/logarithms.js'
import type { Family, SimpleLaw } from './law.js'

/** Rounds after which Newton is taken to have arrived; from the starts below it takes about five. */
const rounds = 100
const closeEnough = 1e-14

/**
 * The law of `family` that makes `values`, in s, likeliest; `weights` says how often each stands, once if it is not given. Null where there is
 * none: no value, all alike, or one of 0, which only the exponential family takes.
 */
export function fitComplete(family: Family, values: Float64Array, weights?: Float64Array): SimpleLaw | null {
  const moments = momentsOf(values, weights)
  if (family === 'exponential') return moments.mean > 0 ? { family, mean: moments.mean } : null
  if (!(moments.least > 0 && moments.most > moments.least)) return null
  switch (family) {
    case 'lognormal':
      return { family, location: moments.logMean, spread: moments.logDeviation }
    case 'gamma': {
      const shape = gammaShape(ln(moments.mean) - moments.logMean)
      return Number.isFinite(shape) ? { family, shape, scale: moments.mean / shape } : null
    }
    case 'weibull':
      return fitWeibull(values, weights, moments)
  }
}

/** What a sample comes to: means of x and ln x, standard deviation of ln x with divisor n, ends. NaN and Infinity where it is empty. */
function momentsOf(values: Float64Array, weights?: Float64Array) {
  let [count, sum, logSum, least, most] = [0, 0, 0, Number.POSITIVE_INFINITY, 0]
  for (let index = 0; index < values.length; index++) {
    const weight = weights === undefined ? 1 : weights[index]!
    const value = values[index]!
    count += weight
    sum += weight * value
    logSum += weight * ln(value)
    least = Math.min(least, value)
    most = Math.max(most, value)
  }
  const logMean = logSum / count
  let squares = 0
  for (let index = 0; index < values.length; index++)
    squares += (weights === undefined ? 1 : weights[index]!) * (ln(values[index]!) - logMean) ** 2
  return { count, mean: sum / count, logMean, logDeviation: Math.sqrt(squares / count), least, most }
}

/**
 * Shape of a gamma law: ln a - digamma(a) = `gap`, ln of the mean less mean of ln x. Start by Minka's approximation, then his generalised
 * Newton: T. Minka, Estimating a Gamma distribution (2002), from memory.
 */
function gammaShape(gap: number): number {
  let shape = (3 - gap + Math.sqrt((gap - 3) ** 2 + 24 * gap)) / (12 * gap)
  for (let round = 0; round < rounds; round++) {
    const short = ln(shape) - digamma(shape) - gap
    const next = 1 / (1 / shape + short / (shape * shape * (1 / shape - trigamma(shape))))
    const moved = Math.abs(next - shape)
    shape = next
    if (!(moved > closeEnough * shape)) break
  }
  return shape
}

/**
 * Shape k of a Weibull law: sum x^k ln x / sum x^k - 1/k = mean of ln x, by Newton in ln k; it grows in k, so that there is one. Powers are
 * of x over the longest, so that none is too large. Scale: (mean of x^k)^(1/k). Law, Simulation Modeling and Analysis, ch. 6 (from memory).
 */
function fitWeibull(
  values: Float64Array,
  weights: Float64Array | undefined,
  { count, logMean, logDeviation, most }: ReturnType<typeof momentsOf>,
): SimpleLaw {
  const logMost = ln(most)
  const logs = values.map((value) => ln(value) - logMost)
  let shape = 1.2 / logDeviation
  let powers = count
  for (let round = 0; round < rounds; round++) {
    let [first, second] = [0, 0]
    powers = 0
    for (let index = 0; index < logs.length; index++) {
      const log = logs[index]!
      const power = (weights === undefined ? 1 : weights[index]!) * exp(shape * log)
      powers += power
      first += power * log
      second += power * log * log
    }
    const mean = first / powers
    const slope = second / powers - mean * mean + 1 / (shape * shape)
    const step = (logMean - logMost + 1 / shape - mean) / (slope * shape)
    if (!(Math.abs(step) > closeEnough)) break
    shape *= exp(Math.max(-1, Math.min(1, step)))
  }
  return { family: 'weibull', shape, scale: exp(logMost + ln(powers / count) / shape) }
}
