/** Figures of the first screen: those that the plus-minus supports, and never more than five. */

import { wholeOf } from '../catalogue/figure.js'
import type { Display } from '../catalogue/printed-units.js'
import { printedUnit } from '../catalogue/printed-units.js'
import { grouped, joined, type Printable, partsOf, printFigure } from './format.js'

/** Figures of a number that anybody reads at a glance. */
const mostFigures = 5

/** A figure with its plus-minus in one line: `9.19 ± 0.04 cases/min`; `302 300 ± 300 EUR/yr`. */
export const shortFigure = (figure: Printable | undefined, display: Display): string => {
  const { value, interval, unit } = shortParts(figure, display)
  return partsOf({ value, interval, unit }, figure?.few !== undefined && figure.low === null).join(' ')
}

/** The same without its unit, which stands elsewhere. */
export const shortNumber = (figure: Printable | undefined, display: Display): string => {
  const { value, interval } = shortParts(figure, display)
  return joined(value, interval)
}

export function shortParts(figure: Printable | undefined, display: Display) {
  const printed = printFigure(figure, display)
  const { low, high } = figure ? wholeOf(figure) : { low: null, high: null }
  if (!figure?.mean || low === null || high === null || figuresIn(printed.value) <= mostFigures)
    return printed
  const { factor } = printedUnit(figure.unit, display)
  const value = figure.mean * factor
  const decimals = mostFigures - 1 - Math.floor(Math.log10(Math.abs(value)) + 1e-12)
  const step = 10 ** -decimals
  // outwards, so that the interval is never told narrower than it is
  const text = (amount: number, round: (amount: number) => number) =>
    grouped(round(amount / step) * step, Math.max(0, decimals))
  const isEven = printed.interval.startsWith('±')
  const half = Math.max(high - figure.mean, figure.mean - low) * factor
  return {
    value: text(value, Math.round),
    interval:
      printed.interval === '' || isEven
        ? printed.interval && `± ${text(half, (amount) => Math.ceil(amount - 1e-9))}`
        : `(${text(low * factor, Math.floor)} to ${text(high * factor, Math.ceil)})`,
    unit: printed.unit,
  }
}

/** Digits of a number from its first that is not 0. */
const figuresIn = (text: string): number => text.replace(/[^\d]/g, '').replace(/^0+/, '').length
