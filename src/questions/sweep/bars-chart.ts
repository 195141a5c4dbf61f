/** Bars from nothing to a difference with its interval, in rows: what all charts of effects share. */
import type { ChartConfiguration, ChartDataset, Plugin } from 'chart.js'
import { differenceUnit, signed } from '../../answers/difference.js'
import type { DifferenceFigure } from '../../answers/difference-figure.js'
import { grouped } from '../../report/format.js'
import { rowAxis, spanAxis } from '../../report/marks/axes.js'
import {
  belowHeight,
  type Chart,
  type Context,
  chartWidth,
  foot,
  frame,
  headHeight,
  palette,
  roomAtRight,
  rowLabel,
  shortened,
  written,
} from '../../report/marks/chart.js'
import { spanOf } from './axis.js'
import type { SweepMeasure, SweepResult } from './document.js'

/** A bar with the value that makes it and its figure in words. */
export interface Bar {
  figure: DifferenceFigure
  colour: string
  value: string
  text: string
}

export interface BarRow {
  name: string
  bars: Bar[]
}

interface BarsAsked {
  name: string
  title: string
  subtitle: string
  axis: string
  measure: SweepMeasure
  rows: readonly BarRow[]
}

const gap = 12
const rowHeight = 38
const barHeight = 13
/** Room beside the rows for values and figures, px. */
const beside = 280
const valuesAt = 14
const figuresAt = 150

/** The rows as a picture; null without any bar that can be drawn. */
export function barsChart(result: SweepResult, asked: BarsAsked): Chart | null {
  const { rows, measure, title } = asked
  const { factor, word } = differenceUnit(measure.unit, result.display)
  const bars = rows.flatMap((row, index) =>
    row.bars.map((bar, place) => ({
      ...bar,
      y: index + (row.bars.length === 1 ? 0 : place === 0 ? -0.2 : 0.2),
      mean: (bar.figure.mean ?? Number.NaN) * factor,
      low: (bar.figure.low ?? bar.figure.mean ?? Number.NaN) * factor,
      high: (bar.figure.high ?? bar.figure.mean ?? Number.NaN) * factor,
    })),
  )
  if (bars.length === 0) return null
  const beyond = beyondAxis(bars)
  const inside = bars.filter(({ y }) => !beyond.has(Math.round(y)))
  const span = spanOf([0, ...inside.flatMap(({ mean, low, high }) => [mean, low, high])], 6)
  const subtitle =
    beyond.size > 0 ? `${asked.subtitle} A bar with an arrow goes far beyond the axis.` : asked.subtitle
  const options = frame(title, subtitle, gap)
  const config: ChartConfiguration<'scatter'> = {
    type: 'scatter',
    data: { datasets: [placesOf(bars)] },
    options: {
      ...options,
      scales: {
        x: spanAxis(span, `${asked.axis}${word === '' ? '' : `, ${word}`}`, (value) =>
          signed(grouped(value, span.decimals)),
        ),
        y: rowAxis(rows.map(({ name }) => pathLabel(name))),
        room: roomAtRight(beside),
      },
    },
    plugins: [drawnBars(bars, beyond), foot(result)],
  }
  return {
    name: asked.name,
    title,
    alt: altOf(asked, word),
    width: chartWidth,
    height: headHeight(title, subtitle, gap) + rows.length * rowHeight + belowHeight + 8,
    config: config as ChartConfiguration,
  }
}

interface Placed extends Bar {
  y: number
  mean: number
  low: number
  high: number
}

/** A row that reaches so many times as far as the next shorter one is not drawn to scale. */
const farBeyond = 6

/** Rows so far from 0 that the others would shrink to dots beside them, fewer than half of all. */
function beyondAxis(bars: readonly Placed[]): Set<number> {
  const reach = new Map<number, number>()
  for (const { y, low, high } of bars) {
    const row = Math.round(y)
    reach.set(row, Math.max(reach.get(row) ?? 0, Math.abs(low), Math.abs(high)))
  }
  const rows = [...reach].filter(([, far]) => far > 0).sort(([, a], [, b]) => a - b)
  const first = rows.findIndex(
    ([, far], index) => index > rows.length / 2 && far > farBeyond * rows[index - 1]![1],
  )
  return new Set(first < 0 ? [] : rows.slice(first).map(([row]) => row))
}

/** A path in two lines at most, broken at a dot where that fits. */
function pathLabel(path: string): string[] {
  const most = 26
  if (path.length <= most) return [path]
  const dot = path.lastIndexOf('.', most - 1) + 1
  return dot > 0 && path.length - dot <= most ? [path.slice(0, dot), path.slice(dot)] : rowLabel(path)
}

/** The differences as points that are not drawn: the bars are drawn by hand. */
const placesOf = (bars: readonly Placed[]): ChartDataset<'scatter', { x: number; y: number }[]> => ({
  label: 'difference',
  data: bars.map(({ mean, y }) => ({ x: mean, y })),
  pointRadius: 0,
})

/** Draws bars, intervals and the line at 0, and writes values and figures beside them. */
function drawnBars(bars: readonly Placed[], beyond: ReadonlySet<number>): Plugin<'scatter'> {
  return {
    id: 'bars',
    afterDatasetsDraw({ ctx, chartArea, scales }) {
      const [x, y] = [scales.x!, scales.y!]
      const zero = x.getPixelForValue(0)
      for (const { mean, low, high, y: row, figure, colour, value, text } of bars) {
        if (!Number.isFinite(mean)) continue
        const isShown = figure.isShown === true
        const middle = y.getPixelForValue(row)
        const isFar = beyond.has(Math.round(row))
        const within = (value: number) =>
          Math.max(chartArea.left + (isFar ? 9 : 0), Math.min(chartArea.right - (isFar ? 9 : 0), value))
        const end = within(x.getPixelForValue(mean))
        ctx.save()
        ctx.fillStyle = isShown ? colour : palette.paper
        ctx.strokeStyle = colour
        ctx.lineWidth = 1.5
        ctx.beginPath()
        ctx.rect(Math.min(zero, end), middle - barHeight / 2, Math.abs(end - zero), barHeight)
        ctx.fill()
        ctx.stroke()
        if (isFar && end !== x.getPixelForValue(mean)) arrow(ctx, end, middle, mean < 0 ? -9 : 9, colour)
        else interval(ctx, within(x.getPixelForValue(low)), within(x.getPixelForValue(high)), middle)
        ctx.restore()
        const lettering = { size: 11, colour: isShown ? palette.ink : palette.quietInk }
        written(ctx, shortened(value, 20), chartArea.right + valuesAt, middle + 4, lettering)
        written(ctx, text, chartArea.right + figuresAt, middle + 4, { ...lettering, isBold: isShown })
      }
      ctx.save()
      ctx.strokeStyle = palette.ink
      ctx.lineWidth = 1.5
      ctx.beginPath()
      ctx.moveTo(zero, chartArea.top)
      ctx.lineTo(zero, chartArea.bottom)
      ctx.stroke()
      ctx.restore()
    },
  }
}

function interval(ctx: Context, from: number, to: number, y: number): void {
  ctx.strokeStyle = palette.ink
  ctx.lineWidth = 1.2
  ctx.beginPath()
  ctx.moveTo(from, y)
  ctx.lineTo(to, y)
  for (const tip of [from, to]) {
    ctx.moveTo(tip, y - 3)
    ctx.lineTo(tip, y + 3)
  }
  ctx.stroke()
}

/** The tip of a bar that goes on, `length` px to the right of where it is cut. */
function arrow(ctx: Context, x: number, y: number, length: number, colour: string): void {
  ctx.fillStyle = colour
  ctx.beginPath()
  ctx.moveTo(x, y - barHeight / 2)
  ctx.lineTo(x + length, y)
  ctx.lineTo(x, y + barHeight / 2)
  ctx.fill()
}

function altOf({ rows, title, axis }: BarsAsked, unit: string): string {
  const words = rows.map(
    ({ name, bars }) =>
      `${name}: ${bars.map(({ value, text, figure }) => `${value} ${text}${figure.isShown ? '' : ' (not shown)'}`).join(', ')}`,
  )
  return `${title}. ${axis.charAt(0).toUpperCase()}${axis.slice(1)}${unit === '' ? '' : `, ${unit}`}: ${words.join('; ')}.`
}
