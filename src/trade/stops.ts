/** Stops by hand: what jams, roll changes, breakdowns and planned stops leave of a rate. */

/** A kind of stop: how many a case brings (0.0005 for one in 2000 cases), and the time of each, waiting for hands included, s. */
export interface Stop {
  perCase: number
  time: number
}

/**
 * Cases a second with stops: one over the time that a case takes with its part of them, s, which is `cycle` and the time lost, frequency x time
 * summed over the kinds of stop. No stop overlaps another and the machine is never starved or blocked. Hopp & Spearman, Factory Physics,
 * ch. 8 (effective process time).
 */
export const effectiveRate = (cycle: number, stops: readonly Stop[]): number =>
  1 / (cycle + stops.reduce((lost, { perCase, time }) => lost + perCase * time, 0))

/** Breakdowns a case that are counted in running time: the case's share of the mean time to failure, s. Derived. */
export const breakdownsPerCase = (cycle: number, meanUp: number): number => cycle / meanUp

/** Roll changes a case: each head empties its own roll. Infinite where a roll gives no strip. Derived. */
export const rollChangesPerCase = (heads: number, casesPerRoll: number): number => heads / casesPerRoll

/** Share of time that a machine is up: mean time up over that and the mean repair, s. Never down: infinite `meanUp` gives 1. Textbook formula. */
export const availability = (meanUp: number, meanRepair: number): number => 1 / (1 + meanRepair / meanUp)
