/** The laws of the times of an input: each family fitted and tested, and which of them is taken. */
import { Stream } from '../../engine/stream.js'
import { type Candidate, type Choice, choose } from '../../statistics/fitting/choose.js'
import { type Fit, fit as fitFamily, type Unfitted } from '../../statistics/fitting/fit.js'
import { type Bootstraps, goodness } from '../../statistics/fitting/goodness.js'
import { distributionOf, type FittedLaw, families } from '../../statistics/fitting/law.js'
import { fitMixture } from '../../statistics/fitting/mixture.js'
import { eventsIn } from '../../statistics/fitting/rough.js'
import type { Sample } from '../../statistics/fitting/sample.js'
import type { FamilyResult, Known } from './document.js'

/** Fewer times than this do not tell two laws in one apart. */
const leastOfMixture = 30

/** Fewer times than this are no law of their own: it has two parameters. */
const leastOfPart = 2

/** Of so many times those that belong to the first part of two laws in one, as a scenario says it. */
export const timesOfFirst = (share: number, events: number): number => Math.round(share * events)

/** Both parts of two laws in one rest on times enough. */
export function hasTimesEnough(law: FittedLaw, events: number): boolean {
  if (law.family !== 'mixture') return true
  const first = timesOfFirst(law.share, events)
  return Math.min(first, events - first) >= leastOfPart
}

/** Every law that could be fitted, and the choice among them. */
export interface Laws {
  sample: Sample
  candidates: Candidate[]
  choice: Choice
}

/** How laws are fitted and tested; `bootstraps`: how many logs are drawn for each test, where that is not what is usual. */
export interface LawsAsked {
  confidence: number
  seed: string
  bootstraps?: Bootstraps
}

/** `path` names the random numbers of the tests. */
export function lawsOf(sample: Sample, path: string, { confidence, seed, bootstraps }: LawsAsked): Laws {
  const events = eventsIn(sample)
  const fitsOf = (each: Fit | Unfitted) => ('law' in each ? [each] : [])
  const simple = families.flatMap((family) => fitsOf(fitFamily(sample, family, confidence)))
  const least = Math.min(...simple.map(({ bic }) => bic))
  // two laws in one take more to be believed than one
  const mixed = (events >= leastOfMixture ? fitsOf(fitMixture(sample, confidence, least)) : []).filter(
    ({ law }) => hasTimesEnough(law, events),
  )
  const candidates = [...simple, ...mixed].map((each): Candidate => {
    const random = new Stream('fit', `${path} ${each.law.family}`)
    random.begin(seed, 0)
    return { fit: each, goodness: goodness(sample, each.law, random, bootstraps) }
  })
  return { sample, candidates, choice: choose(candidates) }
}

/** The chosen law and those that the record does not tell from it; none where none was chosen. */
export const keptOf = ({ choice: { chosen, alike } }: Laws): Fit[] =>
  chosen === null ? [] : [chosen, ...alike].map(({ fit }) => fit)

/** The mean of the chosen law, within the intervals of all that the record does not tell from it: which of them is true is not known either. */
export function meanKnown(laws: Laws): Known | null {
  const kept = keptOf(laws)
  if (kept.length === 0) return null
  return {
    value: kept[0]!.mean.value,
    low: ended(Math.min(...kept.map(({ mean }) => mean.low))),
    high: ended(Math.max(...kept.map(({ mean }) => mean.high))),
  }
}

const ended = (end: number): number | null => (Number.isFinite(end) ? end : null)

/** The same for the document, in the words of the format. */
export function familyResult({ fit: fitted, goodness: found }: Candidate): FamilyResult {
  const { law, mean, logLikelihood, aic, bic, parameters } = fitted
  return {
    family: law.family,
    parameters: parameters.map(({ name, value, low, high }) => ({
      ...{ name: wordOf(name, law), unit: isTime(name) ? 's' : '', value },
      ...{ low: ended(low), high: ended(high) },
    })),
    mean: { value: mean.value, low: ended(mean.low), high: ended(mean.high) },
    ...{ cv: distributionOf(law).cv, logLikelihood, aic, bic },
    kolmogorovSmirnov: found && { statistic: found.largestGap.statistic, p: found.largestGap.pValue },
    andersonDarling: found && { statistic: found.weightedGap.statistic, p: found.weightedGap.pValue },
    quantileGap: found?.misfit.quantiles ?? null,
  }
}

const isTime = (name: string): boolean => name === 'mean' || name === 'scale'

/** Mean and spread of the logarithm are called as textbooks do. */
function wordOf(name: string, { family }: FittedLaw): string {
  if (family !== 'lognormal' && family !== 'mixture') return name
  const [part, parameter = part] = name.split('.') as [string, string?]
  const words = { location: 'mean of ln', spread: 'deviation of ln', share: 'share of the shorter' }[
    parameter
  ]
  const of = { first: ' (shorter)', second: ' (longer)' }[part] ?? ''
  return `${words ?? name}${of}`
}
