/** Whether samples of times, such as those of several machines or reasons, may come from one law. */
import type { RandomNumbers } from '../engine/draw.js'
import { andersonDarlingAbove, andersonDarlingVariance } from './anderson-darling.js'

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
