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

/** What stands beside each row, 0 being the first; a row may also lie between two. */
export const beside = (rows: readonly { row: number; words: readonly Beside[] }[]): Plugin =>
  byHand({
    over({ ctx, area, y }) {
      for (const { row, words } of rows)
        for (const { text, right, down = 4, size = 12, isQuiet, isBold = false } of words)
          written(ctx, text, area.right + right, y(row) + down, {
            size,
            colour: isQuiet ? palette.quietInk : palette.ink,
            isBold,
          })
    },
  })

/** A figure and below it, smaller, what belongs to it; where there is nothing to stand below the figure stands alone. */
export const figureOver = (figure: string, below: string, right: number): Beside[] => [
  { text: figure, right, isBold: true, down: below === '' ? 4 : -2 },
  { text: below, right, size: 11, isQuiet: true, down: 13 },
]
