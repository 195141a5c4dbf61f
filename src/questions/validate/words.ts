/** Words of a validation: how the days were chosen, what the verdict is, what explains it. */
import { figures } from '../../catalogue/printed-units.js'
import { counted, grouped, percentText, sentences } from '../../report/format.js'
import type { Tone } from '../../report/screen.js'
import type { Verdict } from '../../statistics/equivalence.js'
import type { Kept } from './asked.js'
import type { Explanation, GoodResult, ValidateResult } from './document.js'

/** Which days count. */
export function chosenWords(kept: Kept): string {
  switch (kept.by) {
    case 'list':
      return 'days that the fit names as held out'
    case 'share':
      return `${percentText(kept.share)} of the days, the same that the fit held out`
    case 'unseen':
      return 'all days of a record that no fit has used, as you say'
    case 'nothing':
      return 'all days, which a fit may have used'
  }
}

/** A share with its sign, to a hundredth of a per cent: `+1.23 %`. */
export function signedPercent(share: number): string {
  const size = grouped(Math.abs(share) * 100, 2)
  return `${size === '0.00' ? '' : share > 0 ? '+' : '−'}${size} %`
}

/** A difference with its sign, with so many figures. */
export const signed = (value: number, figuresOf = 3): string =>
  `${value > 0 ? '+' : value < 0 ? '−' : ''}${figures(Math.abs(value), figuresOf)}`

/** Each verdict in words, and how it looks. */
export const verdictWords: Readonly<Record<Verdict, string>> = {
  ...{ within: 'shown within', 'not-shown': 'not shown within', outside: 'shown outside' },
}
export const verdictTones: Readonly<Record<Verdict, Tone>> = {
  ...{ within: 'good', 'not-shown': 'warning', outside: 'error' },
}

/** How far the good cases of the model lie from those of the plant, with the interval that decides. */
export function gapText({ share }: GoodResult, confidence: number): string {
  const at = `${percentText(1 - 2 * (1 - confidence))} interval`
  const ends =
    share.low === null || share.high === null
      ? 'without an interval: too few days, or all differ by the same'
      : `${signedPercent(share.low)} to ${signedPercent(share.high)}, ${at}`
  return `the good cases of the model lie ${signedPercent(share.mean)} from those of the plant (${ends})`
}

/** The verdict in a sentence. */
export function verdictText({
  good,
  margin,
  made,
}: Pick<ValidateResult, 'margin' | 'made'> & { good: GoodResult }): string {
  return `${upperFirst(verdictWords[good.verdict])} ${percentText(margin)}: ${gapText(good, made.confidence)}.`
}

const own = (days: ValidateResult['days']): string =>
  days.every(({ drivenBy }) => drivenBy === 'cases')
    ? 'arrivals and stops'
    : days.some(({ drivenBy }) => drivenBy === 'cases')
      ? 'stops, and its arrivals where they were logged,'
      : 'stops'

/** What it means that the plant's own stops were put in; empty where all came by laws. */
export function drivenText(result: ValidateResult): string {
  const { drivenBy, beside, days, good } = result
  switch (drivenBy) {
    case 'arrivals':
      return ''
    case 'stops':
      return `The plant's own ${own(days)} drive the model: any difference comes from the model of the line, not from simulated stops.`
    case 'both':
      return sentences(
        `With the plant's own stops instead of simulated ones: ${lowerFirst(verdictText({ ...result, good: beside!.good }))}`,
        readingOf(good.verdict, beside!.good.verdict),
      ).join(' ')
  }
}

const upperFirst = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1)

/** What the two verdicts say together: by laws of stops, and with the stops of the plant. */
function readingOf(byLaws: Verdict, withOwn: Verdict): string | false {
  if (byLaws === 'outside' && withOwn === 'within')
    return 'So the line is modelled well enough, but its simulated stops are wrong.'
  if (byLaws === 'not-shown' && withOwn === 'within')
    return 'So the line is modelled well enough; it is not known whether its simulated stops are.'
  if (byLaws === 'within' && withOwn === 'outside')
    return 'So errors of the simulated stops hide errors of the model of the line: with other stops or cases it will be wrong.'
  if (byLaws === 'outside' && withOwn === 'outside')
    return 'So the model of the line itself is wrong: look at speeds, times and buffers.'
  return false
}

/** `from 2026-08-03 to 2026-10-30`. */
export const spanOfDays = ({ days }: ValidateResult): string =>
  days.length === 1 ? `of ${days[0]!.day}` : `from ${days[0]!.day} to ${days.at(-1)!.day}`

/** What a scenario says of itself once it was validated. */
export function validatedWords(result: ValidateResult): string {
  const { made, days, margin, good, drivenBy } = result
  const verdict = {
    within: `good cases shown within ${percentText(margin)} of the plant's`,
    'not-shown': `good cases not shown within ${percentText(margin)} of the plant's`,
    outside: `good cases shown to differ by more than ${percentText(margin)} from the plant's`,
  }[good.verdict]
  return `Record ${made.record.title}, ${counted(days.length, 'day')} ${spanOfDays(result)} that no fit used${drivenBy === 'stops' ? ", driven by the plant's own stops" : ''}: ${verdict} (risk of a wrong yes ${percentText(1 - made.confidence)})`
}

const amount = (what: Explanation['what'], value: number): string =>
  what === 'stops' ? `${figures(value)}` : `${figures(value / 60)} min`

/** What would explain the gap; empty where nothing can be said. `isHeaded`: it stands below a heading that says so. */
export function explanationText({ explains, good }: ValidateResult, isHeaded = false): string {
  if (!explains) return ''
  const { words, what, plant, model, isShown, worth, isAlong } = explains
  const sides = `${amount(what, plant)} a day in the plant, ${amount(what, model)} in the model`
  const worthText = `Its minutes are worth about ${grouped(Math.abs(worth), 0)} good cases a day ${worth > 0 ? 'more' : 'fewer'} in the model; the whole gap is ${grouped(Math.abs(good.model - good.plant), 0)}`
  const name = `${words}${what === 'seconds' ? ', minutes stopped' : ''}`
  if (!isShown) return `No cause of stops is shown to differ. Largest difference: ${name}: ${sides}.`
  return isAlong
    ? `${isHeaded ? upperFirst(name) : `Best explanation of the gap: ${name}`}, with ${sides}. ${worthText}.`
    : `${upperFirst(name)} differ: ${sides}; but in the opposite direction to the gap in good cases.`
}
