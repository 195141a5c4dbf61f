/** Shares of the gamma law of scale 1 below and above a value: the regularised incomplete gamma functions. */
import exp from '@stdlib/math-base-special-exp'
import gammainc from '@stdlib/math-base-special-gammainc'
import log1p from '@stdlib/math-base-special-log1p'
import normalBelow from '@stdlib/stats-base-dists-normal-cdf'

/**
 * From this shape on the library is not asked: where x > 1000 and shape < x + 50 it sums an asymptotic series that does not hold
 * near the mean (version 0.3.1: 0.4973 below 10,000 at shape 10,000, which is 0.5013). Of smaller shapes less than 1e-68
 * lies there.
 */
const leastLarge = 500
/** From this shape on the sums would take thousands of terms, and the first term of an expansion has all digits but the last few. */
const leastHuge = 1e7

/** Share of the gamma law of `shape` (above 0) and scale 1 below `x` (at least 0), with its digits where that is small: P(shape, x). */
export function gammaBelow(x: number, shape: number): number {
  if (x === Number.POSITIVE_INFINITY) return 1
  if (shape < leastLarge) return gammainc(x, shape, true, false)
  if (shape >= leastHuge) return ofHuge(x, shape, -1)
  return x < shape ? belowBySeries(x, shape) : 1 - aboveByFraction(x, shape)
}

/** Share above `x`, with its digits where that is small: Q(shape, x). */
export function gammaAbove(x: number, shape: number): number {
  if (x === Number.POSITIVE_INFINITY) return 0
  if (shape < leastLarge) return gammainc(x, shape, true, true)
  if (shape >= leastHuge) return ofHuge(x, shape, 1)
  return x < shape ? 1 - belowBySeries(x, shape) : aboveByFraction(x, shape)
}

/** Terms grow few with the root of the shape. Abramowitz & Stegun, Handbook of Mathematical Functions, 6.5.29 (from memory). */
function belowBySeries(x: number, shape: number): number {
  let term = 1
  let sum = 1
  for (let n = shape + 1; term > sum * Number.EPSILON; n++) {
    term *= x / n
    sum += term
  }
  return largeFront(x, shape) * sum
}

/**
 * The continued fraction of Abramowitz & Stegun, 6.5.31, in its even form, by the method of Lentz: Press et al., Numerical
 * Recipes, sec. 6.2 (from memory).
 */
function aboveByFraction(x: number, shape: number): number {
  let b = x + 1 - shape
  let ratio = Number.MAX_VALUE
  let inverse = 1 / b
  let value = inverse
  let factor = 0
  for (let n = 1; Math.abs(factor - 1) > Number.EPSILON; n++) {
    const a = n * (shape - n)
    b += 2
    inverse = 1 / (b + a * inverse)
    ratio = b + a / ratio
    factor = ratio * inverse
    value *= factor
  }
  return largeFront(x, shape) * shape * value
}

/**
 * x^shape e^-x / gamma(shape + 1) of a large shape: its logarithm by the deviation from the shape, which keeps digits that
 * terms of the size of the shape would lose, and by the series of Stirling.
 */
function largeFront(x: number, shape: number): number {
  const deviation = (x - shape) / shape
  const stirling = (1 - 1 / (30 * shape * shape)) / (12 * shape)
  return exp(shape * (log1p(deviation) - deviation) - stirling) / Math.sqrt(2 * Math.PI * shape)
}

/**
 * Share above `x` (`side` 1) or below it (-1) by the uniform expansion of Temme, SIAM Journal on Mathematical Analysis 10 (1979) 757-766 (from
 * memory): that of a normal law at eta root shape, and the first term of what remains; the next is smaller by 1 / (180 shape).
 */
function ofHuge(x: number, shape: number, side: 1 | -1): number {
  const deviation = (x - shape) / shape
  const half = deviation - log1p(deviation)
  const eta = Math.sign(deviation) * Math.sqrt(2 * Math.max(0, half))
  // 1 / deviation - 1 / eta, which near 0 is a difference of large numbers
  const first = Math.abs(eta) < 0.01 ? -1 / 3 + eta / 12 - (2 * eta * eta) / 135 : 1 / deviation - 1 / eta
  const rest = (exp(-shape * half) / Math.sqrt(2 * Math.PI * shape)) * first
  return Math.max(0, normalBelow(-side * eta * Math.sqrt(shape), 0, 1) + side * rest)
}
