/** Charts of what is not known: the two kinds of it side by side, and what each input adds. */
import type { ContributionWithEnds, InputEndsTold } from '../../answers/contributions.js'
import { bothKinds, halfText, halfWidth } from '../../answers/inputs-words.js'
import { printedUnit } from '../../catalogue/printed-units.js'
import { grouped, percent, percentText } from '../../report/format.js'
import { numbers, roomAtRight, spanAxis } from '../../report/marks/axis.js'
import { stackedBars } from '../../report/marks/bars.js'
import { beside } from '../../report/marks/beside.js'
import { wrapped } from '../../report/marks/breaking.js'
import { type Chart, chartOf } from '../../report/marks/chart.js'
import { palette } from '../../report/marks/inks.js'
import type { Bars } from '../../report/marks/mark.js'
import { roomySpan } from '../../report/marks/reach.js'
import { nameAbove, ruleUp } from '../../report/marks/rule.js'
import type { RunResult } from './document.js'
import { byReach, figureThere, inputEnds } from './inputs-table.js'

/** Room right of the bars for their figures, px. */
const figuresWidth = 150

/** Both charts; none where inputs were not drawn. */
export function inputsCharts(result: RunResult): Chart[] {
  const told = result.drawn?.contributions.find(({ measure }) => measure === 'throughput')
  return [kindsChart(result), told ? inputEndsChart(result, told) : null].flatMap((chart) => chart ?? [])
}

/** How far off the rate may be by luck, by the inputs, and by both. */
function kindsChart(result: RunResult): Chart | null {
  const { display, made } = result
  const figure = result.measures.throughput
  const said = bothKinds(figure, display)
  if (!figure?.inputs || said === null) return null
  const { factor, word } = printedUnit(figure.unit, display)
  const kinds = [
    { name: 'random variation of the simulation', of: figure },
    { name: 'uncertainty of the inputs', of: figure.inputs.alone },
    { name: 'both together', of: figure.inputs },
  ]
  const widths = kinds.map(({ of }) => halfWidth(figure, of) * factor)
  return chartOf(result, {
    name: 'both-kinds',
    section: 'unknown',
    title: `Throughput: ${said}`,
    subtitle: `Half-width of the interval at ${percentText(made.confidence)} confidence. More shifts make the first bar shorter, better known inputs the second.`,
    alt: `How far off the throughput may be: ${said}.`,
    gap: 10,
    height: kinds.length * 40,
    rows: kinds.map(({ name }) => wrapped(name, 24)),
    axes: {
      x: numbers({ title: `±, ${word}`, min: 0, most: 8 }),
      figures: roomAtRight(figuresWidth),
    },
    marks: [
      stackedBars('±', widths, palette.main),
      beside(
        kinds.map(({ of }, row) => ({
          row,
          words: [{ text: `± ${halfText(figure, of, display)} ${word}`, right: 14, isBold: true }],
        })),
      ),
    ],
  })
}

/** Inputs that are drawn. */
const mostRows = 12
/** Columns right of the bars, px: both ends, the share. */
const [endsAt, shareAt, room] = [14, 228, 284]

/** Where good cases out lie at the ends of each input, the farthest first; null where no input moves them. */
export function inputEndsChart(result: RunResult, told: InputEndsTold): Chart | null {
  const all = byReach(told)
  const rows = all.slice(0, mostRows)
  if (rows.length === 0) return null
  const { factor, word } = printedUnit(told.unit, result.display)
  const middle = told.middle * factor
  const span = roomySpan(
    rows.flatMap(({ low, high }) => [low.figure * factor, middle, high.figure * factor]),
    7,
  )
  const there = (value: number) => figureThere(value, told, result).value
  const texts = rows.map((row) => {
    const [low, high] = inputEnds(row, result)
    return [`${low}: ${there(row.low.figure)}`, `${high}: ${there(row.high.figure)}`] as const
  })
  const most = told.shares.reduce((a, b) => (b.share > a.share ? b : a))
  return chartOf(result, {
    name: 'inputs',
    section: 'unknown',
    title: `Throughput: ${most.path} causes ${percent(most.share)} of the uncertainty of the inputs`,
    subtitle: `Bars: throughput with this input at its low end (light) and high end (dark), the others as drawn. 5 % of its draws lie beyond each end. By regression on ranks, which explains ${percent(told.explained)} of the differences between draws. At the right: both ends, and the share of this input alone.${rows.length < all.length ? ` ${rows.length} of ${all.length} inputs; those left out matter least.` : ''}`,
    alt: `Throughput at the ends of each input, ${there(told.middle)} ${word} in the middle: ${rows.map(({ path, share }, row) => `${path} at ${texts[row]![0]}, at ${texts[row]![1]}, ${percent(share)}`).join('; ')}.`,
    gap: 26,
    height: rows.length * 38 + 8,
    rows: rows.map(({ path }) => wrapped(path, 30)),
    axes: {
      x: spanAxis(span, `throughput, ${word}`, { textOf: (value) => grouped(value, span.decimals) }),
      figures: roomAtRight(room),
    },
    marks: [
      barsTo('low end', rows, middle, ({ low }) => low.figure * factor, palette.short),
      barsTo('high end', rows, middle, ({ high }) => high.figure * factor, palette.main),
      ruleUp(middle, { colour: palette.ink, dash: [], beyond: 5 }),
      nameAbove(middle, `middle of the draws: ${there(told.middle)} ${word}`, { up: 9, margin: 14 }),
      beside(
        rows.map(({ share }, row) => ({
          row,
          words: [
            { text: texts[row]![0], right: endsAt, down: -3 },
            { text: texts[row]![1], right: endsAt, down: 12 },
            { text: percent(share), right: shareAt, isBold: row === 0 },
          ],
        })),
      ),
    ],
  })
}

/** Bars from the middle to an end; those of both ends lie in one row. */
const barsTo = (
  label: string,
  rows: readonly ContributionWithEnds[],
  middle: number,
  end: (row: ContributionWithEnds) => number,
  colour: string,
): Bars => ({
  label,
  data: rows.map((row): [number, number] => {
    const to = end(row)
    return [Math.min(middle, to), Math.max(middle, to)]
  }),
  yAxisID: 'y',
  backgroundColor: colour,
  grouped: false,
  barPercentage: 0.6,
  categoryPercentage: 0.9,
})
