/** Bars: pieces of a row that stand on one another, and steps from one number to another, with words in them. */
import type { Plugin } from 'chart.js'
import { lettersOn, palette } from './inks.js'
import { widthOf } from './letters.js'
import { type Bars, byHand, type Mark } from './mark.js'
import { stroked, upright, written } from './pen.js'

/** A piece of each row, with what is not as it is in most charts. */
export const stackedBars = (
  label: string,
  values: number[],
  colour: string,
  look: Partial<Bars> = {},
): Bars => ({
  label,
  data: values,
  yAxisID: 'y',
  backgroundColor: colour,
  borderColor: palette.paper,
  borderWidth: 0,
  borderSkipped: false,
  barPercentage: 0.75,
  categoryPercentage: 0.9,
  ...look,
})

/** The axis along rows whose pieces stand on one another is told so too. */
export const stacked = { stacked: true }

/** Writes into each piece of each row the first of its texts for which there is room, with `spare` px beside it. */
export const pieceWords = (spare: number, textsOf: (piece: number, row: number) => string[]): Plugin =>
  byHand({
    over({ ctx, chart }) {
      for (const [piece, { backgroundColor }] of chart.data.datasets.entries()) {
        const lettering = { size: 11, colour: lettersOn(String(backgroundColor)), align: 'center' as const }
        for (const [row, bar] of chart.getDatasetMeta(piece).data.entries()) {
          const { x, y, base } = bar.getProps(['x', 'y', 'base'], true) as Record<'x' | 'y' | 'base', number>
          const isFit = (text: string) => x - base >= widthOf(ctx, text, lettering) + spare
          const text = textsOf(piece, row).find(isFit)
          if (text !== undefined) written(ctx, text, (x + base) / 2, y + 4, lettering)
        }
      }
    },
  })

/** A step of a row, from one number to another. */
export interface Step {
  from: number
  to: number
  colour: string
}

/** Steps row by row, with a thin line from the end of each to the next: one begins where the one above it ends. */
export const steps = (label: string, all: readonly Step[]): Mark[] => [
  {
    label,
    data: all.map(({ from, to }): [number, number] => [Math.min(from, to), Math.max(from, to)]),
    yAxisID: 'y',
    backgroundColor: all.map(({ colour }) => colour),
    minBarLength: 1.5,
    barPercentage: 0.8,
    categoryPercentage: 0.9,
  },
  byHand({
    over({ ctx, x, chart }) {
      const bars = chart.getDatasetMeta(0).data
      for (const [row, { to }] of all.slice(0, -1).entries())
        stroked(ctx, { colour: palette.quietInk }, upright(x(to), bars[row]!.y, bars[row + 1]!.y))
    },
  }),
]
