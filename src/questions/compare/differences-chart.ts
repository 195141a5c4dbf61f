/** Charts of the differences: one per compared measure, each variant less the base with its interval. */
import type { ChartConfiguration, ChartDataset, Plugin } from 'chart.js'
import { differenceUnit, printDifference, signed } from '../../answers/difference.js'
import type { DifferenceFigure } from '../../answers/difference-figure.js'
import { figureAt } from '../../answers/figure-at.js'
import { figureText, grouped, percentText } from '../../report/format.js'
import { rowAxis, spanAxis } from '../../report/marks/axes.js'
import {
  belowHeight,
  type Chart,
  chartWidth,
  foot,
  frame,
  headHeight,
  palette,
  roomAtRight,
  roundStep,
  rowLabel,
  shortened,
  widthOf,
  written,
} from '../../report/marks/chart.js'
import type { CompareResult } from './document.js'

const rowHeight = 36
/** Between the subtitle and the rows, px: the figure of the base stands in it. */
const gap = 26
const mostTicks = 8
/** Between the axis and the figures beside the rows, px. */
const figuresGap = 20
/** An interval that reaches this many times as far as the next shorter one is not drawn to scale. */
const farBeyond = 12

/** A variant on its row, all numbers in the unit of the chart. */
interface Row {
  name: string
  figure: DifferenceFigure | undefined
  /** Null where there is no interval to draw. */
  ends: { mean: number; low: number; high: number } | null
  alone: { low: number; high: number } | null
  isShown: boolean
}

/** A chart for each compared measure of which any variant has a difference with an interval. */
export function differenceCharts(result: CompareResult): Chart[] {
  const taken = new Set<string>()
  return result.compared.flatMap((measure) => {
    const chart = differenceChart(result, measure, taken)
    return chart === null ? [] : [chart]
  })
}

function differenceChart(result: CompareResult, measure: string, taken: Set<string>): Chart | null {
  const { display, made } = result
  const figures = Object.entries(result.differences).map(
    ([name, differences]) => [name, differences[measure]] as const,
  )
  const known = figures.flatMap(([, figure]) => figure ?? [])[0]
  if (!known) return null
  const { factor, word } = differenceUnit(known.unit, display)
  const rows = figures.map(([name, figure]) => rowOf(name, figure, factor))
  const drawn = rows.filter((row) => row.ends !== null)
  if (drawn.length === 0) return null
  const beyond = beyondAxis(drawn)
  const axis = axisOf(drawn.filter((row) => !beyond.has(row)))
  const title = titleOf(known.label, rows)
  const subtitle = subtitleOf(drawn, beyond.size > 0, made.confidence)
  const options = frame(title, subtitle, gap)
  const texts = rows.map(({ figure }) => figureWords(figure, display))
  const config: ChartConfiguration<'scatter'> = {
    type: 'scatter',
    data: { datasets: datasetsOf(rows, beyond, axis) },
    options: {
      ...options,
      scales: {
        x: spanAxis(axis, `difference to the base${word === '' ? '' : `, ${word}`}`, (value) =>
          signed(grouped(value, axis.decimals)),
        ),
        y: rowAxis(rows.map(({ name }) => rowLabel(name))),
        // letters are hardly ever wider than this
        figures: roomAtRight(figuresGap + Math.max(...texts.map((text) => text.length)) * 8.4),
      },
    },
    plugins: [baseLine(result, measure), figuresBeside(rows, texts), foot(result)],
  }
  return {
    name: fileName(measure, taken),
    title,
    alt: altOf(known.label, word, rows, texts, made.confidence),
    width: chartWidth,
    height: headHeight(title, subtitle, gap) + rows.length * rowHeight + belowHeight,
    config: config as ChartConfiguration,
  }
}

function rowOf(name: string, figure: DifferenceFigure | undefined, factor: number): Row {
  const scaled = (value: number | null | undefined) =>
    value === null || value === undefined ? Number.NaN : value * factor
  const [mean, low, high] = [scaled(figure?.mean), scaled(figure?.low), scaled(figure?.high)]
  const alone = { low: scaled(figure?.alone.low), high: scaled(figure?.alone.high) }
  const isDrawn = [mean, low, high].every(Number.isFinite)
  return {
    name,
    figure,
    ends: isDrawn ? { mean, low, high } : null,
    alone: isDrawn && Number.isFinite(alone.low) && Number.isFinite(alone.high) ? alone : null,
    isShown: isDrawn && figure?.isShown === true,
  }
}

const reachOf = ({ ends }: Row) => Math.max(Math.abs(ends!.low), Math.abs(ends!.high))

/**
 * Rows that lie so far from 0 that the others would shrink to dots beside them, fewer than half of all: only an arrow
 * points to them, and the figure stands beside it.
 */
function beyondAxis(drawn: readonly Row[]): Set<Row> {
  const byReach = drawn.filter((row) => reachOf(row) > 0).sort((a, b) => reachOf(a) - reachOf(b))
  const first = byReach.findIndex(
    (row, index) => index > byReach.length / 2 && reachOf(row) > farBeyond * reachOf(byReach[index - 1]!),
  )
  return new Set(first < 0 ? [] : byReach.slice(first))
}

interface Axis {
  min: number
  max: number
  ticks: number[]
  decimals: number
}

/** An axis that holds 0 and the intervals of these rows, with a little room at both ends. */
function axisOf(rows: readonly Row[]): Axis {
  const ends = rows.flatMap((row) => [row.ends!.low, row.ends!.high])
  const [low, high] = [Math.min(0, ...ends), Math.max(0, ...ends)]
  // without any difference there is no scale to choose
  const span = high > low ? high - low : 2
  const [min, max] = high > low ? [low - span * 0.06, high + span * 0.06] : [-1, 1]
  const step = roundStep((max - min) / mostTicks)
  const first = Math.ceil(min / step)
  return {
    min,
    max,
    ticks: Array.from({ length: Math.floor(max / step) - first + 1 }, (_, index) => (first + index) * step),
    decimals: Math.max(0, -Math.floor(Math.log10(step) + 1e-9)),
  }
}

type Points = ChartDataset<'scatter', { x: number; y: number }[]>

/** The intervals as lines with a gap between rows, the differences as dots, arrows to what is beyond the axis. */
function datasetsOf(rows: readonly Row[], beyond: ReadonlySet<Row>, axis: Axis): Points[] {
  const inside = [...rows.entries()].filter(([, row]) => row.ends !== null && !beyond.has(row))
  const outside = [...rows.entries()].filter(([, row]) => beyond.has(row))
  const intervals = (of: (row: Row) => { low: number; high: number } | null) =>
    inside.flatMap(([y, row]) => {
      const ends = of(row)
      if (ends === null) return []
      return [
        { x: ends.low, y },
        { x: ends.high, y },
        { x: Number.NaN, y: Number.NaN },
      ]
    })
  const line = { showLine: true, spanGaps: false, borderColor: palette.main, fill: false, yAxisID: 'y' }
  const dots = (of: readonly (readonly [number, Row])[]) => ({
    pointBackgroundColor: of.map(([, { isShown }]) => (isShown ? palette.main : palette.paper)),
    pointBorderColor: palette.main,
    pointBorderWidth: 2,
    yAxisID: 'y',
  })
  const isFamily = inside.some(([, { figure }]) => isOfMany(figure))
  return [
    {
      ...line,
      label: 'interval',
      data: intervals(({ ends }) => ends),
      borderWidth: 1.5,
      pointStyle: 'line',
      pointRotation: 90,
      pointRadius: 8,
      pointBorderWidth: 1.5,
      pointBorderColor: palette.main,
      order: 3,
    },
    ...(isFamily
      ? [
          {
            ...line,
            label: 'interval alone',
            data: intervals(({ alone }) => alone),
            borderWidth: 4.5,
            pointRadius: 0,
            order: 2,
          },
        ]
      : []),
    {
      label: 'difference',
      data: inside.map(([y, { ends }]) => ({ x: ends!.mean, y })),
      ...dots(inside),
      pointStyle: 'circle',
      pointRadius: 5.5,
      order: 1,
    },
    ...(outside.length > 0
      ? [
          {
            label: 'beyond the axis',
            data: outside.map(([y, { ends }]) => ({ x: ends!.mean < 0 ? axis.min : axis.max, y })),
            ...dots(outside),
            pointStyle: 'triangle' as const,
            pointRotation: outside.map(([, { ends }]) => (ends!.mean < 0 ? -90 : 90)),
            pointRadius: 8,
            clip: false as const,
            order: 1,
          },
        ]
      : []),
  ]
}

const isOfMany = (figure: DifferenceFigure | undefined) => (figure?.family ?? 1) > 1

/** `Output: higher with a and b, lower with 3 of 6 variants`. */
function titleOf(label: string, rows: readonly Row[]): string {
  const shown = rows.filter(({ isShown }) => isShown)
  const sides = [
    ['higher', shown.filter(({ ends }) => ends!.mean > 0)],
    ['lower', shown.filter(({ ends }) => ends!.mean < 0)],
  ] as const
  const found = sides.flatMap(([word, side]) =>
    side.length > 0 ? `${word} with ${inWords(side, rows.length)}` : [],
  )
  if (found.length > 0) return `${label}: ${found.join(', ')}`
  const who = rows.length === 1 ? shortened(rows[0]!.name, 40) : 'no variant'
  return `${label}: ${who} is ${rows.length === 1 ? 'not ' : ''}shown to differ from the base`
}

function inWords(side: readonly Row[], all: number): string {
  if (side.length <= 2) return side.map(({ name }) => shortened(name, 40)).join(' and ')
  return side.length === all ? `all ${all} variants` : `${side.length} of ${all} variants`
}

function subtitleOf(drawn: readonly Row[], hasBeyond: boolean, confidence: number): string {
  const family = drawn.map(({ figure }) => figure?.family ?? 1).reduce((a, b) => Math.max(a, b))
  const lines =
    family > 1
      ? `Thin line: ${percentText(confidence)} interval for all ${family} comparisons together; thick: for each alone.`
      : `Line: ${percentText(confidence)} interval.`
  const arrow = hasBeyond ? ' Triangle: lies far beyond the axis.' : ''
  return `● shown to differ from the base, ○ not shown. ${lines}${arrow}`
}

/** `+1.2 ± 0.4`; the unit stands at the axis. */
function figureWords(figure: DifferenceFigure | undefined, display: CompareResult['display']): string {
  if (!figure) return 'not compared'
  const { value, interval } = printDifference(figure, display)
  return value === '–' ? 'no interval' : `${value} ${interval}`.trimEnd()
}

function altOf(
  label: string,
  unit: string,
  rows: readonly Row[],
  texts: readonly string[],
  confidence: number,
): string {
  const words = rows.map(({ name, ends, isShown }, index) => {
    const text = texts[index]!
    return `${name}: ${ends === null ? text : `${text}, ${isShown ? 'shown' : 'not shown'}`}`
  })
  const of = unit === '' ? '' : `, ${unit}`
  return `${label}, difference to the base${of}, at ${percentText(confidence)} confidence: ${words.join('; ')}.`
}

/** Marks 0, which is the base, and writes above it what the base itself comes to. */
function baseLine(result: CompareResult, measure: string): Plugin<'scatter'> {
  const [base] = Object.values(result.variants)
  const figure = base && figureAt(base, measure)
  const text = figure ? `base: ${figureText(figure, result.display)}` : 'base'
  return {
    id: 'base-line',
    beforeDatasetsDraw({ ctx, chartArea, scales }) {
      const x = scales.x!.getPixelForValue(0)
      ctx.save()
      ctx.strokeStyle = palette.ink
      ctx.lineWidth = 1.5
      ctx.beginPath()
      ctx.moveTo(x, chartArea.top - 5)
      ctx.lineTo(x, chartArea.bottom)
      ctx.stroke()
      ctx.restore()
    },
    afterDatasetsDraw({ ctx, chartArea, scales, width }) {
      const lettering = { size: 12, colour: palette.ink, isBold: true }
      const half = widthOf(ctx, text, lettering) / 2
      const x = Math.max(14 + half, Math.min(width - 14 - half, scales.x!.getPixelForValue(0)))
      written(ctx, text, x, chartArea.top - 9, { ...lettering, align: 'center' })
    },
  }
}

/** Writes each difference in figures beside its row. */
function figuresBeside(rows: readonly Row[], texts: readonly string[]): Plugin<'scatter'> {
  return {
    id: 'figures-beside',
    afterDatasetsDraw({ ctx, chartArea, scales }) {
      for (const [index, { isShown }] of rows.entries())
        written(ctx, texts[index]!, chartArea.right + figuresGap, scales.y!.getPixelForValue(index) + 4, {
          size: 12,
          colour: isShown ? palette.ink : palette.quietInk,
          isBold: isShown,
        })
    },
  }
}

/** A stem of a file that no other chart has: names of equipment may differ in what a file cannot hold. */
function fileName(measure: string, taken: Set<string>): string {
  const stem = `difference-${measure.replace(/[^\p{L}\p{N} _-]/gu, '-')}`
  let name = stem
  // some file systems do not tell capitals from small letters
  for (let count = 2; taken.has(name.toLowerCase()); count++) name = `${stem}-${count}`
  taken.add(name.toLowerCase())
  return name
}
