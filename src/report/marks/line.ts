/** Lines through points, and the edges of bands between which is filled. */
import { palette } from './inks.js'
import type { Point, Points } from './mark.js'

/** A line without its points, with what is not as it is in most charts. */
export const line = (label: string, data: Point[], look: Partial<Points> = {}): Points => ({
  label,
  data,
  pointRadius: 0,
  borderColor: palette.main,
  ...look,
})

/** An edge of a band; one of two says with `fill` where the other is. */
export const bandEdge = (label: string, data: Point[], look: Partial<Points> = {}): Points =>
  line(label, data, { borderWidth: 0, borderColor: undefined!, backgroundColor: palette.band, ...look })

/** A dashed line straight up to `top` at `at`, which can be pointed at. */
export const targetLine = (at: number, top: number, look: Partial<Points> = {}): Points =>
  line(
    'target',
    [
      { x: at, y: 0 },
      { x: at, y: top },
    ],
    { borderColor: palette.target, borderDash: [6, 4], ...look },
  )
