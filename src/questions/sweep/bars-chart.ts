/** Bars from nothing to a difference with its interval, in rows: what all charts of effects share. */
import { differenceUnit, type Shown, signed } from '../../answers/difference.js'
import { wholeOf } from '../../catalogue/figure.js'
import { grouped } from '../../report/format.js'
import { roomAtRight, rowAxis, spanAxis } from '../../report/marks/axis.js'
import { beside } from '../../report/marks/beside.js'
import { pathLabel, shortened } from '../../report/marks/breaking.js'
import { type Chart, type ChartAsked, chartOf } from '../../report/marks/chart.js'
import { effectBars } from '../../report/marks/effect-bars.js'
import { farOff, roomySpan } from '../../report/marks/reach.js'
import type { SweepMeasure, SweepResult } from './document.js'

/** A bar with the value that makes it and its figure in words. */
export interface Bar {
  figure: Shown
  colour: string
  value: string
  text: string
}

export interface BarRow {
  name: string
  bars: Bar[]
}

export interface BarsAsked extends Pick<ChartAsked, 'name' | 'section' | 'title' | 'subtitle'> {
  axis: string
  measure: SweepMeasure
  rows: readonly BarRow[]
}

/** Room beside the rows for values and figures, px. */
const room = 280
const valuesAt = 14
const figuresAt = 150
/** A row that reaches so many times as far as the next shorter one is not drawn to scale. */
const farBeyond = 6

/** The rows as a picture; null without any bar that can be drawn. */
export function barsChart(result: SweepResult, asked: BarsAsked): Chart | null {
  const { rows, measure, axis, ...said } = asked
  const { factor, word } = differenceUnit(measure.unit, result.display)
  const placed = rows.map(({ bars }, index) =>
    bars.map((bar, place) => ({
      ...bar,
      row: index + (bars.length === 1 ? 0 : place === 0 ? -0.2 : 0.2),
      mean: (bar.figure.mean ?? Number.NaN) * factor,
      low: (wholeOf(bar.figure).low ?? bar.figure.mean ?? Number.NaN) * factor,
      high: (wholeOf(bar.figure).high ?? bar.figure.mean ?? Number.NaN) * factor,
      isShown: bar.figure.isShown === true,
    })),
  )
  const bars = placed.flat()
  if (bars.length === 0) return null
  const reach = (row: (typeof placed)[number]) =>
    Math.max(0, ...row.flatMap(({ low, high }) => [Math.abs(low), Math.abs(high)]))
  const far = farOff(placed, reach, farBeyond)
  const inside = placed.filter((row) => !far.has(row)).flat()
  const span = roomySpan([0, ...inside.flatMap(({ mean, low, high }) => [mean, low, high])], 6)
  return chartOf(result, {
    ...said,
    subtitle: far.size > 0 ? `${said.subtitle} A bar with an arrow goes far beyond the axis.` : said.subtitle,
    alt: altOf(asked, word),
    gap: 12,
    height: rows.length * 38 + 8,
    axes: {
      x: spanAxis(span, `${axis}${word === '' ? '' : `, ${word}`}`, {
        textOf: (value) => signed(grouped(value, span.decimals)),
      }),
      y: rowAxis(rows.map(({ name }) => pathLabel(name))),
      room: roomAtRight(room),
    },
    marks: [
      ...effectBars(placed.flatMap((row) => row.map((bar) => ({ ...bar, isFar: far.has(row) })))),
      beside(
        bars
          .filter(({ mean }) => Number.isFinite(mean))
          .map(({ row, value, text, isShown }) => {
            const words = { size: 11, isQuiet: !isShown }
            return {
              row,
              words: [
                { ...words, text: shortened(value, 20), right: valuesAt },
                { ...words, text, right: figuresAt, isBold: isShown },
              ],
            }
          }),
      ),
    ],
  })
}

function altOf({ rows, title, axis }: BarsAsked, unit: string): string {
  const words = rows.map(
    ({ name, bars }) =>
      `${name}: ${bars.map(({ value, text, figure }) => `${value} ${text}${figure.isShown ? '' : ' (not shown)'}`).join(', ')}`,
  )
  return `${title}. ${axis.charAt(0).toUpperCase()}${axis.slice(1)}${unit === '' ? '' : `, ${unit}`}: ${words.join('; ')}.`
}
