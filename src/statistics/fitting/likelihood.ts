/** How likely a law makes what is known of times: exact, censored, rounded, and with the short ones missing. */
import type { Distribution } from './law.js'
import type { Sample, Seen } from './sample.js'

/**
 * ln of the likelihood of `sample` under a law: densities of exact times, chances of the others, each given that a time is over
 * `sample.from`. -Infinity where the law does not allow one of them. Lawless, Statistical Models and Methods for Lifetime Data (2003),
 * sec. 2.2 to 2.4 (from memory).
 */
export function logLikelihood({ seen, counts, from }: Sample, law: Distribution): number {
  const kept = remembering(law)
  let [sum, n] = [0, 0]
  for (let index = 0; index < seen.length; index++) {
    sum += counts[index]! * logChance(seen[index]!, from, law, kept)
    n += counts[index]!
  }
  return from > 0 ? sum - n * law.logAbove(from) : sum
}

/** ln of the density or chance of one time that is over `from`, the chance of being over it not yet divided by. */
function logChance(seen: Seen, from: number, law: Distribution, kept: Distribution): number {
  if ('at' in seen) return seen.at < from ? Number.NEGATIVE_INFINITY : law.logDensity(seen.at)
  if ('over' in seen) return law.logAbove(Math.max(seen.over, from))
  if ('between' in seen) return logBetween(Math.max(seen.between[0], from), seen.between[1], kept)
  return logClocked(seen.clocked, seen.grain, from, kept)
}

/** The same law, which works out a share or partial expectation once: whole grains of neighbouring readings meet. */
function remembering(law: Distribution): Distribution {
  const kept = (of: (x: number) => number) => {
    const known = new Map<number, number>()
    return (x: number) => {
      const before = known.get(x)
      if (before !== undefined) return before
      const value = of(x)
      known.set(x, value)
      return value
    }
  }
  return {
    ...law,
    below: kept(law.below),
    above: kept(law.above),
    partialBelow: kept(law.partialBelow),
    partialAbove: kept(law.partialAbove),
  }
}

/** Share of the largest term below which a difference has too few digits left: ten are kept. */
const cancelled = 1e-6

/** ln of the chance of a time between `low` and `high`. */
function logBetween(low: number, high: number, law: Distribution): number {
  if (!(high > low)) return Number.NEGATIVE_INFINITY
  if (high === Number.POSITIVE_INFINITY) return law.logAbove(low)
  const isLow = law.below(low) < 0.5
  const [larger, smaller] = isLow ? [law.below(high), law.below(low)] : [law.above(low), law.above(high)]
  if (larger - smaller > cancelled * larger) return Math.log(larger - smaller)
  return logIntegral(law.logDensity, low, high)
}

/**
 * ln of the chance that two readings of a clock of `grain` s differ by `read` and the time is over `from`: the integral of f(x) (1 - |x - read| / grain). It
 * is a second difference over the grain of the twice integrated density, which partial expectations give in closed form; of the
 * twice integrated tail as well, which keeps the digits of long times.
 */
function logClocked(read: number, grain: number, from: number, law: Distribution): number {
  const end = read + grain
  if (!(end > from)) return Number.NEGATIVE_INFINITY
  const [middle, begin] = [Math.max(read, from), Math.max(read - grain, from)]
  const isLow = middle < law.mean
  const twice = isLow ? twiceBelow(from, law) : twiceAbove(from, law)
  const difference = twice(end) - 2 * twice(read) + twice(read - grain)
  const largest = isLow ? end * law.below(end) : law.partialAbove(begin)
  if (difference > cancelled * largest) return Math.log(difference / grain)
  const weighed = (x: number) => law.logDensity(x) + Math.log1p(-Math.abs(x - read) / grain)
  return logSum(logIntegral(weighed, begin, middle), logIntegral(weighed, middle, end))
}

/** Integral from `from` to y of F(x) - F(from). */
function twiceBelow(from: number, law: Distribution): (y: number) => number {
  const share = law.below(from)
  const before = from * share - law.partialBelow(from)
  return (y) => (y > from ? y * law.below(y) - law.partialBelow(y) - before - (y - from) * share : 0)
}

/** Integral from y on of the share over x, or over `from` where x is less. */
function twiceAbove(from: number, law: Distribution): (y: number) => number {
  return (y) => {
    const end = Math.max(y, from)
    const share = law.above(end)
    return law.partialAbove(end) - end * share + (end - y) * share
  }
}

/** Gauss-Legendre of ten points on (-1, 1): half of the places, and their weights. Abramowitz & Stegun, table 25.4. */
const places = [
  0.14887433898163122, 0.4333953941292472, 0.6794095682990244, 0.8650633666889845, 0.9739065285171717,
]
const weights = [
  0.29552422471475287, 0.26926671930999635, 0.21908636251598204, 0.1494513491505806, 0.06667134430868814,
]

/** ln of the integral of exp(`logOf`) from `low` to `high`, exact for what is nearly a polynomial there; it neither over- nor underflows. */
function logIntegral(logOf: (x: number) => number, low: number, high: number): number {
  if (!(high > low)) return Number.NEGATIVE_INFINITY
  const [middle, half] = [(low + high) / 2, (high - low) / 2]
  let sum = Number.NEGATIVE_INFINITY
  for (let index = 0; index < places.length; index++) {
    const away = half * places[index]!
    const pair = logSum(logOf(middle - away), logOf(middle + away))
    sum = logSum(sum, pair + Math.log(weights[index]!))
  }
  return sum + Math.log(half)
}

/** ln(exp(one) + exp(other)). */
function logSum(one: number, other: number): number {
  const larger = Math.max(one, other)
  return larger === Number.NEGATIVE_INFINITY
    ? larger
    : larger + Math.log1p(Math.exp(Math.min(one, other) - larger))
}
