/** Stops by hand: what jams, roll changes, breakdowns and planned stops leave of a rate. */

/** A kind of stop: how many a case brings (0.0005 for one in 2000 cases), and the time of each, waiting for hands included, s. */
export interface Stop {
  perCase: number
  time: number
}

/** Time lost a case, s: frequency x time, summed over the kinds of stop. Derived. */
export const timeLostPerCase = (stops: readonly Stop[]): number =>
  stops.reduce((lost, { perCase, time }) => lost + perCase * time, 0)

/**
 * Time a case takes with its part of the stops, s: `cycle` and the time lost. No stop overlaps another and the machine is never
 * starved or blocked. Hopp & Spearman, Factory Physics, ch. 8 (effective process time).
 */
export const effectiveTime = (cycle: number, stops: readonly Stop[]): number => cycle + timeLostPerCase(stops)

/** Cases a second with stops: one over `effectiveTime`. */
export const effectiveRate = (cycle: number, stops: readonly Stop[]): number =>
  1 / effectiveTime(cycle, stops)

/** Breakdowns a case that are counted in running time: the case's share of the mean time to failure, s. Derived. */
export const breakdownsPerCase = (cycle: number, meanUp: number): number => cycle / meanUp

/** Roll changes a case: each head empties its own roll. Infinite where a roll gives no strip. Derived. */
export const rollChangesPerCase = (heads: number, casesPerRoll: number): number => heads / casesPerRoll

/** Share of time that a machine is up: mean time up over that and the mean repair, s. Never down: infinite `meanUp` gives 1. Textbook formula. */
export const availability = (meanUp: number, meanRepair: number): number => 1 / (1 + meanRepair / meanUp)

/** Mean of a time, s, and its squared coefficient of variation. */
export interface Spread {
  mean: number
  scv: number
}

/**
 * Effective process time with breakdowns that count running time and fall exponentially: mean = t0 / A,
 * scv = c0^2 + (1 + cr^2) A (1 - A) mr / t0. Hopp & Spearman, Factory Physics, ch. 8.
 */
export function afterBreakdowns(time: Spread, meanUp: number, repair: Spread): Spread {
  const up = availability(meanUp, repair.mean)
  return {
    mean: time.mean / up,
    scv: time.scv + ((1 + repair.scv) * up * (1 - up) * repair.mean) / time.mean,
  }
}

/**
 * Effective process time with a setting after each case with chance 1 / `casesPerSetting`: mean = t0 + ts / N,
 * variance = s0^2 + ss^2 / N + (N - 1) ts^2 / N^2. Hopp & Spearman, Factory Physics, ch. 8.
 */
export function afterSettings(time: Spread, casesPerSetting: number, setting: Spread): Spread {
  const mean = time.mean + setting.mean / casesPerSetting
  const square = setting.mean * setting.mean
  const variance =
    time.scv * time.mean * time.mean +
    (setting.scv * square) / casesPerSetting +
    ((casesPerSetting - 1) * square) / (casesPerSetting * casesPerSetting)
  return { mean, scv: variance / (mean * mean) }
}
