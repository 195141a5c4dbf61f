/** Quantiles of the normal and the gamma law that keep their digits far out in both tails. */
import exp from '@stdlib/math-base-special-exp'
import gammaln from '@stdlib/math-base-special-gammaln'
import ln from '@stdlib/math-base-special-ln'
import log1p from '@stdlib/math-base-special-log1p'
import normalBelow from '@stdlib/stats-base-dists-normal-cdf'
import { gammaAbove, gammaBelow } from './gamma-shares.js'

/** Value of the standard normal law below which the share `p` lies; NaN where `p` is not on [0, 1]. */
export function normalQuantile(p: number): number {
  if (p > 0.5) return -normalQuantile(1 - p)
  if (p === 0) return Number.NEGATIVE_INFINITY
  const tail: Tail = { share: (z) => normalBelow(z, 0, 1), density: normalDensity, isLower: true }
  // no more than exp(-z^2 / 2) lies below -z
  return climbed(tail, p, -Math.sqrt(-2 * ln(p)))
}

const normalDensity = (z: number): number => exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)

/** Logarithm of the value of the gamma law of `shape` (above 0) and scale 1 below which the share `p` lies; NaN where `p` is not on [0, 1]. */
export function logGammaQuantile(p: number, shape: number): number {
  if (p === 0) return Number.NEGATIVE_INFINITY
  if (p === 1) return Number.POSITIVE_INFINITY
  const logGamma = gammaln(shape)
  const density = (y: number) => exp(shape * y - exp(y) - logGamma)
  // no more than exp(-l) lies below shape - sqrt(2 shape l), nor above shape + sqrt(2 shape l) + l: Boucheron, Lugosi &
  // Massart, Concentration Inequalities (2013), sec. 2.4 (from memory)
  if (p > 0.5) {
    const l = -log1p(-p)
    const tail: Tail = { share: (y) => gammaAbove(exp(y), shape), density, isLower: false }
    return climbed(tail, 1 - p, ln(shape + Math.sqrt(2 * shape * l) + l))
  }
  // nor more than x^shape / gamma(shape + 1) below x, which is all of it where x is too small to count beside 1
  const least = (ln(p) + ln(shape) + logGamma) / shape
  if (least < ln(Number.EPSILON)) return least
  const tail: Tail = { share: (y) => gammaBelow(exp(y), shape), density, isLower: true }
  const other = shape - Math.sqrt(-2 * shape * ln(p))
  return climbed(tail, p, other > 0 ? Math.max(least, ln(other)) : least)
}

/** A tail of a law in a coordinate in which the logarithm of its share is concave, as where that of its density is. */
interface Tail {
  share(y: number): number
  density(y: number): number
  /** Whether it is the lower tail. */
  isLower: boolean
}

/**
 * Where the share of the tail is `p`, from a `start` farther out: the method of Newton on its logarithm, whose tangents lie above
 * it, so that it nears the place from one side and never leaps beyond; it ends when the next step would be lost in the digits.
 */
function climbed(tail: Tail, p: number, start: number): number {
  const logTarget = ln(p)
  const sign = tail.isLower ? 1 : -1
  let y = start
  let step: number
  do {
    const share = tail.share(y)
    step = ((logTarget - ln(share)) * share) / tail.density(y)
    y += sign * step
  } while (step > 1e-9)
  return y
}
