/** Points, each with its sign. */
import { palette } from './inks.js'
import type { Point, Points } from './mark.js'

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
