/** Charts of what is not known: the two kinds of it side by side, and what each input adds. */
import { bothKinds, halfText, halfWidth } from '../../answers/inputs-words.js'
import { printedUnit } from '../../catalogue/printed-units.js'
import { percentText } from '../../report/format.js'
import { numbers, roomAtRight } from '../../report/marks/axis.js'
import { stackedBars } from '../../report/marks/bars.js'
import { beside } from '../../report/marks/beside.js'
import { wrapped } from '../../report/marks/breaking.js'
import { type Chart, chartOf } from '../../report/marks/chart.js'
import { palette } from '../../report/marks/inks.js'
import type { RunResult } from './document.js'
import { inputEndsChart } from './input-ends-chart.js'

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
