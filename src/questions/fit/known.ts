/** What is known of an input, in parts of a line: its rate with exact limits, or the mean of its law with its interval. */
import { amountText, figures as digits } from '../../catalogue/printed-units.js'
import { counted, type Parts } from '../../report/format.js'
import type { FittedInput, Known } from './document.js'
import { exposureAxis, familyWords } from './words.js'

/** A unit in which all three are easily read, and its size, s. */
const unitOf = (seconds: number): readonly [word: string, size: number] =>
  seconds < 120 ? ['s', 1] : seconds < 7200 ? ['min', 60] : ['h', 3600]

/** `(72 to 101)`; an end that is not known is told as such. */
function between(low: string | null, high: string | null): string {
  if (low !== null && high !== null) return `(${low} to ${high}) `
  if (low !== null) return `(${low} or more) `
  return high === null ? '' : `(up to ${high}) `
}

function known({ value, low, high }: Known, said: (value: number) => string, unit: string): Parts {
  const end = (at: number | null) => (at === null ? null : said(at))
  return [said(value), `${between(end(low), end(high))}${unit}`]
}

/** `85`, `(72 to 101) s`. */
export function knownTime(time: Known): Parts {
  const [word, size] = unitOf(time.value)
  return known(time, (seconds) => digits(seconds / size), word)
}

/** `0.90`, `(0.63 to 1.2) per 1000 cases`. */
function knownRate(rate: NonNullable<FittedInput['rate']>): Parts {
  const { per, perWord } = exposureAxis(rate.unit)
  return known(rate, (each) => digits(each * per), perWord)
}

/** Null where nothing is known. */
export function knownOf({ what, rate, mean, seen }: FittedInput): Parts | null {
  if ((what === 'chance' || what === 'time-to') && rate) return knownRate(rate)
  if (mean) return knownTime(mean)
  return seen ? knownTime({ value: seen.mean, low: null, high: null }) : null
}

export function restsOnText({ restsOn: on, events, cutOff, exposure, chosen }: FittedInput): string {
  const seen = counted(events, 'event')
  const all = cutOff > 0 ? `${seen}, ${cutOff} cut off` : seen
  switch (on) {
    case 'counted':
      return `counted: ${seen}${exposure ? ` in ${amountText(exposure, 'metric')}` : ''}`
    case 'fitted':
      return `${familyWords[chosen!]} fitted to ${all}`
    case 'observed':
      return `the record itself, ${all}`
    case 'nothing':
      return `nothing: ${all}`
  }
}

/** All values that an input gives, each with its path: its own, and those that go with it. */
export const valuesOf = ({ path, value, also }: FittedInput): [path: string, value: string][] => [
  ...(value === null ? [] : [[path, value] as [string, string]]),
  ...Object.entries(also),
]

/** Both in one line. */
export const knownText = (input: FittedInput): string =>
  [knownOf(input)?.join(' ') ?? '', restsOnText(input)].filter((part) => part !== '').join('; ')
