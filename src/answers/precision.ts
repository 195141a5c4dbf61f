/** How many shifts are enough: sequential stopping on the relative half-width of chosen measures. */
import type { ShiftResult } from '../line/line.js'
import type { Estimate } from '../statistics/estimate.js'
import { controlsOf, type Estimation, estimate, type StudyMeasure } from './figures.js'

/** Fewest shifts: of fewer the spread is known too badly, and who happens to see little of it stops too soon. */
export const leastShifts = 30

/** Shifts after each of which the rule is looked at; from there on whenever there are 1 % more. */
const everyShift = 200

/**
 * How far the estimate may be off, as a share of the true figure, by its interval: with half-width h and mean m,
 * (h/m) / (1 - h/m), because the true figure may be smaller than the mean; of an uneven interval the longer side counts. Infinite where the
 * interval reaches 0, NaN without an interval and where it has no width: what did not vary so far is not known for that, unless the scenario fixes it (0).
 * At most p is the same as h/m at most p / (1 + p): Law,
 * Simulation Modeling and Analysis, sec. 9.4.1 (from memory).
 */
export function relativeError({
  mean,
  low,
  high,
  isFixed,
}: Pick<Estimate, 'mean' | 'low' | 'high' | 'isFixed'>): number {
  if (isFixed) return 0
  const half = Math.max(high - mean, mean - low)
  // the same in all shifts: how it varies has not been seen yet
  if (half === 0) return Number.NaN
  const share = half / Math.abs(mean)
  return share >= 1 ? Infinity : share / (1 - share)
}

/**
 * A rule that says whether the first shifts of a study are enough: each measure is known within `share` of its figure.
 * To be asked after each shift in their order. Looking costs time, so it looks ever more rarely; where it looks depends on the number
 * of shifts alone.
 */
export function stoppingRule(
  measures: readonly StudyMeasure[],
  share: number,
  of: () => Estimation,
): (shifts: readonly ShiftResult[]) => boolean {
  let next = leastShifts
  return (shifts) => {
    if (shifts.length < next) return false
    next = shifts.length < everyShift ? shifts.length + 1 : Math.ceil(shifts.length * 1.01)
    const how = of()
    const controls = controlsOf(shifts, how)
    return measures.every((measure) => relativeError(estimate(measure, shifts, how, controls)) <= share)
  }
}
