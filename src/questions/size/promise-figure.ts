/** What shifts say of a promise: its figure, the interval of that, and on which side of what is asked the interval lies. */

import type { Condition } from '../../answers/condition.js'
import { type Interval, intervalOf } from '../../answers/difference-figure.js'
import { type Estimation, estimate } from '../../answers/figures.js'
import { type Draws, layoutOfMeasure } from '../../answers/with-inputs.js'
import type { ShiftResult } from '../../line/line.js'
import type { ControlBasis } from '../../statistics/control.js'
import { type Estimate, shareEstimate } from '../../statistics/estimate.js'
import { type Layout, layoutOfDraws } from '../../statistics/layout.js'

/**
 * The figure over shifts whose number does not hang on what they say: of a share of shifts with Wilson's interval, of a measure
 * as a study estimates it, a ratio as total over total.
 */
export const promiseFigure = (...of: Parameters<typeof promiseEstimate>): Interval =>
  intervalOf(promiseEstimate(...of))

/** The same as an estimate. */
export function promiseEstimate(
  { isShare, measure, figureOf }: Condition,
  shifts: readonly ShiftResult[],
  how: Pick<Estimation, 'confidence' | 'exposure'>,
  controls: ControlBasis | null = null,
): Estimate {
  if (!isShare) return estimate(measure, shifts, how, controls)
  return shareEstimate(keptShifts({ figureOf }, shifts), how.confidence)
}

/** Of each shift whether it keeps a share's promise, 1 or 0. */
const keptShifts = ({ figureOf }: Pick<Condition, 'figureOf'>, shifts: readonly ShiftResult[]): number[] =>
  shifts.map(({ values }) => figureOf(values))

/** What draws of the inputs say of a promise, a share of shifts on the logit; null where too few of them say anything. */
export function layoutOfPromise(condition: Condition, draws: Draws): Layout | null {
  if (!condition.isShare) return layoutOfMeasure(condition.measure, draws)
  return layoutOfDraws(
    draws.of.map(({ shifts }) => ({ kind: 'share', values: keptShifts(condition, shifts), overs: null })),
  )
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
