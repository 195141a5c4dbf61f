/** How many shifts are enough: sequential stopping on the relative half-width of chosen measures. */
import type { ShiftResult } from '../line/line.js'
import type { Estimate } from './estimate.js'
import { controlsOf, type Estimation, estimate, type StudyMeasure } from './figures.js'

/** Fewest shifts: of fewer the spread itself is not known. */
export const leastShifts = 10

/** Shifts after each of which the rule is looked at; from there on whenever there are 1 % more. */
const everyShift = 200

/**
 * How far the estimate may be off, as a share of the true figure, by its interval: with half-width h and mean m,
 * (h/m) / (1 - h/m), because the true figure may be smaller than the mean. 0 of what does not vary, infinite where the
 * interval reaches 0, NaN without an interval. At most p is the same as h/m at most p / (1 + p): Law,
 * Simulation Modeling and Analysis, sec. 9.4.1 (from memory).
 */
export function relativeError({ mean, low, high }: Pick<Estimate, 'mean' | 'low' | 'high'>): number {
  const half = (high - low) / 2
  if (half === 0) return 0
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
  how: Estimation,
): (shifts: readonly ShiftResult[]) => boolean {
  let next = leastShifts
  return (shifts) => {
    if (shifts.length < next) return false
    next = shifts.length < everyShift ? shifts.length + 1 : Math.ceil(shifts.length * 1.01)
    const controls = controlsOf(shifts, how)
    return measures.every(
      (measure) => relativeError(estimate(measure, shifts, how.confidence, controls)) <= share,
    )
  }
}
