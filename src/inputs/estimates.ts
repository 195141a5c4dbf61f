/** Gamma and Weibull laws by maximum likelihood from complete observations, above 0 and not all alike. */
import digamma from '@stdlib/math-base-special-digamma'
import trigamma from '@stdlib/math-base-special-trigamma'

const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length

const mostSteps = 50
const settled = 1e-9

/** Shape and mean. Newton's method for one over the shape: Minka, Estimating a gamma distribution (2002; from memory). */
export function fitGamma(values: readonly number[]): { shape: number; mean: number } {
  const mean = meanOf(values)
  const s = Math.log(mean) - meanOf(values.map(Math.log))
  let shape = (3 - s + Math.sqrt((s - 3) ** 2 + 24 * s)) / (12 * s)
  for (let step = 0; step < mostSteps; step++) {
    const before = shape
    const error = Math.log(shape) - digamma(shape) - s
    shape = 1 / (1 / shape + error / (shape * shape * (1 / shape - trigamma(shape))))
    if (Math.abs(shape - before) <= settled * shape) break
  }
  return { shape, mean }
}

/** The shape k solves sum x^k ln x / sum x^k - 1/k = mean of ln x, by Newton's method; the scale follows from it. */
export function fitWeibull(values: readonly number[]): { shape: number; scale: number } {
  const most = values.reduce((largest, value) => Math.max(largest, value), 0)
  // by the largest, so that no power overflows
  const logs = values.map((value) => Math.log(value / most))
  const middle = meanOf(logs)
  let shape = 1.2 / Math.sqrt(meanOf(logs.map((log) => (log - middle) ** 2)))
  for (let step = 0; step < mostSteps; step++) {
    const { mean, square } = weighed(logs, shape)
    const change = (1 / shape + middle - mean) / (1 / shape ** 2 + square - mean * mean)
    // a step past 0 goes half the way
    shape = Math.max(shape / 2, shape + change)
    if (Math.abs(change) <= settled * shape) break
  }
  return { shape, scale: most * (weighed(logs, shape).power / values.length) ** (1 / shape) }
}

/** Sum of the powers, and mean and mean square of the logarithms weighed by them. */
function weighed(logs: readonly number[], shape: number): { power: number; mean: number; square: number } {
  let [power, first, second] = [0, 0, 0]
  for (const log of logs) {
    const each = Math.exp(shape * log)
    power += each
    first += each * log
    second += each * log * log
  }
  return { power, mean: first / power, square: second / power }
}
