/** Charts of what is not known: the two kinds of it side by side, and what each input adds. */
import type { ContributionsTold } from '../../answers/contributions.js'
import { bothKinds, halfText, halfWidth } from '../../answers/inputs-words.js'
import { printedUnit } from '../../catalogue/printed-units.js'
import { percent, percentText } from '../../report/format.js'
import { numbers, roomAtRight } from '../../report/marks/axis.js'
import { stackedBars } from '../../report/marks/bars.js'
import { beside } from '../../report/marks/beside.js'
import { wrapped } from '../../report/marks/breaking.js'
import { type Chart, chartOf } from '../../report/marks/chart.js'
import { palette } from '../../report/marks/inks.js'
import type { RunResult } from './document.js'

/** Room right of the bars for their figures, px. */
const figuresWidth = 150
/** Inputs that are drawn. */
const mostRows = 12

/** Both charts; none where inputs were not drawn. */
export function inputsCharts(result: RunResult): Chart[] {
  const told = result.drawn?.contributions.find(({ measure }) => measure === 'throughput')
  return [kindsChart(result), told ? sharesChart(result, told) : null].flatMap((chart) => chart ?? [])
}

/** How far off the rate may be by luck, by the inputs, and by both. */
function kindsChart(result: RunResult): Chart | null {
  const { display, made } = result
  const figure = result.measures.throughput
  const said = bothKinds(figure, display)
  if (!figure?.inputs || said === null) return null
  const { factor, word } = printedUnit(figure.unit, display)
  const kinds = [
    { name: 'luck of the simulation', of: figure },
    { name: 'what is not known of the inputs', of: figure.inputs.alone },
    { name: 'both together', of: figure.inputs },
  ]
  const widths = kinds.map(({ of }) => halfWidth(figure, of) * factor)
  return chartOf(result, {
    name: 'both-kinds',
    section: 'unknown',
    title: `Good cases out: ${said}`,
    subtitle: `Half-width of the interval at ${percentText(made.confidence)} confidence. More shifts make the first bar shorter, better known inputs the second one.`,
    alt: `How far off good cases out may be: ${said}.`,
    gap: 10,
    height: kinds.length * 40,
    rows: kinds.map(({ name }) => wrapped(name, 24)),
    axes: {
      x: numbers({ title: `give or take, ${word}`, min: 0, most: 8 }),
      figures: roomAtRight(figuresWidth),
    },
    marks: [
      stackedBars('give or take', widths, palette.main),
      beside(
        kinds.map(({ of }, row) => ({
          row,
          words: [{ text: `± ${halfText(figure, of, display)} ${word}`, right: 14, isBold: true }],
        })),
      ),
    ],
  })
}

/** Part of each input, the most first. */
function sharesChart(result: RunResult, { shares, explained }: ContributionsTold): Chart | null {
  const rows = shares.filter(({ share }) => share > 0).slice(0, mostRows)
  if (rows.length === 0) return null
  const first = rows[0]!
  return chartOf(result, {
    name: 'inputs',
    section: 'unknown',
    title: `Good cases out: ${percent(first.share)} of what is not known of the inputs is that of ${first.path}`,
    subtitle: `Share of each input taken alone in what they bring together. On ranks, straight lines explain ${percent(explained)} of what the draws differ by.${rows.length < shares.length ? ` ${rows.length} of ${shares.length} inputs; those left out add least.` : ''}`,
    alt: `What each input adds to what is not known of good cases out: ${rows.map(({ path, share }) => `${path} ${percent(share)}`).join('; ')}.`,
    gap: 10,
    height: rows.length * 34 + 8,
    rows: rows.map(({ path }) => wrapped(path, 30)),
    axes: {
      x: numbers({
        title: 'share of what is not known of the inputs, %',
        min: 0,
        max: 100,
        most: 6,
        decimals: 0,
      }),
      figures: roomAtRight(figuresWidth),
    },
    marks: [
      stackedBars(
        'share',
        rows.map(({ share }) => share * 100),
        palette.short,
      ),
      beside(
        rows.map(({ share }, row) => ({
          row,
          words: [{ text: percent(share), right: 14, isBold: row === 0 }],
        })),
      ),
    ],
  })
}
