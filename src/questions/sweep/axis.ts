/** Axes of the charts of a sweep: round ticks over what is drawn, and factors with their unit. */

import { printedUnit } from '../../catalogue/printed-units.js'
import { grouped } from '../../report/format.js'
import { type Span, spanAxis } from '../../report/marks/axes.js'
import { axisTitle, palette, roundStep, tickFont } from '../../report/marks/chart.js'
import type { Factor, SweepMeasure, SweepResult } from './document.js'
import { measureSubject, valueText } from './words.js'

/** An axis that holds these numbers with a little room; `bounds` are ends that it may not pass. */
export function spanOf(
  values: readonly number[],
  mostTicks: number,
  bounds: { min?: number; max?: number } = {},
): Span {
  const known = values.filter(Number.isFinite)
  const [low, high] = [Math.min(...known), Math.max(...known)]
  // without any difference there is no scale to choose
  const room = high > low ? (high - low) * 0.06 : Math.max(1, Math.abs(high) * 0.05)
  // a point on a bound is drawn whole
  const hair = room / 3
  const min = Math.max(low - room, (bounds.min ?? -Infinity) - hair)
  const max = Math.min(high + room, (bounds.max ?? Infinity) + hair)
  const step = roundStep((max - min) / mostTicks)
  const first = Math.ceil(min / step - 1e-9)
  return {
    min,
    max,
    ticks: Array.from(
      { length: Math.floor(max / step + 1e-9) - first + 1 },
      (_, index) => (first + index) * step,
    ),
    decimals: Math.max(0, -Math.floor(Math.log10(step) + 1e-9)),
  }
}

/** Most values of a factor that are written along its axis. */
const mostValues = 13

/** The axis of a factor with its values as ticks, some left out where they are many. */
export function factorAxis(factor: Factor) {
  const { values, unit, path } = factor
  const [first, last] = [values[0]!, values.at(-1)!]
  const room = (last - first) * 0.06
  const every = Math.ceil(values.length / mostValues)
  const ticks = values.filter((_, index) => index % every === 0)
  return spanAxis(
    { min: first - room, max: last + room, ticks, decimals: 0 },
    unit === '' ? path : `${path}, ${unit}`,
    (value) => valueText(value, { unit: '' }),
  )
}

/** Beside a length: minutes of buffer at the places of its values, on an axis across. */
export function minutesAxis(factor: Factor, minutes: readonly number[], position: 'top' | 'right') {
  const { min, max, afterBuildTicks } = factorAxis(factor)
  return {
    type: 'linear' as const,
    position,
    min,
    max,
    afterBuildTicks,
    title: axisTitle('minutes of buffer at the target, by hand'),
    ticks: {
      color: palette.quietInk,
      font: tickFont,
      maxRotation: 0,
      autoSkip: false,
      callback: (value: string | number) =>
        grouped(minutes[factor.values.indexOf(Number(value))] ?? Number.NaN, 1),
    },
    grid: { display: false },
    border: { color: palette.frame },
  }
}

/** `Good cases out, cases/min`, and how a figure is brought into that unit. */
export function measureAxis(measure: SweepMeasure, { display }: SweepResult) {
  const { factor, word } = printedUnit(measure.unit, display)
  return { factor, title: word === '' ? measureSubject(measure) : `${measureSubject(measure)}, ${word}` }
}

/** Stem of the file of a chart: names of equipment may hold what a file cannot. */
export const chartFile = (kind: string, measure: string): string =>
  `${kind}-${measure.replace(/[^\p{L}\p{N} _-]/gu, '-')}`
