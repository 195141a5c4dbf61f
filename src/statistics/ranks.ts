/** Where a day lies among simulated ones, and the interval that such a day lies in as often as is promised. */

/** Runs that lie below `value`; of those that equal it a part drawn by `uniform`, on (0, 1): whole numbers tie, and a tie is no half of a rank. */
export function runsBelow(value: number, runs: readonly number[], uniform: number): number {
  const below = runs.filter((run) => run < value).length
  const ties = runs.filter((run) => run === value).length
  return below + Math.floor(uniform * (ties + 1))
}

/** Two places among sorted runs, from 1, and the share of days that lies between the runs there. */
export interface Between {
  low: number
  high: number
  share: number
}

/** A product that is a whole number but for its rounding. */
const hair = 1e-9

/** Fewest runs of which two enclose the share. */
export const fewestRuns = (share: number): number => Math.ceil(2 / (1 - share) - 1 - hair)

/**
 * A day that is one more of the same lies between runs r and R + 1 - r with chance (R + 1 - 2 r) / (R + 1), exactly: all R + 1 places are
 * alike. r is the largest with which that is at least `share`. Follows from order statistics of a sample; no source needed.
 */
export function betweenRuns(runs: number, share: number): Between {
  const low = Math.floor(((1 - share) / 2) * (runs + 1) + hair)
  return { low, high: runs + 1 - low, share: (runs + 1 - 2 * low) / (runs + 1) }
}

/** Does a day with so many runs below it lie there? */
export const liesBetween = (below: number, { low, high }: Between): boolean => below >= low && below < high
