/** Chart of a grid: contours of a measure over two factors, with the points that were tried; of a length also minutes of buffer. */
import type { ChartConfiguration, ChartDataset, Plugin } from 'chart.js'
import { heldName } from '../../answers/usual-measures.js'
import { grouped, listed, rateText } from '../../report/format.js'
import {
  belowHeight,
  type Chart,
  chartWidth,
  foot,
  frame,
  headHeight,
  palette,
  widthOf,
  written,
} from '../../report/marks/chart.js'
import { okabeIto } from '../../report/marks/okabe-ito.js'
import { chartFile, factorAxis, measureAxis, minutesAxis } from './axis.js'
import type { Factor, GridOf, SweepMeasure, SweepResult } from './document.js'
import { meanText, measureSubject, pointText, valueText } from './words.js'

const gap = 14
const plotHeight = 430
/** Points beside which their figure is written; more would be a carpet. */
const mostFigures = 90

/** Strokes of the contours, the lowest level first: colour and dash tell them apart, and each is named. */
const strokes = [
  { colour: okabeIto.orange, dash: [7, 4], width: 2 },
  { colour: okabeIto.blue, dash: [], width: 3 },
  { colour: okabeIto.black, dash: [2, 3], width: 2 },
  { colour: okabeIto.vermillion, dash: [9, 3, 2, 3], width: 2 },
]

/** The contours of a measure; null where no point has it. */
export function sweepGridChart(result: SweepResult, measure: SweepMeasure): Chart | null {
  const [x, y] = result.factors as [Factor, Factor]
  const grid = result.grid![measure.name]!
  const tried = result.points.flatMap(({ at, measures }) => {
    const mean = measures[measure.name]?.mean
    return mean === null || mean === undefined ? [] : [{ x: at[0]!, y: at[1]!, mean }]
  })
  if (tried.length === 0) return null
  const title = titleOf(result, measure)
  const hasFigures = tried.length <= mostFigures
  const axis = measureAxis(measure, result)
  const subtitle = `Dots: points tried${hasFigures ? `, with the figure (${axis.title.replace(/^.*, /, '')})` : ''}. Lines: where it is ${listed(grid.levels.map((level) => meanText(level, measure, result)))}, straight between points.${ownPlace(x, y).length > 0 ? ' Diamond: the scenario as it stands.' : ''}`
  const options = frame(title, subtitle, gap)
  const config: ChartConfiguration<'scatter'> = {
    type: 'scatter',
    data: { datasets: datasetsOf(grid, tried, x, y) },
    options: {
      ...options,
      scales: {
        x: factorAxis(x),
        y: factorAxis(y),
        ...(x.minutes ? { across: minutesAxis(x, x.minutes, 'top') } : {}),
        ...(y.minutes ? { beside: minutesAxis(y, y.minutes, 'right') } : {}),
      },
    },
    plugins: [
      names(grid, tried, hasFigures, axis.factor, (level) => meanText(level, measure, result)),
      foot(result),
    ],
  }
  return {
    name: chartFile('grid', measure.name),
    title,
    alt: altOf(result, measure, x, y),
    width: chartWidth,
    height: headHeight(title, subtitle, gap) + plotHeight + belowHeight + (x.minutes ? 44 : 0),
    config: config as ChartConfiguration,
  }
}

interface Tried {
  x: number
  y: number
  mean: number
}

type Points = ChartDataset<'scatter', { x: number; y: number }[]>

function datasetsOf({ levels, lines }: GridOf, tried: readonly Tried[], x: Factor, y: Factor): Points[] {
  const own = ownPlace(x, y)
  return [
    ...lines.map(({ level, points }): Points => {
      const { colour, dash, width } = strokes[levels.indexOf(level) % strokes.length]!
      return {
        label: `contour ${level}`,
        data: points.map(([left, up]) => ({ x: left, y: up })),
        showLine: true,
        pointRadius: 0,
        borderColor: colour,
        borderDash: dash,
        borderWidth: width,
        order: 2,
      }
    }),
    {
      label: 'as it stands',
      data: own,
      pointStyle: 'rectRot',
      pointRadius: 6.5,
      pointBackgroundColor: 'transparent',
      pointBorderColor: palette.ink,
      pointBorderWidth: 2,
      order: 0,
    },
    {
      label: 'tried',
      data: tried.map(({ x: left, y: up }) => ({ x: left, y: up })),
      pointRadius: 2.5,
      pointBackgroundColor: palette.quietInk,
      pointBorderColor: palette.quietInk,
      order: 1,
    },
  ]
}

interface Spot {
  x: number
  y: number
}

/** Figures above the dots, and each contour named on its longest line, where it is farthest from dots and names. */
function names(
  { levels, lines }: GridOf,
  tried: readonly Tried[],
  hasFigures: boolean,
  factor: number,
  textOf: (level: number) => string,
): Plugin<'scatter'> {
  const decimals = decimalsOf(tried.map(({ mean }) => mean * factor))
  return {
    id: 'contour-names',
    afterDatasetsDraw({ ctx, chartArea, scales }) {
      const place = (left: number, up: number): Spot => ({
        x: scales.x!.getPixelForValue(left),
        y: scales.y!.getPixelForValue(up),
      })
      const dots = tried.map(({ x, y }) => place(x, y))
      const figure = { size: 10, colour: palette.quietInk, align: 'center' as const }
      if (hasFigures)
        for (const [index, { mean }] of tried.entries()) {
          const text = grouped(mean * factor, decimals)
          const { x, y } = dots[index]!
          const width = widthOf(ctx, text, figure)
          ctx.save()
          ctx.globalAlpha = 0.8
          ctx.fillStyle = palette.paper
          ctx.fillRect(x - width / 2 - 1, y - 19, width + 2, 11)
          ctx.restore()
          written(ctx, text, x, y - 10, figure)
        }
      const taken = dots.map(({ x, y }) => ({ x, y: y - 8 }))
      for (const [index, level] of levels.entries()) {
        const own = lines.filter((each) => each.level === level)
        if (own.length === 0) continue
        const longest = own.reduce((a, b) => (b.points.length > a.points.length ? b : a))
        const text = textOf(level)
        const lettering = { size: 12, colour: strokes[index % strokes.length]!.colour, isBold: true }
        const half = widthOf(ctx, text, lettering) / 2
        const spots = along(longest.points.map(([left, up]) => place(left, up))).filter(
          ({ x, y }) =>
            x - half > chartArea.left &&
            x + half < chartArea.right &&
            y - 8 > chartArea.top &&
            y + 8 < chartArea.bottom,
        )
        if (spots.length === 0) continue
        const clear = (spot: Spot) =>
          Math.min(
            ...taken.map((other) =>
              Math.max(Math.abs(spot.x - other.x) - half, 2.4 * Math.abs(spot.y - other.y) - 12),
            ),
          )
        const spot = spots.reduce((a, b) => (clear(b) > clear(a) ? b : a))
        ctx.save()
        ctx.fillStyle = palette.paper
        ctx.fillRect(spot.x - half - 3, spot.y - 8, 2 * half + 6, 16)
        ctx.restore()
        written(ctx, text, spot.x, spot.y + 4.5, { ...lettering, align: 'center' })
        for (const shift of [-half, 0, half]) taken.push({ x: spot.x + shift, y: spot.y })
      }
    },
  }
}

/** Decimals that tell a twentieth of what the figures span. */
function decimalsOf(values: readonly number[]): number {
  const span = Math.max(...values) - Math.min(...values)
  return span > 0 ? Math.max(0, Math.min(4, -Math.floor(Math.log10(span / 20) + 1e-9))) : 0
}

/** Spots along a line, close together. */
function along(points: readonly Spot[]): Spot[] {
  const parts = [0, 0.25, 0.5, 0.75]
  return points.slice(1).flatMap((to, index) => {
    const from = points[index]!
    return parts.map((part) => ({ x: from.x + (to.x - from.x) * part, y: from.y + (to.y - from.y) * part }))
  })
}

/** Where the scenario itself stands, if that is within what was tried. */
function ownPlace(x: Factor, y: Factor): Spot[] {
  const isWithin = ({ base, values }: Factor) => base !== null && base >= values[0]! && base <= values.at(-1)!
  return isWithin(x) && isWithin(y) ? [{ x: x.base!, y: y.base! }] : []
}

function titleOf({ target }: SweepResult, measure: SweepMeasure): string {
  return measure.name === heldName && target !== null
    ? `Share of shifts that hold ${rateText(target)}`
    : `${measureSubject(measure)} over two factors`
}

function altOf(result: SweepResult, measure: SweepMeasure, x: Factor, y: Factor): string {
  const rows = y.values.map((up) => {
    const row = result.points.filter(({ at }) => at[1] === up)
    const words = row.map(
      ({ at, measures }) =>
        `${valueText(at[0]!, x)} ${pointText(measures[measure.name], measure.name, result)}`,
    )
    return `${valueText(up, y)}: ${words.join(', ')}`
  })
  return `${measureSubject(measure)} over ${x.path} and ${y.path}. ${rows.join('; ')}.`
}
