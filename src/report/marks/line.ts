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

/** Bars from one number to another along x, filled from 0 up, each beside the next. */
export const blocks = (
  label: string,
  all: readonly { from: number; to: number; height: number }[],
  look: Partial<Points> = {},
): Points =>
  line(
    label,
    all.flatMap(({ from, to, height }) => [
      { x: from, y: 0 },
      { x: from, y: height },
      { x: to, y: height },
      { x: to, y: 0 },
    ]),
    {
      ...{ showLine: true, fill: 'origin', tension: 0, borderWidth: 1 },
      ...{ borderColor: palette.paper, backgroundColor: palette.band },
      ...look,
    },
  )

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
