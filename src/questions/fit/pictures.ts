/** What the charts of an input show, few enough points to be kept in a document: quantiles, lengths, what lasts longer. */
import { placed, quantileOf as placeOf } from '../../statistics/fitting/distance.js'
import { distributionOf, type FittedLaw } from '../../statistics/fitting/law.js'
import { readAs, type Sample } from '../../statistics/fitting/sample.js'
import { spansOf } from '../../statistics/fitting/shown.js'
import { survivalCurve } from '../../statistics/fitting/survival.js'
import type { At, FamilyResult, FittedInput } from './document.js'

/** Most points of a row. */
const mostPoints = 200

/** Every so many-th, the ends always. */
function thinned<T>(all: readonly T[]): T[] {
  if (all.length <= mostPoints) return [...all]
  const stride = (all.length - 1) / (mostPoints - 1)
  return Array.from({ length: mostPoints }, (_, index) => all[Math.round(index * stride)]!)
}

/** The law as the log shows it: of times over `from` alone. */
function overFrom(law: FittedLaw, from: number) {
  const of = distributionOf(law)
  const kept = from > 0 ? of.above(from) : 1
  return {
    quantile: (p: number) => of.quantile(Math.min(1 - Number.EPSILON, 1 - (1 - p) * kept)),
    density: (x: number) => (x < from ? 0 : Math.exp(of.logDensity(x)) / kept),
  }
}

export function picturesOf(
  sample: Sample,
  chosen: FittedLaw | null,
  laws: ReadonlyMap<FamilyResult['family'], FittedLaw>,
): Pick<FittedInput['pictures'], 'quantiles' | 'histogram' | 'survival'> {
  return {
    quantiles: chosen ? quantilesOf(sample, chosen) : [],
    histogram: histogramOf(sample, laws),
    survival: {
      record: thinned([[0, 1], ...survivalCurve(sample).map(({ at, survival }): At => [at, survival])]),
      law: chosen ? survivalOf(sample, chosen) : [],
    },
  }
}

/**
 * Times of equal shares of record and law. Where times are rounded or cut off, a time of the record is where the law would have it at the place
 * that the log gives it.
 */
function quantilesOf(sample: Sample, chosen: FittedLaw): At[] {
  const { quantile } = overFrom(chosen, sample.from)
  const log = placed(spansOf(sample, distributionOf(chosen)), sample.counts)
  const points = Math.min(mostPoints / 2, log.n)
  return Array.from({ length: points }, (_, index): At => {
    const p = (index + 0.5) / points
    return [quantile(placeOf(log, p)), quantile(p)]
  }).filter(([x, y]) => Number.isFinite(x) && Number.isFinite(y))
}

/** What share of the log the law predicts to be longer than each time that it shows: read by the same clock. */
function survivalOf(sample: Sample, chosen: FittedLaw): At[] {
  const spans = spansOf(sample, distributionOf(chosen))
  const points = sample.seen.flatMap((seen, index): At[] => {
    const length = readAs(seen)
    return length === null ? [] : [[length, spans[index]!.high.above]]
  })
  return thinned([[0, 1], ...points.sort(([a], [b]) => a - b)])
}

const along = (from: number, to: number, of: (x: number) => number): At[] =>
  Array.from({ length: 101 }, (_, index): At => {
    const x = from + ((to - from) * index) / 100
    return [x, of(x)]
  })

/** The clock of rounded times, s; 0 where they are exact. */
const grainOf = ({ seen }: Sample): number =>
  Math.max(
    0,
    ...seen
      .slice(0, 1000)
      .map((each) =>
        'clocked' in each ? each.grain : 'between' in each ? each.between[1] - each.between[0] : 0,
      )
      .filter(Number.isFinite),
  )

/** Bars of one width, a whole number of grains where times are rounded; what lies far out is in the last one's reach. */
function histogramOf(
  sample: Sample,
  laws: ReadonlyMap<FamilyResult['family'], FittedLaw>,
): FittedInput['pictures']['histogram'] {
  const read = sample.seen.flatMap((seen, index) => {
    const length = readAs(seen)
    return length === null ? [] : [{ length, count: sample.counts[index]! }]
  })
  read.sort((a, b) => a.length - b.length)
  const all = read.reduce((sum, { count }) => sum + count, 0)
  if (all < 2) return null
  const at = (share: number): number => {
    let below = 0
    for (const { length, count } of read) {
      below += count
      if (below >= share * all) return length
    }
    return read.at(-1)!.length
  }
  // 99 of 100: one long stop would press all others into one bar
  const end = Math.max(at(0.99), at(0.5) * 2)
  const grain = grainOf(sample)
  // Freedman & Diaconis, between 8 and 40 bars
  const wished = (2 * (at(0.75) - at(0.25))) / Math.cbrt(all)
  const fine = Math.min(end / 8, Math.max(end / 40, wished))
  const width = grain > 0 ? Math.max(1, Math.round(fine / grain)) * grain : fine
  const first = grain > 0 ? -grain / 2 : 0
  const bars = Array.from({ length: Math.max(1, Math.ceil((end - first) / width)) }, (_, index) => ({
    from: Math.max(0, first + index * width),
    to: first + (index + 1) * width,
    share: 0,
  }))
  for (const { length, count } of read) {
    const bar = bars[Math.floor((length - first) / width)]
    if (bar) bar.share += count / all / (bar.to - bar.from)
  }
  const last = bars.at(-1)!.to
  return {
    bars,
    densities: [...laws].map(([family, law]) => {
      const { density } = overFrom(law, sample.from)
      // some laws have no limit at 0
      return { family, at: along(Math.max(sample.from, last / 400), last, density) }
    }),
  }
}
