/** What shifts say of a promise: its figure, the interval of that, and on which side of what is asked the interval lies. */

import type { Condition } from '../../answers/condition.js'
import { type Interval, intervalOf } from '../../answers/difference-figure.js'
import { type Estimation, estimate } from '../../answers/figures.js'
import type { ShiftResult } from '../../line/line.js'
import type { ControlBasis } from '../../statistics/control.js'
import { shareEstimate } from '../../statistics/estimate.js'

/**
 * The figure over shifts whose number does not hang on what they say: of a share of shifts with Wilson's interval, of a measure
 * as a study estimates it, a ratio as total over total.
 */
export function promiseFigure(
  { isShare, measure, figureOf }: Condition,
  shifts: readonly ShiftResult[],
  how: Pick<Estimation, 'confidence' | 'exposure'>,
  controls: ControlBasis | null = null,
): Interval {
  if (!isShare) return intervalOf(estimate(measure, shifts, how, controls))
  const figures = shifts.map(({ values }) => figureOf(values))
  return intervalOf(shareEstimate(figures, how.confidence))
}

/** What is asked of a figure. */
export interface Asked {
  value: number
  isLeast: boolean
  /** How far off the value counts as either, above 0. */
  near: number
}

/**
 * What an interval says of a promise. `kept`, `missed`: all of it lies on that side of what is asked, missed by more than may go
 * either way; `near`: all of it lies short of that, not all by more than that; `open`: what is asked lies within, or there is none.
 */
export type Shown = 'kept' | 'open' | 'near' | 'missed'

export function shownBy({ low, high }: Interval, { value, isLeast, near }: Asked): Shown {
  if (low === null || high === null) return 'open'
  const [least, most] = isLeast ? [low - value, high - value] : [value - high, value - low]
  if (least >= 0) return 'kept'
  if (most >= 0) return 'open'
  return most >= -near ? 'near' : 'missed'
}

/**
 * How far a design is from keeping all its promises: the least of what its figures have to spare, each counted in what may go
 * either way of it; below 0 where one falls short, minus infinity where one is not known.
 */
export const leastSpare = (figures: readonly Interval[], asked: readonly Asked[]): number =>
  Math.min(
    ...asked.map(({ value, isLeast, near }, index) => {
      const mean = figures[index]?.mean ?? null
      return mean === null ? -Infinity : (isLeast ? mean - value : value - mean) / near
    }),
  )
