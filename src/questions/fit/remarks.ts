/** What a reader must know of an input before it is used, with its figures. */
import { figures as digits, wordsFor } from '../../catalogue/printed-units.js'
import { counted, percentText } from '../../report/format.js'
import type { Candidate, Reason } from '../../statistics/fitting/choose.js'
import type { Misfit } from '../../statistics/fitting/goodness.js'
import { distributionOf } from '../../statistics/fitting/law.js'
import { halfWidthOfMean } from '../../statistics/quantile.js'
import { rateOf } from '../../statistics/rates.js'
import type { FittedInput, Remark, TestResult } from './document.js'
import type { Laws } from './laws.js'
import { exposureAxis, familyWords } from './words.js'

const { time, share } = wordsFor('metric')

/** Fewer events than this are called few: a mean of 20 times is known to within 40 % or so. Project rule. */
export const few = 20

export const remark = (code: Remark['code'], text: string): Remark => ({ code, text })

/** The remarks that there are. */
export const remarksOf = (...all: readonly (Remark | false | null)[]): Remark[] =>
  all.flatMap((each) => each || [])

export const noted = (notes: readonly string[]): Remark[] => notes.map((text) => remark('left-out', text))

/** How little so many events say of a rate. */
export function remarksOfCount(
  { events, rate }: Pick<FittedInput, 'events' | 'rate'>,
  confidence: number,
): Remark[] {
  if (rate === null)
    return [
      remark(
        'no-exposure',
        'the record does not say in how many cases, so no chance can be calculated: give the good cases of each shift',
      ),
    ]
  const { per, perWord } = exposureAxis(rate.unit)
  if (events === 0)
    return [
      remark(
        'none-seen',
        `none was seen, but the rate may be up to ${digits(rate.high! * per)} ${perWord} at ${percentText(confidence)}`,
      ),
    ]
  if (events >= few) return []
  // the rate in units of its estimate
  const { low, high } = rateOf(events, events, confidence)
  return [
    remark(
      'few',
      `based on ${counted(events, 'event')}: the true rate may be ${digits(low, 2)} to ${digits(high, 2)} times this`,
    ),
  ]
}

/** How little so many times say, and how far law and record lie apart. */
export function remarksOfTimes(
  { events, chosen, alike }: Pick<FittedInput, 'events' | 'chosen' | 'alike'>,
  { choice: { chosen: candidate, reason } }: Laws,
  { longest, confidence }: { longest: number; confidence: number },
): Remark[] {
  if (events === 0)
    return [remark('none-seen', 'none was seen: no distribution can be fitted, keep your own value')]
  return remarksOf(
    events < few && candidate && fewTimes(events, candidate, reason === 'few', confidence),
    chosen === null && drawnFrom(events, longest, reason),
    ...(candidate?.goodness ? misfits(candidate.goodness.misfit, reason) : []),
    alike.length > 0 &&
      remark(
        'not-told-apart',
        `the record cannot distinguish it from ${alike.map((family) => familyWords[family]).join(' or ')}`,
      ),
  )
}

function fewTimes(events: number, { fit }: Candidate, isTooFew: boolean, confidence: number): Remark {
  const { cv } = distributionOf(fit.law)
  const within =
    events > 1 ? `: its mean is known to within about ${share(halfWidthOfMean(events, cv, confidence))}` : ''
  const why = isTooFew ? '; too few to choose a distribution, so the exponential one is used' : ''
  return remark('few', `based on ${counted(events, 'time')}${within}${why}`)
}

const drawnFrom = (events: number, longest: number, reason: Reason): Remark =>
  remark(
    'nothing-fits',
    `${reason === 'none' ? 'no distribution can be fitted' : 'no distribution fits'}: the model draws from the recorded times, so never longer than the longest, ${time(longest)}; on average ${share(1 / (events + 1))} of future times are longer`,
  )

const misfits = ({ quantiles, means }: Misfit, reason: Reason): Remark[] =>
  remarksOf(
    reason === 'small-misfit' &&
      remark(
        'nothing-fits',
        `with so many times every distribution is rejected; this one is off by at most ${share(quantiles)} of the mean, which hardly matters`,
      ),
    means &&
      Math.abs(means.law - means.log) > means.error &&
      remark(
        'mean-moved',
        `the mean of the distribution is ${time(means.law)}, the mean of the record ${time(means.log)}: downtime would be ${share(Math.abs(means.law / means.log - 1))} ${means.law > means.log ? 'more' : 'less'} than in the plant`,
      ),
  )

const rateChanged = remark(
  'trend',
  'its rate changed over the record: use the last weeks, or ask what changed',
)

const shownWords: Readonly<Record<TestResult['test'], Remark>> = {
  'trend-laplace': rateChanged,
  'trend-mil-hdbk-189': rateChanged,
  'trend-lengths': remark(
    'trend',
    'times grew longer or shorter over the record: use the last weeks, or ask what changed',
  ),
  'hour-of-day': remark('hours-differ', 'hours of the day differ: one rate for all hours hides the bad ones'),
  'counts-a-shift': remark(
    'clustered',
    'shifts differ more, or less, than by chance: events come in groups, and a shift may be worse than the model says',
  ),
  'ljung-box': remark(
    'clustered',
    'each time depends on the one before, but the model draws each independently',
  ),
  runs: remark('clustered', 'long times come together, but the model draws each independently'),
  alike: remark('not-alike', 'its names in the log differ: give each an entry of its own in `means`'),
}

/** What the tests show of an input, each thing once. */
export const remarksOfTests = (tests: readonly TestResult[]): Remark[] => [
  ...new Set(tests.filter(({ isShown }) => isShown).map(({ test }) => shownWords[test])),
]
