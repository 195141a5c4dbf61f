/** The laws of the times of an input: each family fitted and tested, and which of them is taken. */
import { Stream } from '../../engine/stream.js'
import { type Candidate, type Choice, choose } from '../../statistics/fitting/choose.js'
import { fit as fitFamily } from '../../statistics/fitting/fit.js'
import { goodness } from '../../statistics/fitting/goodness.js'
import { distributionOf, type FittedLaw, families } from '../../statistics/fitting/law.js'
import { fitMixture } from '../../statistics/fitting/mixture.js'
import type { Sample } from '../../statistics/fitting/sample.js'
import type { FamilyResult } from './document.js'

/** Fewer times than this do not tell two laws in one apart. */
const leastOfMixture = 30

/** Every law that could be fitted, and the choice among them. */
export interface Laws {
  candidates: Candidate[]
  choice: Choice
}

/** `path` names the random numbers of the tests. */
export function lawsOf(
  sample: Sample,
  path: string,
  { confidence, seed }: { confidence: number; seed: string },
): Laws {
  const events = sample.seen.reduce(
    (sum, each, index) => sum + ('over' in each ? 0 : sample.counts[index]!),
    0,
  )
  const fits = [
    ...families.map((family) => fitFamily(sample, family, confidence)),
    ...(events >= leastOfMixture ? [fitMixture(sample, confidence)] : []),
  ].flatMap((each) => ('law' in each ? [each] : []))
  const least = Math.min(...fits.filter(({ law }) => law.family !== 'mixture').map(({ bic }) => bic))
  const candidates = fits
    // two laws in one take more to be believed than one
    .filter(({ law, bic }) => law.family !== 'mixture' || bic < least)
    .map((each): Candidate => {
      const random = new Stream('fit', `${path} ${each.law.family}`)
      random.begin(seed, 0)
      return { fit: each, goodness: goodness(sample, each.law, random) }
    })
  return { candidates, choice: choose(candidates) }
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
