/** The laws that times of a record are fitted with, and what is asked of one: density, tails, quantiles, mean. Times in s. */
import gammaln from '@stdlib/math-base-special-gammaln'
import normalBelow from '@stdlib/stats-base-dists-normal-cdf'
import { gammaAbove, gammaBelow } from '../../engine/gamma-shares.js'
import { logGammaQuantile } from '../../engine/tails.js'
import { standardNormal } from '../quantile.js'

/** Families of one law each. */
export const families = ['exponential', 'weibull', 'gamma', 'lognormal'] as const
export type Family = (typeof families)[number]

/** `location` and `spread` are mean and standard deviation of ln x; `scale` is in s, `shape` a number. */
export interface Lognormal {
  family: 'lognormal'
  location: number
  spread: number
}

/** A law with its parameters. A mixture: the share `share`, on (0, 1), is of the first, which has the lower mean. */
export type FittedLaw = SimpleLaw | { family: 'mixture'; share: number; first: Lognormal; second: Lognormal }

/** A law of one part. */
export type SimpleLaw =
  | { family: 'exponential'; mean: number }
  | { family: 'weibull'; shape: number; scale: number }
  | { family: 'gamma'; shape: number; scale: number }
  | Lognormal

/** What is asked of a law. All times are at least 0. */
export interface Distribution {
  /** ln of the density at `x`; -Infinity where it has none. */
  logDensity(x: number): number
  /** Share of times up to `x`, with its digits where that is small. */
  below(x: number): number
  /** Share of times over `x`, with its digits where that is small. */
  above(x: number): number
  /** ln of `above`, also where that is too small for a number. */
  logAbove(x: number): number
  /** Time below which the share `p`, on (0, 1), lies. */
  quantile(p: number): number
  /** Integral of x f(x) from 0 to `x`: the partial expectation. */
  partialBelow(x: number): number
  /** Integral of x f(x) from `x` on. */
  partialAbove(x: number): number
  mean: number
  /** Standard deviation over mean. */
  cv: number
}

/** The law of times that are all so many times as long. */
export function scaled(law: FittedLaw, times: number): FittedLaw {
  switch (law.family) {
    case 'exponential':
      return { ...law, mean: law.mean * times }
    case 'weibull':
    case 'gamma':
      return { ...law, scale: law.scale * times }
    case 'lognormal':
      return longer(law, times)
    case 'mixture':
      return { ...law, first: longer(law.first, times), second: longer(law.second, times) }
  }
}

const longer = (law: Lognormal, times: number): Lognormal => ({
  ...law,
  location: law.location + Math.log(times),
})

/** What there is to ask of `law`. Formulas: Johnson, Kotz & Balakrishnan, Continuous Univariate Distributions 1 (1994). */
export function distributionOf(law: FittedLaw): Distribution {
  switch (law.family) {
    case 'exponential':
      return weibull(1, law.mean)
    case 'weibull':
      return weibull(law.shape, law.scale)
    case 'gamma':
      return gamma(law.shape, law.scale)
    case 'lognormal':
      return lognormal(law.location, law.spread)
    case 'mixture':
      return mixture(law.share, distributionOf(law.first), distributionOf(law.second))
  }
}

/** An exponential law is one of shape 1. */
function weibull(shape: number, scale: number): Distribution {
  const logScale = Math.log(scale)
  const risen = (x: number) => Math.exp(shape * (Math.log(x) - logScale))
  const logMean = gammaln(1 + 1 / shape)
  const mean = scale * Math.exp(logMean)
  const front = Math.log(shape) - logScale
  return {
    logDensity: (x) => {
      const ratio = Math.log(x) - logScale
      // the power of 1 is 1 at 0 too, where its logarithm is not a number
      return front + (shape === 1 ? 0 : (shape - 1) * ratio) - Math.exp(shape * ratio)
    },
    below: (x) => -Math.expm1(-risen(x)),
    above: (x) => Math.exp(-risen(x)),
    logAbove: (x) => -risen(x),
    quantile: (p) => scale * (-Math.log1p(-p)) ** (1 / shape),
    partialBelow: (x) => mean * gammaBelow(risen(x), 1 + 1 / shape),
    partialAbove: (x) => mean * gammaAbove(risen(x), 1 + 1 / shape),
    mean,
    cv: Math.sqrt(Math.expm1(gammaln(1 + 2 / shape) - 2 * logMean)),
  }
}

function gamma(shape: number, scale: number): Distribution {
  const front = -gammaln(shape) - Math.log(scale)
  const above = (x: number) => gammaAbove(x / scale, shape)
  const logDensity = (x: number) => {
    const ratio = x / scale
    return front + (shape === 1 ? 0 : (shape - 1) * Math.log(ratio)) - ratio
  }
  return {
    logDensity,
    below: (x) => gammaBelow(x / scale, shape),
    above,
    logAbove: (x) => {
      const share = above(x)
      if (share > 0) return Math.log(share)
      // far out the tail is scale f(x) / (1 - (shape - 1) scale / x): Abramowitz & Stegun 6.5.32, its first two terms summed
      return logDensity(x) + Math.log(scale) - Math.log1p((-(shape - 1) * scale) / x)
    },
    quantile: (p) => scale * Math.exp(logGammaQuantile(p, shape)),
    partialBelow: (x) => shape * scale * gammaBelow(x / scale, shape + 1),
    partialAbove: (x) => shape * scale * gammaAbove(x / scale, shape + 1),
    mean: shape * scale,
    cv: 1 / Math.sqrt(shape),
  }
}

const logRootOfTwoPi = Math.log(2 * Math.PI) / 2

function lognormal(location: number, spread: number): Distribution {
  const front = -Math.log(spread) - logRootOfTwoPi
  const mean = Math.exp(location + (spread * spread) / 2)
  const standard = (x: number) => (Math.log(x) - location) / spread
  return {
    logDensity: (x) => {
      const z = standard(x)
      return x > 0 ? front - Math.log(x) - (z * z) / 2 : Number.NEGATIVE_INFINITY
    },
    below: (x) => normalBelow(standard(x), 0, 1),
    above: (x) => normalBelow(-standard(x), 0, 1),
    logAbove: (x) => logNormalAbove(standard(x)),
    quantile: (p) => Math.exp(location + spread * standardNormal(p)),
    partialBelow: (x) => mean * normalBelow(standard(x) - spread, 0, 1),
    partialAbove: (x) => mean * normalBelow(spread - standard(x), 0, 1),
    mean,
    cv: Math.sqrt(Math.expm1(spread * spread)),
  }
}

/** ln of the share of the standard normal law over `z`; far out by its asymptotic series, Abramowitz & Stegun 26.2.12. */
function logNormalAbove(z: number): number {
  if (z < 30) return Math.log(normalBelow(-z, 0, 1))
  const square = z * z
  return -square / 2 - logRootOfTwoPi - Math.log(z) + Math.log1p(-1 / square + 3 / (square * square))
}

function mixture(share: number, first: Distribution, second: Distribution): Distribution {
  const mixed = (one: number, other: number) => share * one + (1 - share) * other
  const mixedLogs = (one: number, other: number) => {
    const larger = Math.max(one, other)
    if (larger === Number.NEGATIVE_INFINITY) return larger
    return larger + Math.log(mixed(Math.exp(one - larger), Math.exp(other - larger)))
  }
  const mean = mixed(first.mean, second.mean)
  const square = (part: Distribution) => (part.mean / mean) ** 2 * (1 + part.cv * part.cv)
  const below = (x: number) => mixed(first.below(x), second.below(x))
  const above = (x: number) => mixed(first.above(x), second.above(x))
  return {
    logDensity: (x) => mixedLogs(first.logDensity(x), second.logDensity(x)),
    below,
    above,
    logAbove: (x) => mixedLogs(first.logAbove(x), second.logAbove(x)),
    quantile: (p) => {
      const ends = [first.quantile(p), second.quantile(p)]
      const isOver = p < 0.5 ? (x: number) => below(x) > p : (x: number) => above(x) < 1 - p
      return halved(isOver, Math.min(...ends), Math.max(...ends))
    },
    partialBelow: (x) => mixed(first.partialBelow(x), second.partialBelow(x)),
    partialAbove: (x) => mixed(first.partialAbove(x), second.partialAbove(x)),
    mean,
    cv: Math.sqrt(Math.max(0, mixed(square(first), square(second)) - 1)),
  }
}

/** Where `isOver` turns true between `low` and `high`, both above 0, to the last digits: by halving the ratio of the ends. */
function halved(isOver: (x: number) => boolean, low: number, high: number): number {
  let [from, to] = [low, high]
  for (let step = 0; step < 100 && to > from * (1 + 1e-15); step++) {
    const middle = Math.sqrt(from * to)
    if (isOver(middle)) to = middle
    else from = middle
  }
  return Math.sqrt(from * to)
}
