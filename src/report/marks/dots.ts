/** Points, each with its sign. */
import type { Plugin } from 'chart.js'
import { palette } from './inks.js'
import { byHand, type Point, type Points } from './mark.js'
import { written } from './pen.js'

/** Signs in `colour`, which are filled with it unless another `fill` is given. */
export const dots = (
  label: string,
  data: Point[],
  { radius, colour = palette.ink, fill = colour, edge, style, ...look }: DotsLook & Partial<Points>,
): Points => ({
  label,
  data,
  pointRadius: radius,
  pointBorderColor: colour,
  pointBackgroundColor: fill,
  ...(edge === undefined ? {} : { pointBorderWidth: edge }),
  ...(style === undefined ? {} : { pointStyle: style }),
  ...look,
})

interface DotsLook {
  radius: number
  colour?: string
  fill?: string | string[]
  /** Width of the edge of a sign, px. */
  edge?: number
  style?: 'circle' | 'triangle' | 'rectRot' | 'crossRot'
}

/** Writes beside a point how many lie on one another there. */
export const countsBeside = (all: readonly (Point & { text: string })[]): Plugin =>
  byHand({
    over({ ctx, x, y }) {
      for (const { text, ...point } of all)
        written(ctx, text, x(point.x) + 9, y(point.y) + 4, { size: 11, colour: palette.ink })
    },
  })
