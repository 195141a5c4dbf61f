/** Bars: pieces of a row that stand on one another, and steps from one number to another, with words in them. */
import type { Plugin } from 'chart.js'
import { palette } from './inks.js'
import { widthOf } from './letters.js'
import { type Bars, byHand, type Mark } from './mark.js'
import { stroked, written } from './pen.js'

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

/** Words in a piece: the first of `texts` that it has room for. */
export interface PieceWords {
  texts: string[]
  colour: string
}

/** Writes into each piece of each row that has room for its words and `spare` px beside them. */
export function pieceWords(
  wordsOf: (piece: number, row: number) => PieceWords,
  pieces: number,
  spare: number,
): Plugin {
  return byHand({
    over({ ctx, chart }) {
      for (let piece = 0; piece < pieces; piece++)
        for (const [row, bar] of chart.getDatasetMeta(piece).data.entries()) {
          const { texts, colour } = wordsOf(piece, row)
          const { x, y, base } = bar.getProps(['x', 'y', 'base'], true) as Record<'x' | 'y' | 'base', number>
          const lettering = { size: 11, colour, align: 'center' as const }
          const text = texts.find((each) => x - base >= widthOf(ctx, each, lettering) + spare)
          if (text !== undefined) written(ctx, text, (x + base) / 2, y + 4, lettering)
        }
    },
  })
}

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
      const joints = all
        .slice(0, -1)
        .map(({ to }, row) => [bars[row]!, bars[row + 1]!].map(({ y }) => [x(to), y] as const))
      for (const joint of joints) stroked(ctx, { colour: palette.quietInk }, joint)
    },
  }),
]
