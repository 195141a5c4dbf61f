/** Findings on how values are given: what they rest on, what a log cannot show, and what is said in people's own words. */
import { halfWidth, whatIsKnown } from '../../inputs/what-is-known.js'
import { valueAt } from '../../scenario/issues.js'
import { type Evidence, type Known, restingOn } from '../../scenario/known.js'
import type { Distribution, Observed } from '../../scenario/law.js'
import type { Looked, Rule, Tell } from '../finding.js'

/** Fewer observations say little of a mean, and next to nothing of a spread. Project rule. */
const fewObservations = 20

export const evidenceFindings: Rule = (looked, tell) => {
  for (const each of looked.evidence) {
    const { known } = each
    if (known.form === 'count' && known.events === 0) tellNone(looked, each, tell)
    if (known.form === 'fitted' || known.form === 'observed') {
      const law = valueAt(looked.scenario, each.at) as Distribution
      if (independentOf(known) < fewObservations) tellFew(looked, each, law, tell)
      if (known.form === 'observed') tellLongest(looked, each, law as Observed, tell)
    }
  }
}

/** What is independent of one another: observations, or days where these are drawn as wholes. */
const independentOf = (known: Extract<Known, { form: 'fitted' | 'observed' }>): number =>
  'days' in known && known.days !== undefined ? known.days : known.observations

const placeOf = ({ path }: Evidence) => path.split('.')

function tellNone({ scenario, words }: Looked, each: Evidence, tell: Tell): void {
  const { low, high } = whatIsKnown(scenario, each)
  const isTime = each.known.form === 'count' && each.known.of === 'interval'
  const limit = isTime
    ? `happen as often as every ${words.time(low)} on average`
    : `have a chance of up to ${words.share(high)}`
  tell.note(
    'none-counted',
    placeOf(each),
    `\`${each.path}\` is ${restingOn(each.known)}. With this value fixed, none happen, here or in a run. But by this count they may ${limit} (95 %).`,
    'exact limits of a count: Garwood (1936), Clopper & Pearson (1934)',
    'count for longer, or give a guess with two ends',
  )
}

function tellFew({ words }: Looked, each: Evidence, law: Distribution, tell: Tell): void {
  const { known } = each
  if (known.form !== 'fitted' && known.form !== 'observed') return
  const half = halfWidth(law, known.observations)
  const within =
    half < 1
      ? `its mean is known to within ${words.share(Number(half.toPrecision(2)))}`
      : 'its mean is nearly unknown'
  const onDays = known.form === 'observed' && known.days ? ` on ${known.days} days, drawn as whole days` : ''
  tell.note(
    'few-observations',
    placeOf(each),
    `\`${each.path}\` is based on ${known.observations} observations${onDays}: ${within} (95 %).`,
    'Student t; project rule: 20 or more',
    'log more of them',
  )
}

function tellLongest({ words }: Looked, each: Evidence, { values }: Observed, tell: Tell): void {
  tell.note(
    'longest-observed',
    placeOf(each),
    `\`${each.path}\` draws from the ${values.length} values that were seen, so never more than the largest, ${words.time(values.at(-1)!)}. In the future about 1 in ${values.length + 1} will be larger.`,
    'order statistics: the share beyond the largest of n is 1/(n + 1) on average',
    'fit a distribution to them, or log more',
  )
}

/** What was written in people's own words, and what it is taken for, each said once: tape by the inch, rates and stops a shift, times somewhere between two. */
export const readAsFindings: Rule = ({ readAs }, tell) => {
  for (const { path, written, meaning } of readAs)
    if (meaning !== null)
      tell.note(
        'read-as',
        path,
        `\`${written}\` is read as ${meaning}.`,
        'definition of the format',
        'nothing to do, if this is what you mean',
      )
}
