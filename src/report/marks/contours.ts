/** Contours with their names, and figures above the points between which they lie. */
import type { Plugin } from 'chart.js'
import { palette } from './inks.js'
import { widthOf } from './letters.js'
import { byHand, type Drawing, type Point } from './mark.js'
import { along, haloed, type Place } from './pen.js'

/** Writes a figure above each point. */
export const figuresAbove = (all: readonly (Point & { text: string })[]): Plugin =>
  byHand({
    over({ ctx, x, y }) {
      const lettering = { size: 10, colour: palette.quietInk, align: 'center' as const }
      const strip = { beside: 1, up: 9, height: 11, alpha: 0.8 }
      for (const { text, ...point } of all) haloed(ctx, text, [x(point.x), y(point.y) - 10], lettering, strip)
    },
  })

/** All lines of one level. */
export interface Contour {
  text: string
  colour: string
  lines: readonly Point[][]
}

/** Names each contour on its longest line, where it is farthest from points, their figures and other names. */
export const contourNames = (contours: readonly Contour[], points: readonly Point[]): Plugin =>
  byHand({
    over(drawing) {
      const { ctx, x, y } = drawing
      const taken = points.map((point): Place => [x(point.x), y(point.y) - 8])
      for (const { text, colour, lines } of contours) {
        const lettering = { size: 12, colour, isBold: true, align: 'center' as const }
        const half = widthOf(ctx, text, lettering) / 2
        const spot = clearestSpot(drawing, lines, half, taken)
        if (spot === null) continue
        haloed(ctx, text, [spot[0], spot[1] + 4.5], lettering, { beside: 3, up: 12.5, height: 16 })
        for (const shift of [-half, 0, half]) taken.push([spot[0] + shift, spot[1]])
      }
    },
  })

/** Where on the longest line a name of this half width is farthest from all that is taken; null without room. */
function clearestSpot(
  { area, x, y }: Drawing,
  lines: readonly Point[][],
  half: number,
  taken: readonly Place[],
): Place | null {
  if (lines.length === 0) return null
  const longest = lines.reduce((a, b) => (b.length > a.length ? b : a))
  const spots = along(
    longest.map((point): Place => [x(point.x), y(point.y)]),
    () => 4,
  ).filter(
    ([across, down]) =>
      across - half > area.left &&
      across + half < area.right &&
      down - 8 > area.top &&
      down + 8 < area.bottom,
  )
  const clear = ([across, down]: Place) =>
    Math.min(
      ...taken.map((other) =>
        Math.max(Math.abs(across - other[0]) - half, 2.4 * Math.abs(down - other[1]) - 12),
      ),
    )
  return spots.length === 0 ? null : spots.reduce((a, b) => (clear(b) > clear(a) ? b : a))
}
