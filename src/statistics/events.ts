/** What is known of things that happen seldom: exact limits of their number, and which figures rest on too few of them. */
import { beta, chiSquare } from './quantile.js'

/** Events from which a mean of what happens in them, or a share of time, is given with plus-minus. Project rule. */
export const enoughEvents = 30

/**
 * Shifts from which a figure that a rare long stop moves by much is given with plus-minus, unless so many such stops came before. Project rule: of 50 shifts of a line with such stops
 * in one of 30, 95 % intervals covered 80 %, of 100 shifts 94 %. What the figures themselves look like must not decide, for studies that
 * saw none look best.
 */
export const shiftsForRare = 100

/** Whether `some` of so many shifts, those that are unlike the others, are few and not none. */
export const isFewOf = (some: number, shifts: number): boolean =>
  some > 0 && some < Math.min(enoughEvents, shifts / 2)

/** Chance at most that a count is said to come in bunches when it does not. */
const bunchRisk = 0.01

/**
 * Limits of the expected number where `events` came, at least 0: each end is wrong with at most half of what confidence leaves.
 * Garwood, Biometrika 28 (1936) 437-442. `spread`, at least 1: variance over mean of the counts; with it as many bunches
 * as `events / spread` are taken to have come.
 */
export function countLimits(events: number, confidence: number, spread = 1): { low: number; high: number } {
  const tail = (1 - confidence) / 2
  const bunches = events / spread
  return {
    low: events === 0 ? 0 : (spread * chiSquare(tail, 2 * bunches)) / 2,
    high: (spread * chiSquare(1 - tail, 2 * bunches + 2)) / 2,
  }
}

/**
 * Limits of the chance of what happened `some` times in `n`, each end wrong with at most half of what confidence leaves.
 * Clopper & Pearson, Biometrika 26 (1934) 404-413.
 */
export function chanceLimits(some: number, n: number, confidence: number): { low: number; high: number } {
  const tail = (1 - confidence) / 2
  return {
    low: some === 0 ? 0 : beta(tail, some, n - some + 1),
    high: some === n ? 1 : beta(1 - tail, some + 1, n - some),
  }
}

/**
 * Variance over mean of counts, where it is shown to be above that of events that come one by one and independently of each other, which is 1:
 * then they come in bunches. Null where that is not shown. The index of dispersion against chi-square: Cox & Lewis, The
 * Statistical Analysis of Series of Events (1966), sec. 6.3 (from memory).
 */
export function bunching(counts: readonly number[]): number | null {
  const n = counts.length
  const mean = counts.reduce((sum, count) => sum + count, 0) / n
  if (n < 2 || mean === 0) return null
  const squares = counts.reduce((sum, count) => sum + (count - mean) ** 2, 0)
  return squares / mean > chiSquare(1 - bunchRisk, n - 1) ? squares / (n - 1) / mean : null
}
