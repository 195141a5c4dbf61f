/** A difference as people read it: with its sign, in points where it is one of shares, or in words where none is shown. */

import { type Display, nothing, printedUnit } from '../catalogue/printed-units.js'
import { briefUnit } from '../catalogue/unit-name.js'
import {
  counted,
  joined,
  type Parts,
  type Printable,
  type PrintedFigure,
  partsOf,
  printFigure,
} from '../report/format.js'
import { type DifferenceFigure, turned, wholeInterval } from './difference-figure.js'

/** How a difference is printed: shares differ by percentage points, not by per cent of one another. */
export function differenceUnit(unit: string, display: Display): { factor: number; word: string } {
  const printed = printedUnit(unit, display)
  return unit === 'share' ? { ...printed, word: 'percentage points' } : printed
}

/** `+1.2`, `-0.4`, `0`: a number with its sign, from how it is printed without. */
export const signed = (text: string) => (/^[\d\u2009.]*[1-9]/.test(text) ? `+${text}` : text)

/** As `printFigure`, but of a difference: with its sign, and of shares in percentage points. */
export function printDifference(figure: Printable | undefined, display: Display): PrintedFigure {
  const printed = printFigure(figure, display, signed)
  if (!figure || printed.value === nothing) return printed
  return { ...printed, unit: differenceUnit(figure.unit, display).word }
}

/** A printed difference without its unit, which stands elsewhere: `+1.2 ± 0.4`; null where no interval is known. */
export const withoutUnit = ({ value, interval }: PrintedFigure): string | null =>
  value === nothing ? null : `${value} ${interval}`.trimEnd()

/** A difference, with or without a judgement. */
export type Shown = Printable & Partial<Pick<DifferenceFigure, 'isShown'>>

/** In a line of text the short word for the unit does. */
function printed(figure: Shown, display: Display): PrintedFigure {
  const found = printFigure({ ...wholeInterval(figure), unit: briefUnit(figure.unit) }, display)
  return { ...found, unit: figure.unit === 'share' ? 'points' : found.unit }
}

/** `+0.13 ± 0.03 cases/min`, `none shown (-0.4 to 0.9 points)`, `not told: 12 shifts differ`, in their parts. */
export function differenceParts(figure: DifferenceFigure | undefined, display: Display): Parts {
  if (!figure) return [nothing]
  if (figure.few) return [notTold(figure.few.events)]
  const found = printed(figure, display)
  if (found.value === nothing) return [nothing]
  if (figure.isShown === false) {
    if (isSame(figure)) return ['the same']
    return ['none shown', `(${joined(rangeText(figure, display), found.unit)})`]
  }
  const isMore = (figure.mean ?? 0) > 0
  return partsOf({ ...found, value: `${isMore ? '+' : ''}${found.value}` })
}

/** Alike in every shift, whatever the inputs may be. */
export function isSame(figure: Shown): boolean {
  const { low, high } = wholeInterval(figure)
  return low === high
}

/** `12 shifts differ`: too few to tell a difference. */
export const fewDiffer = (shifts: number): string =>
  `${counted(shifts, 'shift')} ${shifts === 1 ? 'differs' : 'differ'}`

export const notTold = (shifts: number): string => `too few to tell: ${fewDiffer(shifts)}`

/** The size of a difference without its sign: `0.13 ± 0.03 cases/min`. */
export function sizeText(figure: Shown, display: Display): string {
  const whole = wholeInterval(figure)
  const size = (figure.mean ?? 0) < 0 ? turned(whole) : whole
  return partsOf(printed({ ...size, unit: figure.unit }, display)).join(' ')
}

/** The unit of a difference in a line of text. */
export const unitText = (figure: Shown, display: Display): string => printed(figure, display).unit

/** Both ends with the decimals of the figure: `-0.4 to 0.9`. */
export function rangeText(figure: Shown, display: Display): string {
  const whole = { ...wholeInterval(figure), unit: figure.unit }
  return `${endText(whole, whole.low, display)} to ${endText(whole, whole.high, display)}`
}

/** An end, printed like a figure whose plus-minus is that of the difference. */
function endText(figure: Shown, end: number | null, display: Display): string {
  const half = ((figure.high ?? 0) - (figure.low ?? 0)) / 2
  return printed({ ...figure, mean: end, low: (end ?? 0) - half, high: (end ?? 0) + half }, display).value
}
