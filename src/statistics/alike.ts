/** Whether samples of times, such as those of several machines or reasons, may come from one law. */
import type { RandomNumbers } from '../engine/draw.js'
import { andersonDarlingAbove, andersonDarlingVariance } from './anderson-darling.js'
import type { ChiSquareTest } from './dispersion.js'
import { chiSquareAbove } from './tails.js'

/** Samples as a table: how often each value stands in each sample, and in all. */
interface Pooled {
  /** Sizes of the samples. */
  sizes: number[]
  /** Of each distinct value, in order, how often it stands in all samples. */
  lots: number[]
  /** Of all observations, sample after sample, which of the distinct values it is. */
  ranks: Uint32Array
}

function pool(samples: readonly (readonly number[])[]): Pooled {
  const all = samples.flat()
  const distinct = [...new Set(all)].sort((a, b) => a - b)
  const rankOf = new Map(distinct.map((value, index) => [value, index]))
  const lots = distinct.map(() => 0)
  const ranks = Uint32Array.from(all, (value) => rankOf.get(value)!)
  for (const rank of ranks) lots[rank]!++
  return { sizes: samples.map((sample) => sample.length), lots, ranks }
}

/** The statistic A^2_a of Scholz & Stephens, eq. 7, with midranks. `counts` is for work: as long as `lots`. */
function midrankStatistic({ sizes, lots, ranks }: Pooled, counts: Float64Array): number {
  const all = ranks.length
  let [statistic, begin] = [0, 0]
  for (const size of sizes) {
    counts.fill(0)
    for (let at = begin; at < begin + size; at++) counts[ranks[at]!]!++
    begin += size
    let [own, pooled, sum] = [0, 0, 0]
    for (let rank = 0; rank < lots.length; rank++) {
      const [here, lot] = [counts[rank]!, lots[rank]!]
      const middle = pooled + lot / 2
      const gap = all * (own + here / 2) - size * middle
      sum += (lot * gap * gap) / (middle * (all - middle) - (all * lot) / 4)
      own += here
      pooled += lot
    }
    statistic += sum / size
  }
  return ((all - 1) * statistic) / (all * all)
}

/** Whether samples may come from one law. */
export interface Alike {
  /** A^2 less its mean of k - 1, over its standard deviation where no two values are alike. */
  statistic: number
  pValue: number
  /** How the p-value was got: from the law of large samples, or by dealing the values to the samples at random. */
  by: 'limit' | 'lot'
}

/** Deals from which a p-value by lot is made: it is not below 1 / (deals + 1). */
const usualDeals = 1999

/**
 * Whether two or more samples of at least one value each, four together, may come from one continuous law: k-sample Anderson-Darling, Scholz & Stephens, J. Am. Stat. Assoc. 82
 * (1987) 918-924, with midranks. Where most values stand alone the p-value is that of the law of large samples, which the paper found good from 5
 * in a sample on; of smaller samples and of rounded values, it is that of dealing the values out at random (`random` is drawn from), which is exact
 * but for luck. Null where all values are alike.
 */
export function alike(
  samples: readonly (readonly number[])[],
  random: RandomNumbers,
  deals = usualDeals,
): Alike | null {
  const pooled = pool(samples)
  if (pooled.lots.length < 2) return null
  const counts = new Float64Array(pooled.lots.length)
  const seen = midrankStatistic(pooled, counts)
  const degrees = samples.length - 1
  const statistic = (seen - degrees) / Math.sqrt(andersonDarlingVariance(pooled.sizes))
  const isRough = pooled.lots.length < 0.75 * pooled.ranks.length || Math.min(...pooled.sizes) < 5
  if (!isRough) return { statistic, pValue: andersonDarlingAbove(statistic, degrees), by: 'limit' }
  return { statistic, pValue: byLot(pooled, counts, seen, random, deals), by: 'lot' }
}

/** Share of deals, and what was seen as one of them, with a statistic of at least `seen`. Deals the ranks out anew in place. */
function byLot(
  pooled: Pooled,
  counts: Float64Array,
  seen: number,
  random: RandomNumbers,
  deals: number,
): number {
  const { ranks } = pooled
  // a sum in another order may differ in its last digits
  const least = seen * (1 - 1e-12)
  let asFar = 1
  for (let deal = 0; deal < deals; deal++) {
    for (let left = ranks.length - 1; left > 0; left--) {
      random.advance()
      const other = Math.floor(random.value * (left + 1))
      const held = ranks[left]!
      ranks[left] = ranks[other]!
      ranks[other] = held
    }
    if (midrankStatistic(pooled, counts) >= least) asFar++
  }
  return asFar / (deals + 1)
}

/**
 * Whether samples, two or more of at least one value each, lie alike high: Kruskal & Wallis, J. Am. Stat. Assoc. 47 (1952) 583-621 (from memory), with midranks
 * and the correction for ties. Chi-square of small samples (below 5) is rough. Null where all values are alike.
 */
export function kruskalWallis(samples: readonly (readonly number[])[]): ChiSquareTest | null {
  const { sizes, lots, ranks } = pool(samples)
  if (lots.length < 2) return null
  const all = ranks.length
  let below = 0
  const midranks = lots.map((lot) => {
    below += lot
    return below - (lot - 1) / 2
  })
  let [begin, sum] = [0, 0]
  for (const size of sizes) {
    let own = 0
    for (let at = begin; at < begin + size; at++) own += midranks[ranks[at]!]! - (all + 1) / 2
    begin += size
    sum += (own * own) / size
  }
  const ties = lots.reduce((total, lot) => total + lot ** 3 - lot, 0)
  const statistic = (12 * sum) / (all * (all + 1)) / (1 - ties / (all ** 3 - all))
  const degreesOfFreedom = sizes.length - 1
  return { statistic, degreesOfFreedom, pValue: chiSquareAbove(statistic, degreesOfFreedom) }
}

/**
 * Largest gap between the distribution functions of two samples of at least one value each, and the p-value of large samples, which is too high of small or rounded
 * ones: Smirnov, Annals of Mathematical Statistics 19 (1948) 279-281 (from memory).
 */
export function twoSampleGap(
  first: readonly number[],
  second: readonly number[],
): { statistic: number; pValue: number } {
  const { lots, ranks } = pool([first, second])
  const [n, m] = [first.length, second.length]
  const steps = new Float64Array(lots.length)
  for (const [at, rank] of ranks.entries()) steps[rank]! += at < n ? 1 / n : -1 / m
  let [gap, statistic] = [0, 0]
  for (const step of steps) {
    gap += step
    statistic = Math.max(statistic, Math.abs(gap))
  }
  return { statistic, pValue: kolmogorovAbove(statistic * Math.sqrt((n * m) / (n + m))) }
}

/** Chance that the limit of root n times Kolmogorov's distance is above `x`, at least 0; its series far out, and that which is fast near 0. */
function kolmogorovAbove(x: number): number {
  if (x < 0.2) return 1
  const terms = Array.from({ length: 20 }, (_, index) => index + 1)
  if (x < 1) {
    const sum = terms.reduce((all, k) => all + Math.exp(-(((2 * k - 1) * Math.PI) ** 2) / (8 * x * x)), 0)
    return 1 - (Math.sqrt(2 * Math.PI) / x) * sum
  }
  return 2 * terms.reduce((all, k) => all + (k % 2 === 1 ? 1 : -1) * Math.exp(-2 * k * k * x * x), 0)
}
