/** Figures as people read them: in the units of the scenario, rounded to what their interval supports. */

import { type Figure, wholeOf } from '../catalogue/figure.js'
import { type Display, nothing, printedUnit, thousandsApart } from '../catalogue/printed-units.js'

/** A number with thousands apart by a thin space. */
export function grouped(value: number, decimals: number): string {
  const text = Math.abs(value) < 0.5 * 10 ** -decimals ? (0).toFixed(decimals) : value.toFixed(decimals)
  const [whole, fraction] = text.split('.') as [string, string | undefined]
  const spaced = thousandsApart(whole)
  return fraction === undefined ? spaced : `${spaced}.${fraction}`
}

/** `1 shift`, `6 300 shifts`. */
export function counted(count: number, word: string): string {
  return `${grouped(count, 0)} ${word}${count === 1 ? '' : 's'}`
}

/** What of a figure is printed. */
export type Printable = Pick<Figure, 'mean' | 'low' | 'high' | 'unit' | 'few' | 'inputs'>

/** The parts of a figure: `14.29`, `± 0.04`, `cases/min`. */
export interface PrintedFigure {
  value: string
  interval: string
  unit: string
}

const notKnown: PrintedFigure = { value: nothing, interval: '', unit: '' }

/** Sides of an interval that differ by more than this share of the longer one are given apart. */
const uneven = 1 / 3

/** Figures of a number that anybody reads at a glance: no value is told to more. */
const mostFigures = 5

/**
 * A figure in the units of `display`, with the figures that its plus-minus supports and five at most. The half-width, the longer side of the interval,
 * is given with two figures (one from 3 to 10), and the value to the same place; an interval that is far from even has its ends, and so has one that
 * leaves 0 out where value and half-width would not say so. One that rests on too few events has their number instead. Where inputs were drawn the
 * interval holds both kinds. What was the same in all shifts, or to five figures, has nothing; without an interval no value is given either.
 * `said` may put a sign before each number but the half-width.
 */
export function printFigure(
  figure: Printable | undefined,
  display: Display,
  said: (number: string) => string = (number) => number,
): PrintedFigure {
  if (!figure || figure.mean === null) return notKnown
  const { factor, word: unit } = printedUnit(figure.unit, display)
  const mean = figure.mean * factor
  const { low, high } = wholeOf(figure)
  if (low === null || high === null)
    return figure.few === undefined
      ? notKnown
      : { value: said(rounded(mean, 3)), interval: `(${fewText(figure.few)})`, unit }
  const ends = { mean, low: low * factor, high: high * factor }
  const half = Math.max(mean - ends.low, ends.high - mean)
  if (half <= Math.abs(mean) * 1e-12) return { value: said(rounded(mean, 4)), interval: '', unit }
  const place = placeOf(half)
  const coarsest = mean === 0 ? place : decadeOf(mean) - mostFigures + 1
  if (coarsest > place && half < 0.5 * 10 ** coarsest)
    return { value: said(toPlace(mean, coarsest)), interval: '', unit }
  return {
    value: said(toPlace(mean, Math.max(place, coarsest))),
    interval: intervalText(ends, half, Math.max(place, coarsest), coarsest > place, said),
    unit,
  }
}

/** The power of ten of the first figure of a number. */
const decadeOf = (value: number): number => Math.floor(Math.log10(Math.abs(value)) + 1e-12)

/** The power of ten to which a value of that half-width is told. */
function placeOf(half: number): number {
  const decade = decadeOf(half)
  const isTwoFigures = decade >= 1 || Number(half.toExponential().charAt(0)) < 3
  return Math.max(-8, isTwoFigures ? decade - 1 : decade)
}

/** A number to a power of ten. */
function toPlace(value: number, place: number, round: (value: number) => number = Math.round): string {
  if (place <= 0 && round === Math.round) return grouped(value, -place)
  const step = 10 ** place
  // of the twelve figures that a number has for sure, so that 0.0003 / 0.0001 is 3
  const steps = round(Number((value / step).toPrecision(12)))
  return grouped(steps * step, Math.max(0, -place))
}

/** `± 0.04`, or both ends. Where five figures are coarser than the plus-minus it is told outwards, never narrower than it is. */
function intervalText(
  { mean, low, high }: Record<'mean' | 'low' | 'high', number>,
  half: number,
  place: number,
  isCoarse: boolean,
  said: (number: string) => string,
): string {
  const isEven = Math.abs(mean - low - (high - mean)) <= uneven * half
  const halfText = toPlace(half, place, isCoarse ? Math.ceil : Math.round)
  const isOff = low > 0 || high < 0
  const numberOf = (text: string) => Math.abs(Number(text.replaceAll('\u2009', '')))
  if (isEven && (!isOff || numberOf(toPlace(mean, place)) > numberOf(halfText))) return `± ${halfText}`
  const end = (value: number, outwards: (value: number) => number) => {
    const text = toPlace(value, place, isCoarse ? outwards : Math.round)
    // an end that is not 0 is not told as 0
    return said(isOff && numberOf(text) === 0 ? rounded(value, 1) : text)
  }
  return `(${end(low, Math.floor)} to ${end(high, Math.ceil)})`
}

/** What a figure rests on in place of its plus-minus: `4 events`, `none in a break`. */
function fewText({ events, of }: NonNullable<Figure['few']>): string {
  if (of === 'in breaks') return events === 0 ? 'none in a break' : `${grouped(events, 0)} in breaks`
  return counted(events, of === 'shifts' ? 'shift' : 'event')
}

/** With so many figures, zeros at the end left out. */
function rounded(value: number, digits: number): string {
  const decimals = value === 0 ? 0 : Math.min(8, Math.max(0, digits - 1 - decadeOf(value)))
  return grouped(value, decimals)
    .replace(/(\.\d*?)0+$/, '$1')
    .replace(/\.$/, '')
}

/** What is not empty, with a space between. */
export const joined = (...parts: readonly string[]): string => parts.filter((part) => part !== '').join(' ')

/** What a line may end between, and not within: `14.29 ± 0.04 cases/min`; `47.4`, `(45 to 51) s`; `47.4 s`, `(5 in breaks)`. */
export type Parts = readonly string[]

/** What is printed of a figure as such parts. */
export const partsOf = ({ value, interval, unit }: PrintedFigure, isCounted = false): Parts => {
  if (!interval.startsWith('(')) return [joined(value, interval, unit)]
  // events in place of the interval are no part of the quantity
  return isCounted ? [joined(value, unit), interval] : [value, joined(interval, unit)]
}

/** A figure in its parts. */
export const figureParts = (figure: Printable | undefined, display: Display): Parts =>
  partsOf(printFigure(figure, display), figure?.few !== undefined && figure.low === null)

/** A figure in one line: `14.29 ± 0.04 cases/min`, `47.4 s (5 in breaks)`. */
export const figureText = (figure: Printable | undefined, display: Display): string =>
  figureParts(figure, display).join(' ')

/** The same without its unit, which stands elsewhere. */
export function numberText(figure: Printable | undefined, display: Display): string {
  const { value, interval } = printFigure(figure, display)
  return joined(value, interval)
}

/** A time of day or length in words: `8 h`, `7 h 30 min`, `90 s`. */
export function durationText(seconds: number): string {
  if (seconds < 120) return `${Number(seconds.toPrecision(4))} s`
  const hours = Math.floor(seconds / 3600 + 1e-9)
  const minutes = Math.round((seconds - hours * 3600) / 60)
  return joined(hours > 0 ? `${hours} h` : '', minutes > 0 ? `${minutes} min` : '')
}

/** A share in whole per cent: `95 %`; of none it is no number. */
export const wholePercent = (share: number | null | undefined): string =>
  `${Math.round((share ?? Number.NaN) * 100)} %`

/** A share of shifts with the ends of its interval, in whole per cent: `95 %`, `(91 to 97 %)`. */
export function sharePartsOfShifts(figure: Pick<Figure, 'mean' | 'low' | 'high' | 'inputs'>): Parts {
  const { low, high } = wholeOf(figure)
  return [wholePercent(figure.mean), `(${Math.round((low ?? Number.NaN) * 100)} to ${wholePercent(high)})`]
}

/** The same in one line: `95 % (91 to 97 %)`. */
export const shareOfShifts = (figure: Pick<Figure, 'mean' | 'low' | 'high' | 'inputs'>): string =>
  sharePartsOfShifts(figure).join(' ')

/** A share in per cent with so many figures, zeros at the end left out: `95 %`, `99.99 %`. */
export const percentText = (share: number, figures = 4): string =>
  `${Number((share * 100).toPrecision(figures))} %`

/** A share in whole per cent: `43 %`, and `0.4 %` where the whole number would hide it. */
export function percent(share: number): string {
  const value = share * 100
  return `${grouped(value, value > 0 && value < 0.95 ? 1 : 0)} %`
}

/** A rate with four figures: `9 cases/min`. */
export const rateText = (casesPerSecond: number): string =>
  `${Number((casesPerSecond * 60).toPrecision(4))} cases/min`

/** `a, b and c`. */
export const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`

/** What is said of these sentences: those that are false or empty are left out. */
export const sentences = (...all: readonly (string | false | null | undefined)[]): string[] =>
  all.flatMap((each) => each || [])
