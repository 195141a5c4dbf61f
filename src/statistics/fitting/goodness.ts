/** Whether a fitted law may be the one that times of a log come from, and how large the misfit is. */
import type { RandomNumbers } from '../../engine/draw.js'
import { distanceOf, placed, quantileOf } from './distance.js'
import { type Distribution, distributionOf, type FittedLaw } from './law.js'
import { drawLog, logOf } from './log.js'
import { refits } from './refit.js'
import { timesIn } from './rough.js'
import { readAs, type Sample, type Seen } from './sample.js'
import { spansOf } from './shown.js'

/** A statistic with its p-value. */
export interface Tested {
  statistic: number
  pValue: number
}

/** How well a law fits. */
export interface Goodness {
  /** Kolmogorov's D. */
  largestGap: Tested
  /** Anderson & Darling's A^2, which sees misfits in the tails better: the one to judge by. */
  weightedGap: Tested
  /** Logs that the p-values rest on: those drawn that could be fitted. */
  bootstraps: number
  /** Times that the p-values rest on: fewer than the sample has where so many were picked by lot. */
  tested: number
  misfit: Misfit
}

/** How large a misfit is, which p-values do not say: with many times they fall however small it is. */
export interface Misfit {
  /** Largest difference of the quantiles from 5 to 95 % of the log and of what the law predicts of it, over the mean of the law. */
  quantiles: number
  /** Mean of what the log shows beside that of the law for it, s; null where times were cut off. */
  means: { law: number; log: number; error: number } | null
}

/** Times that are tested at most: with so many, misfits are refused that matter to nobody. Project rule. */
export const mostTested = 2000

/** How many logs are drawn: at most, and until so many of them have as large an A^2. */
export interface Bootstraps {
  most: number
  enough: number
}

/**
 * That 20 of 199 are as large says that p is above 5 %, as 199 would; the more often a law fits, the sooner it is known. Besag & Clifford, Biometrika 78 (1991)
 * 301-304 (from memory).
 */
const usualBootstraps: Bootstraps = { most: 199, enough: 20 }

/**
 * How well `law`, the likeliest of its family for `sample`, fits it. p-values by parametric bootstrap: as many times are drawn from the law, go through a log like this one, and the
 * family is fitted again; p is the share of statistics that are as large, the seen one being one of them. Stute, Gonzalez Manteiga & Presedo Quindimil, Metrika
 * 40 (1993) 243-256 (from memory). Tables for known laws would call too much a fit. Null where no drawn log could be fitted.
 */
export function goodness(
  sample: Sample,
  law: FittedLaw,
  random: RandomNumbers,
  { most, enough }: Bootstraps = usualBootstraps,
): Goodness | null {
  const picked = pickSome(sample, random)
  // those that were picked are fitted by themselves, as the drawn logs are
  const own = picked === sample ? law : refits(law, sample)(picked)
  if (own === null) return null
  const refit = refits(own, picked)
  const seen = distances(picked, own)
  const log = logOf(picked)
  let [done, asLarge, asWeighted] = [0, 1, 1]
  for (let index = 0; index < most && asWeighted <= enough; index++) {
    const drawn = drawLog(log, own, random)
    const again = refit(drawn)
    if (again === null) continue
    const { largest, weighted } = distances(drawn, again)
    done++
    if (largest >= seen.largest * (1 - hair)) asLarge++
    if (weighted >= seen.weighted * (1 - hair)) asWeighted++
  }
  if (done === 0) return null
  return {
    largestGap: { statistic: seen.largest, pValue: asLarge / (done + 1) },
    weightedGap: { statistic: seen.weighted, pValue: asWeighted / (done + 1) },
    bootstraps: done,
    tested: log.n,
    misfit: misfitOf(sample, distributionOf(law)),
  }
}

/** Statistics that differ by less, relatively, are alike: rounded logs have few. */
const hair = 1e-9

const distances = (sample: Sample, law: FittedLaw) =>
  distanceOf(placed(spansOf(sample, distributionOf(law)), sample.counts))

/** As many of the times as are tested, picked by lot; all where they are not more. */
function pickSome(sample: Sample, random: RandomNumbers): Sample {
  let left = timesIn(sample)
  if (left <= mostTested) return sample
  let wanted = mostTested
  const seen: Seen[] = []
  const counts: number[] = []
  for (const [index, each] of sample.seen.entries()) {
    let picked = 0
    // each of those left is picked with the chance wanted / left: Knuth, The Art of Computer Programming 2, sec. 3.4.2, algorithm S
    for (let one = 0; one < sample.counts[index]!; one++) {
      random.advance()
      if (random.value * left-- < wanted) {
        picked++
        wanted--
      }
    }
    if (picked > 0) {
      seen.push(each)
      counts.push(picked)
    }
  }
  return { seen, counts, from: sample.from }
}

/** How large the misfit of a law is. */
export function misfitOf(sample: Sample, law: Distribution): Misfit {
  const { from } = sample
  const log = placed(spansOf(sample, law), sample.counts)
  const [missing, kept] = [law.below(from), law.above(from)]
  const shownMean = law.partialAbove(from) / kept
  const timeAt = (u: number) => law.quantile(Math.min(missing + kept * u, 1 - Number.EPSILON))
  let quantiles = 0
  for (let twentieth = 1; twentieth < 20; twentieth++) {
    const p = twentieth / 20
    quantiles = Math.max(quantiles, Math.abs(timeAt(quantileOf(log, p)) - timeAt(p)) / law.mean)
  }
  return { quantiles, means: meansOf(sample, shownMean) }
}

/** The mean of what the log shows, which rounding leaves as it is, with its standard error, beside that of the law. */
function meansOf({ seen, counts }: Sample, law: number): Misfit['means'] {
  let [n, sum, squares] = [0, 0, 0]
  for (const [index, each] of seen.entries()) {
    const time = readAs(each)
    if (time === null) return null
    n += counts[index]!
    sum += counts[index]! * time
  }
  const mean = sum / n
  for (const [index, each] of seen.entries()) squares += counts[index]! * (readAs(each)! - mean) ** 2
  return { law, log: mean, error: Math.sqrt(squares / (n - 1) / n) }
}
