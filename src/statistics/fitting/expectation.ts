/**
 * Two lognormal parts of complete times by expectation and maximisation: Dempster, Laird & Rubin, J. R. Stat. Soc. B 39 (1977) 1-38; McLachlan & Peel,
 * Finite Mixture Models (2000), ch. 2 and 3 (both from memory).
 */
import type { FittedLaw, Lognormal } from './law.js'
import type { Weighted } from './rough.js'

export type Mixture = Extract<FittedLaw, { family: 'mixture' }>

/** Where the first part ends at the start of a search: shares of the times, smallest first. */
const splits = [0.2, 0.4, 0.6, 0.8]

/** Least spread of a part, as a share of that of all: without one, a part on a single value has a likelihood without end. */
const leastShare = 0.05

const rounds = 500

/** Least spread of a part of these times. */
export const leastSpread = ({ values, weights }: Weighted): number =>
  leastShare *
  partOf(
    values.map((value) => Math.log(value)),
    weights,
  ).spread

/**
 * Where each of a few starts leads, with log-likelihoods that rise no more by `gain` a round; parts ordered by their means. None where the
 * times are all alike. `times` are above 0.
 */
export function mixturesOf(times: Weighted, gain: number): Mixture[] {
  const order = [...times.values.keys()].sort((one, other) => times.values[one]! - times.values[other]!)
  const logs = Float64Array.from(order, (index) => Math.log(times.values[index]!))
  const weights = Float64Array.from(order, (index) => times.weights[index]!)
  const floor = leastSpread(times)
  if (!(floor > 0)) return []
  return splits
    .map((split) => climbed(logs, weights, beginning(weights, split), floor, gain))
    .filter((found) => found !== null)
}

/** Weights of the times in the first part: those up to the share `split`. */
function beginning(weights: Float64Array, split: number): Float64Array {
  let rest = split * sum(weights)
  return weights.map((weight) => {
    const first = Math.max(0, Math.min(weight, rest))
    rest -= weight
    return first
  })
}

/** The mixture to which these weights of the first part lead; null where a part is left with nothing. */
function climbed(
  logs: Float64Array,
  weights: Float64Array,
  ofFirst: Float64Array,
  floor: number,
  gain: number,
): Mixture | null {
  const total = sum(weights)
  const ofSecond = weights.map((weight, index) => weight - ofFirst[index]!)
  let height = Number.NEGATIVE_INFINITY
  for (let round = 0; ; round++) {
    const share = sum(ofFirst) / total
    if (!(share * total > 1e-6 && (1 - share) * total > 1e-6)) return null
    const [first, second] = [partOf(logs, ofFirst, floor), partOf(logs, ofSecond, floor)]
    let reached = 0
    for (let index = 0; index < logs.length; index++) {
      const log = logs[index]!
      const [one, other] = [share * densityOf(first, log), (1 - share) * densityOf(second, log)]
      const both = one + other
      // so far from both that neither has a density: it stays where it was
      if (!(both > 0)) continue
      reached += weights[index]! * Math.log(both)
      ofFirst[index] = (weights[index]! * one) / both
      ofSecond[index] = (weights[index]! * other) / both
    }
    if (round === rounds || reached - height < gain)
      return ordered({ family: 'mixture', share, first, second })
    height = reached
  }
}

/** Location and spread, no less than `floor`, of weighted logarithms. */
function partOf(logs: Float64Array, weights: Float64Array, floor = 0): Lognormal {
  const total = sum(weights)
  let location = 0
  for (let index = 0; index < logs.length; index++) location += (weights[index]! * logs[index]!) / total
  let square = 0
  for (let index = 0; index < logs.length; index++)
    square += (weights[index]! * (logs[index]! - location) ** 2) / total
  return { family: 'lognormal', location, spread: Math.max(floor, Math.sqrt(square)) }
}

/** Density of a logarithm under a part, but for the factor 1 / sqrt(2 pi). */
const densityOf = ({ location, spread }: Lognormal, log: number): number =>
  Math.exp(-(((log - location) / spread) ** 2) / 2) / spread

const sum = (values: Float64Array): number => values.reduce((total, value) => total + value, 0)

/** The same mixture, the part with the lower mean first. */
export function ordered(law: Mixture): Mixture {
  const logMean = ({ location, spread }: Lognormal) => location + (spread * spread) / 2
  if (logMean(law.first) <= logMean(law.second)) return law
  return { family: 'mixture', share: 1 - law.share, first: law.second, second: law.first }
}
