/** Chart of a grid: contours of a measure over two factors, with the points that were tried; of a length also minutes of buffer. */
import { grouped, listed, rateText } from '../../report/format.js'
import { decimalsOf } from '../../report/marks/axis.js'
import { type Chart, chartOf, fileStem } from '../../report/marks/chart.js'
import { type Contour, contourNames, figuresAbove } from '../../report/marks/contours.js'
import { dots } from '../../report/marks/dots.js'
import { okabeIto, palette } from '../../report/marks/inks.js'
import { line } from '../../report/marks/line.js'
import type { Point, Points } from '../../report/marks/mark.js'
import { factorAxis, measureAxis, minutesAxis } from './axis.js'
import { type Factor, type GridOf, heldName, type SweepMeasure, type SweepResult } from './document.js'
import { meanText, measureSubject, pointText, valueText } from './words.js'

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
  const hasFigures = tried.length <= mostFigures
  const { factor, word, title } = measureAxis(measure, result)
  const own = ownPlace(x, y)
  const wordsOf = (level: number) => meanText(level, measure, result)
  const decimals = tellingDecimals(tried.map(({ mean }) => mean * factor))
  const contours = grid.levels.map(
    (level, index): Contour => ({
      text: wordsOf(level),
      colour: strokes[index % strokes.length]!.colour,
      lines: grid.lines.filter((each) => each.level === level).map(({ points }) => points.map(pointOf)),
    }),
  )
  return chartOf(result, {
    name: fileStem('grid', measure.name),
    section: 'figures',
    title: titleOf(result, measure),
    subtitle: `Dots: points tried${hasFigures ? `, with the figure (${word === '' ? title : word})` : ''}. Lines: where it is ${listed(grid.levels.map(wordsOf))}, straight between points.${own.length > 0 ? ' Diamond: the scenario as it stands.' : ''}`,
    alt: altOf(result, measure, x, y),
    gap: 14,
    height: 430 + (x.minutes ? 44 : 0),
    axes: {
      x: factorAxis(x),
      y: factorAxis(y),
      ...(x.minutes ? { across: minutesAxis(x, x.minutes, 'top') } : {}),
      ...(y.minutes ? { beside: minutesAxis(y, y.minutes, 'right') } : {}),
    },
    marks: [
      ...datasetsOf(grid, tried, own),
      hasFigures &&
        figuresAbove(
          tried.map(({ mean, ...point }) => ({ ...point, text: grouped(mean * factor, decimals) })),
        ),
      contourNames(contours, tried),
    ],
  })
}

const pointOf = ([x, y]: readonly [number, number]): Point => ({ x, y })

function datasetsOf({ levels, lines }: GridOf, tried: readonly Point[], own: Point[]): Points[] {
  return [
    ...lines.map(({ level, points }): Points => {
      const { colour, dash, width } = strokes[levels.indexOf(level) % strokes.length]!
      const look = { borderColor: colour, borderDash: dash, borderWidth: width }
      return line(`contour ${level}`, points.map(pointOf), { showLine: true, order: 2, ...look })
    }),
    dots('as it stands', own, { style: 'rectRot', radius: 6.5, fill: 'transparent', edge: 2, order: 0 }),
    dots(
      'tried',
      tried.map(({ x, y }) => ({ x, y })),
      { radius: 2.5, colour: palette.quietInk, order: 1 },
    ),
  ]
}

/** Decimals that tell a twentieth of what the figures span. */
function tellingDecimals(values: readonly number[]): number {
  const span = Math.max(...values) - Math.min(...values)
  return span > 0 ? Math.min(4, decimalsOf(span / 20)) : 0
}

/** Where the scenario itself stands, if that is within what was tried. */
function ownPlace(x: Factor, y: Factor): Point[] {
  const isWithin = ({ base, values }: Factor) => base !== null && base >= values[0]! && base <= values.at(-1)!
  return isWithin(x) && isWithin(y) ? [{ x: x.base!, y: y.base! }] : []
}

function titleOf({ target }: SweepResult, measure: SweepMeasure): string {
  return measure.name === heldName && target !== null
    ? `Share of shifts that reach ${rateText(target)}`
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
