/** Fits of two lognormal parts, such as minor and major stops. */
import { studentT } from '../quantile.js'
import { leastSpread, type Mixture, mixturesOf, ordered } from './expectation.js'
import { covarianceOf, criteria, type Fit, type Known, type Parameter, topOf, type Unfitted } from './fit.js'
import { distributionOf } from './law.js'
import { logLikelihood } from './likelihood.js'
import { fallAt } from './profile.js'
import { lawsNear, meanOfParts, mixtureInterval, type Profiled } from './profile-mixture.js'
import { eventsIn, obstacleTo, roughly, timesIn } from './rough.js'
import type { Sample } from './sample.js'

/**
 * Times that each part must rest on: of two or three a spread may come out as anything, and draws of it reach means of ages. Project
 * rule; a spread that rests on ten lies within a factor of two of the truth in 95 of 100 (chi-square with 9 degrees of freedom).
 */
const leastOfPart = 10

/** Rise of the log-likelihood in a round of the first search, which is slow near a top, below which Newton takes over. */
const gain = 1e-3

/**
 * The mixture of two lognormal laws that makes `sample` likeliest, parts in the order of their means: the highest top with
 * no part narrower than a twentieth of all. Intervals at `confidence`, on (0, 1): of the mean from the profile of the likelihood, of parameters from its curvature, shares on the
 * logit, spreads on the logarithm; these are rough where few times tell the parts apart: of 200 logs of 200 stops those of the locations held 94 to 96 %, but 89 % where stops were
 * read to the minute and the shortest tenth was missing. Whether two parts are more than
 * one is for the criteria: chi-square does not hold for their number. One whose BIC is not `below` that of other laws is told as no better, at a
 * part of the cost.
 */
export function fitMixture(sample: Sample, confidence = 0.95, below = Infinity): Fit | Unfitted {
  const why = obstacleTo(sample, 'mixture')
  if (why !== null) return { why }
  const times = roughly(sample)
  const floor = leastSpread(times)
  const heightOf = (law: Mixture) => logLikelihood(sample, distributionOf(law))
  for (const start of best(mixturesOf(times, gain), heightOf)) {
    const found = topFrom(start, heightOf, floor)
    if (found === null) continue
    const counts = countsOf(sample, found.top)
    if (counts.bic >= below) return { why: 'no-better' }
    if (leastSeen(found.law, sample.from) * counts.events < leastOfPart) return { why: 'thin-part' }
    return { ...reported({ ...found, heightOf, floor }, confidence, counts.events), ...counts }
  }
  return { why: 'no-maximum' }
}

/** Those that are possible, the likeliest first. */
const best = (laws: readonly Mixture[], heightOf: (law: Mixture) => number): Mixture[] =>
  laws
    .map((law) => ({ law, height: heightOf(law) }))
    .filter(({ height }) => Number.isFinite(height))
    .sort((one, other) => other.height - one.height)
    .map(({ law }) => law)

interface Found {
  law: Mixture
  top: number
  lawNear(by: readonly number[]): Mixture
  covariance: number[][]
}

/** The top that a start leads to, its parts in order; null where a part shrinks to the floor, or nothing tells the parts apart. */
function topFrom(start: Mixture, heightOf: (law: Mixture) => number, floor: number): Found | null {
  const lawAt = lawsNear(start)
  const isWide = ({ first, second }: Mixture) => Math.min(first.spread, second.spread) > floor
  const found = topOf(
    (x) => {
      const law = lawAt(x)
      return isWide(law) ? heightOf(law) : Number.NEGATIVE_INFINITY
    },
    [0, 0, 0, 0, 0],
    lawAt,
  )
  if (found === null) return null
  const inOrder = ordered(found.law)
  return inOrder === found.law ? { ...found, top: heightOf(found.law) } : topFrom(inOrder, heightOf, floor)
}

/** A figure of a mixture, and the scale on which its interval lies evenly about it. */
interface MixtureFigure {
  name: string
  of(law: Mixture): number
  scale: 'logit' | 'plain' | 'log'
}

const figures: readonly MixtureFigure[] = [
  { name: 'share', of: ({ share }) => share, scale: 'logit' },
  { name: 'first.location', of: ({ first }) => first.location, scale: 'plain' },
  { name: 'first.spread', of: ({ first }) => first.spread, scale: 'log' },
  { name: 'second.location', of: ({ second }) => second.location, scale: 'plain' },
  { name: 'second.spread', of: ({ second }) => second.spread, scale: 'log' },
]

const meanFigure = { of: (law: Mixture) => distributionOf(law).mean }

/** What a fit says of its figures. */
function reported(
  { law, top, lawNear, covariance: near, heightOf, floor }: Found & Pick<Profiled, 'heightOf' | 'floor'>,
  confidence: number,
  events: number,
) {
  const t = studentT((1 + confidence) / 2, Math.max(1, events - 1))
  const covariance = covarianceOf(figures, lawNear, near)
  const known = (figure: MixtureFigure, se: number): Known => about(figure.of(law), t * se, figure.scale)
  const parameters = figures.map((figure, index): Parameter => {
    const se = Math.sqrt(covariance[index]![index]!)
    return { name: figure.name, se, ...known(figure, se) }
  })
  const meanSe = Math.sqrt(covarianceOf([meanFigure], lawNear, near)[0]![0]!)
  const profiled = { law, top, heightOf, floor, figure: meanOfParts }
  const mean = mixtureInterval(profiled, meanSe, fallAt(confidence, events))
  return { law, parameters, covariance, mean: { value: meanFigure.of(law), ...mean } }
}

/** `value` with an interval that is even about it on a scale, on which `half`, of the value itself, is taken over by its slope. */
function about(value: number, half: number, scale: MixtureFigure['scale']): Known {
  switch (scale) {
    case 'plain':
      return { value, low: value - half, high: value + half }
    case 'log':
      return { value, low: value * Math.exp(-half / value), high: value * Math.exp(half / value) }
    case 'logit': {
      const odds = value / (1 - value)
      const factor = Math.exp(half / (value * (1 - value)))
      return { value, low: 1 / (1 + factor / odds), high: 1 / (1 + 1 / (odds * factor)) }
    }
  }
}

/** Share of the times that a record shows which the part brings of which it shows fewer. */
function leastSeen({ share, first, second }: Mixture, from: number): number {
  const [one, other] = [
    share * distributionOf(first).above(from),
    (1 - share) * distributionOf(second).above(from),
  ]
  return Math.min(one, other) / (one + other)
}

/** What a fit says of its sample. */
function countsOf(sample: Sample, top: number) {
  const n = timesIn(sample)
  return { n, events: eventsIn(sample), logLikelihood: top, ...criteria(top, figures.length, n) }
}
