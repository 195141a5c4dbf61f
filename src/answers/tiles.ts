/** Tiles of figures: the same numbers, with the same digits, as the sentences of the first screen. */
import type { Figure } from '../catalogue/figure.js'
import type { Display } from '../catalogue/printed-units.js'
import { briefly } from '../catalogue/unit-name.js'
import { printFigure } from '../report/format.js'
import type { Tile } from '../report/front.js'

type More = Pick<Tile, 'note' | 'tone'>

/** Makes tiles of figures in the units of the reader; none where there is no figure. */
export const tilesFor =
  (display: Display) =>
  (label: string, figure: Figure | undefined, { note, tone }: More = {}): Tile[] => {
    if (!figure || figure.mean === null) return []
    const { value, interval, unit } = printFigure(briefly(figure), display)
    return [{ label, value, unit, interval, ...(note ? { note } : {}), ...(tone ? { tone } : {}) }]
  }

/** Tiles of which so many stand on the first screen. */
export const mostTiles = 4
