/** A difference as people read it: with its sign, in points where it is one of shares, or in words where none is shown. */

import type { Figure } from '../catalogue/figure.js'
import { briefUnit } from '../catalogue/unit-name.js'
import {
  counted,
  type Display,
  nothing,
  type PrintedFigure,
  printedUnit,
  printFigure,
} from '../report/format.js'
import type { DifferenceFigure, Interval } from './difference-figure.js'

/** How a difference is printed: shares differ by percentage points, not by per cent of one another. */
export function differenceUnit(unit: string, display: Display): { factor: number; word: string } {
  const printed = printedUnit(unit, display)
  return unit === 'share' ? { ...printed, word: 'percentage points' } : printed
}

/** `+1.2`, `-0.4`, `0`: a number with its sign, from how it is printed without. */
export const signed = (text: string) => (/^[\d\u2009.]*[1-9]/.test(text) ? `+${text}` : text)

/** As `printFigure`, but of a difference: with its sign, and of shares in percentage points. */
export function printDifference(figure: Figure | undefined, display: Display): PrintedFigure {
  const printed = printFigure(figure, display)
  if (!figure || printed === nothing) return nothing
  return {
    value: signed(printed.value),
    interval: printed.interval.replace(
      /^\((.+) to (.+)\)$/,
      (_, low: string, high: string) => `(${signed(low)} to ${signed(high)})`,
    ),
    unit: differenceUnit(figure.unit, display).word,
  }
}

/** A difference, with or without a judgement. */
type Shown = Interval & Pick<DifferenceFigure, 'unit'> & { isShown?: boolean | null }

const parts = ({ mean, low, high, unit }: Shown, display: Display) => {
  const figure = { mean, low, high, sd: null, n: 0, unit: briefUnit(unit), label: '' }
  const printed = printFigure(figure, display)
  // in a line of text the short word does
  return { ...printed, unit: unit === 'share' ? 'points' : printed.unit }
}

const joined = (words: readonly string[]) => words.filter((word) => word !== '').join(' ')

/** `+0.13 ± 0.03 cases/min`, `none shown (-0.4 to 0.9 points)`, `not told: 12 shifts differ`; `–` where nothing is known. */
export function differenceText(figure: DifferenceFigure | undefined, display: Display): string {
  if (!figure) return '–'
  if (figure.few) return `not told: ${fewDiffer(figure.few.events)}`
  const { value, interval, unit } = parts(figure, display)
  if (value === '–') return value
  if (figure.isShown === false) {
    if (figure.low === figure.high) return 'the same'
    return `none shown (${joined([rangeText(figure, display), unit])})`
  }
  const isMore = (figure.mean ?? 0) > 0
  return joined([`${isMore ? '+' : ''}${value}`, interval, unit])
}

/** `12 shifts differ`: too few to tell a difference. */
export const fewDiffer = (shifts: number): string =>
  `${counted(shifts, 'shift')} ${shifts === 1 ? 'differs' : 'differ'}`

/** The size of a difference without its sign: `0.13 ± 0.03 cases/min`. */
export function sizeText(figure: Shown, display: Display): string {
  const { mean, low, high } = figure
  const turned = (value: number | null) => (value === null ? null : -value)
  const isLess = (mean ?? 0) < 0
  const size = isLess ? { ...figure, mean: turned(mean), low: turned(high), high: turned(low) } : figure
  const { value, interval, unit } = parts(size, display)
  return joined([value, interval, unit])
}

/** Both ends with the decimals of the figure: `-0.4 to 0.9`. */
export function rangeText(figure: Shown, display: Display): string {
  return `${endText(figure, figure.low, display)} to ${endText(figure, figure.high, display)}`
}

/** An end, printed like a figure whose plus-minus is that of the difference. */
function endText(figure: Shown, end: number | null, display: Display): string {
  const half = ((figure.high ?? 0) - (figure.low ?? 0)) / 2
  return parts({ ...figure, mean: end, low: (end ?? 0) - half, high: (end ?? 0) + half }, display).value
}
