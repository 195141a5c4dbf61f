/** Fits of two lognormal parts, such as minor and major stops. */
import { studentT } from '../quantile.js'
import { inverseOf, triangleOf } from './cholesky.js'
import { leastSpread, type Mixture, mixturesOf, ordered } from './expectation.js'
import {
  covarianceOf,
  criteria,
  type Fit,
  type Known,
  type Parameter,
  saysNothing,
  type Unfitted,
} from './fit.js'
import { distributionOf } from './law.js'
import { logLikelihood } from './likelihood.js'
import { maximise } from './maximise.js'
import { eventsIn, obstacleTo, roughly } from './rough.js'
import type { Sample } from './sample.js'

/** Rise of the log-likelihood in a round of the first search, which is slow near a top, below which Newton takes over. */
const gain = 1e-3

/** The mixture that makes complete `values`, in s and above 0, likeliest, by expectation and maximisation alone: for bootstraps. Null where there is none. */
export function fitCompleteMixture(values: Float64Array, weights = values.map(() => 1)): Mixture | null {
  const heightOf = (law: Mixture) => {
    const { logDensity } = distributionOf(law)
    return values.reduce((sum, value, index) => sum + weights[index]! * logDensity(value), 0)
  }
  return best(mixturesOf({ values, weights }, 1e-7), heightOf)[0] ?? null
}

/**
 * The mixture of two lognormal laws that makes `sample` likeliest, parts in the order of their means: the highest top with
 * no part narrower than a twentieth of all. Intervals at `confidence`, on (0, 1), are from the curvature of the likelihood, shares on the
 * logit, spreads and means on the logarithm; they are rough where few times tell the parts apart: of 200 logs of 200 stops those of the locations held 94 to 96 %, but 89 % where stops were
 * read to the minute and the shortest tenth was missing. Whether two parts are more than
 * one is for the criteria: chi-square does not hold for their number.
 */
export function fitMixture(sample: Sample, confidence = 0.95): Fit | Unfitted {
  const why = obstacleTo(sample, 'mixture')
  if (why !== null) return { why }
  const times = roughly(sample)
  const floor = leastSpread(times)
  const heightOf = (law: Mixture) => logLikelihood(sample, distributionOf(law))
  for (const start of best(mixturesOf(times, gain), heightOf)) {
    const found = topFrom(start, heightOf, floor)
    if (found !== null)
      return { ...reported(found, confidence, eventsIn(sample)), ...countsOf(sample, found.top) }
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
  const top = maximise(
    (x) => {
      const law = lawAt(x)
      return isWide(law) ? heightOf(law) : Number.NEGATIVE_INFINITY
    },
    [0, 0, 0, 0, 0],
  )
  const triangle = top === null ? null : triangleOf(top.information)
  if (top === null || triangle === null) return null
  const covariance = inverseOf(triangle)
  if (covariance.some((row, index) => !(row[index]! < saysNothing ** 2))) return null
  const lawNear = (by: readonly number[]) => lawAt(top.at.map((each, index) => each + by[index]!))
  const law = lawNear([0, 0, 0, 0, 0])
  const inOrder = ordered(law)
  return inOrder === law
    ? { law, top: heightOf(law), lawNear, covariance }
    : topFrom(inOrder, heightOf, floor)
}

/** Laws about a mixture: logit of the share, then location in spreads and logarithm of the spread of either part. */
function lawsNear({ share, first, second }: Mixture): (x: readonly number[]) => Mixture {
  const odds = share / (1 - share)
  const part = (of: Mixture['first'], along: number, wider: number): Mixture['first'] => ({
    family: 'lognormal',
    location: of.location + of.spread * along,
    spread: of.spread * Math.exp(wider),
  })
  return (x) => ({
    family: 'mixture',
    share: 1 / (1 + 1 / (odds * Math.exp(x[0]!))),
    first: part(first, x[1]!, x[2]!),
    second: part(second, x[3]!, x[4]!),
  })
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

const meanFigure: MixtureFigure = { name: 'mean', of: (law) => distributionOf(law).mean, scale: 'log' }

/** What a fit says of its figures. */
function reported({ law, lawNear, covariance: near }: Found, confidence: number, events: number) {
  const t = studentT((1 + confidence) / 2, Math.max(1, events - 1))
  const covariance = covarianceOf(figures, lawNear, near)
  const known = (figure: MixtureFigure, se: number): Known => about(figure.of(law), t * se, figure.scale)
  const parameters = figures.map((figure, index): Parameter => {
    const se = Math.sqrt(covariance[index]![index]!)
    return { name: figure.name, se, ...known(figure, se) }
  })
  const meanSe = Math.sqrt(covarianceOf([meanFigure], lawNear, near)[0]![0]!)
  return { law, parameters, covariance, mean: known(meanFigure, meanSe) }
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

/** What a fit says of its sample. */
function countsOf(sample: Sample, top: number) {
  const n = sample.counts.reduce((sum, count) => sum + count, 0)
  return { n, events: eventsIn(sample), logLikelihood: top, ...criteria(top, figures.length, n) }
}
