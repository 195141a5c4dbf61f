/** Plus-minus: the interval of a figure as a line through its point. */
import { palette } from './inks.js'
import type { Point, Points } from './mark.js'

/** Intervals, each from point to point with a gap to the next. */
export const whiskers = (label: string, ends: readonly [Point, Point][], look: Partial<Points>): Points => ({
  label,
  data: ends.flatMap((both) => [...both, { x: Number.NaN, y: Number.NaN }]),
  showLine: true,
  spanGaps: false,
  borderColor: palette.main,
  pointRadius: 0,
  fill: false,
  ...look,
})
