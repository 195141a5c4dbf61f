/** Figures in columns right of a picture, each beside its row. */
import type { Plugin } from 'chart.js'
import { palette } from './inks.js'
import { byHand } from './mark.js'
import { written } from './pen.js'

/** Words beside a row. */
export interface Beside {
  text: string
  /** How far right of the picture and below the middle of the row, px. */
  right: number
  down?: number
  size?: number
  isQuiet?: boolean
  isBold?: boolean
}

/** What stands beside a row, 0 being the first; it may also lie between two. */
interface BesideRow {
  row: number
  words: readonly Beside[]
}

export const besideId = 'beside'

/** The mark of them, which still knows its words: where there is no room beside the picture they stand under the names. */
export interface BesideMark extends Plugin {
  rows: readonly BesideRow[]
}

/** What stands beside each row. */
export const beside = (rows: readonly BesideRow[]): BesideMark => ({
  rows,
  ...byHand({
    over({ ctx, area, y }) {
      for (const { row, words } of rows)
        for (const { text, right, down = 4, size = 12, isQuiet, isBold = false } of words)
          written(ctx, text, area.right + right, y(row) + down, {
            size,
            colour: isQuiet ? palette.quietInk : palette.ink,
            isBold,
          })
    },
  }),
  id: besideId,
})

/** A figure and below it, smaller, what belongs to it; where there is nothing to stand below the figure stands alone. */
export const figureOver = (figure: string, below: string, right: number): Beside[] => [
  { text: figure, right, isBold: true, down: below === '' ? 4 : -2 },
  { text: below, right, size: 11, isQuiet: true, down: 13 },
]
