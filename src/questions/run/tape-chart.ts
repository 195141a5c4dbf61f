/** Chart of the tape: what each head lays on cases and what is lost with its rolls, a shift. */
import { printedUnit } from '../../catalogue/printed-units.js'
import { figureText, percentText } from '../../report/format.js'
import { numbers, roomAtRight } from '../../report/marks/axis.js'
import { stacked, stackedBars } from '../../report/marks/bars.js'
import { beside, figureOver } from '../../report/marks/beside.js'
import { wrapped } from '../../report/marks/breaking.js'
import { type Chart, chartOf } from '../../report/marks/chart.js'
import { palette } from '../../report/marks/inks.js'
import type { RunResult } from './document.js'

/** Room right of the bars for their figures, px: an error bar would be too short to see. */
const figuresWidth = 156

/** Tape laid and lost by head; null where the line has no sealer. */
export function tapeChart(result: RunResult): Chart | null {
  const { display, equipment, made } = result
  const { factor, word } = printedUnit('m', display)
  const heads = Object.entries(equipment).flatMap(([machine, { pieces, heads = {} }]) =>
    // bars of pieces side by side are those of each
    Object.entries(pieces ? {} : heads).map(([head, { tape, loss }]) => ({
      name: `${machine}, ${head}`,
      laid: (tape!.mean ?? 0) * factor - (loss!.mean ?? 0) * factor,
      lost: (loss!.mean ?? 0) * factor,
      used: figureText(tape, display),
      loss: figureText(loss, display),
    })),
  )
  if (heads.length === 0) return null
  const words = heads.map(({ name, used, loss }) => `${name}: ${used}, of which ${loss} lost`)
  const labels = ['on cases', 'lost in roll changes and breaks'] as const
  return chartOf(result, {
    name: 'tape',
    section: 'money',
    title: 'Tape by head, a shift',
    subtitle: `Beside each bar: tape used, and the part lost in roll changes and breaks. Plus-minus at ${percentText(made.confidence)} confidence.`,
    alt: `Tape used a shift by head: ${words.join('; ')}.`,
    gap: 2,
    height: heads.length * 46 - 4,
    rows: heads.map(({ name }) => wrapped(name, 24)),
    legend: labels,
    axes: {
      x: numbers({
        title: `tape a shift, ${word}`,
        min: 0,
        most: 8,
        decimals: 0,
        more: stacked,
      }),
      figures: roomAtRight(figuresWidth),
    },
    marks: [
      stackedBars(
        labels[0],
        heads.map(({ laid }) => laid),
        palette.main,
      ),
      stackedBars(
        labels[1],
        heads.map(({ lost }) => lost),
        palette.lost,
      ),
      beside(heads.map(({ used, loss }, row) => ({ row, words: figureOver(used, `lost ${loss}`, 14) }))),
    ],
  })
}
