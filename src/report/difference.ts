/** A difference as people read it: with its sign, in points where it is one of shares, or in words where none is shown. */
import type { DifferenceFigure } from '../study/compare-result.js'
import type { Interval } from '../study/worth.js'
import { type Display, printFigure } from './format.js'

/** The words of a difference without its judgement. */
type Shown = Interval & Pick<DifferenceFigure, 'unit'>

const parts = ({ mean, low, high, unit }: Shown, display: Display) => {
  const figure = { mean, low, high, sd: null, n: 0, unit: unit.replace(' per 1000 cases', ''), label: '' }
  const printed = printFigure(figure, display)
  // a difference of shares is not a share of anything
  return { ...printed, unit: unit === 'share' ? 'points' : printed.unit }
}

const joined = (words: readonly string[]) => words.filter((word) => word !== '').join(' ')

/** `+0.13 ± 0.03 cases/min`, `none shown (-0.4 to 0.9 points)`; `–` where nothing is known. */
export function differenceText(figure: DifferenceFigure | undefined, display: Display): string {
  if (!figure) return '–'
  const { value, interval, unit } = parts(figure, display)
  if (value === '–') return value
  if (figure.isShown === false) {
    if (figure.low === figure.high) return 'the same'
    return `none shown (${joined([rangeText(figure, display), unit])})`
  }
  return joined([`${(figure.mean ?? 0) > 0 ? '+' : ''}${value}`, interval, unit])
}

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
  const end = (value: number | null) => {
    const { low, high } = figure
    // an end is printed like a figure whose plus-minus is that of the difference
    const half = ((high ?? 0) - (low ?? 0)) / 2
    return parts({ ...figure, mean: value, low: (value ?? 0) - half, high: (value ?? 0) + half }, display)
      .value
  }
  return `${end(figure.low)} to ${end(figure.high)}`
}
