/** Plus-minus: the interval of a figure as a line through its point. */
import { palette } from './inks.js'
import type { Points } from './mark.js'

/** An interval along one axis, at a place on the other. */
export interface Interval {
  at: number
  low: number
  high: number
}

/** Intervals along x or y, with a gap from one to the next. */
export const whiskers = (
  label: string,
  axis: 'x' | 'y',
  intervals: readonly Interval[],
  look: Partial<Points>,
): Points => ({
  label,
  data: intervals.flatMap(({ at, low, high }) => [
    ...[low, high].map((end) => (axis === 'x' ? { x: end, y: at } : { x: at, y: end })),
    { x: Number.NaN, y: Number.NaN },
  ]),
  showLine: true,
  spanGaps: false,
  borderColor: palette.main,
  pointRadius: 0,
  fill: false,
  ...look,
})
