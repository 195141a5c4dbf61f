/** Headway: how close cases may follow through a taping head, and the rate that this allows. */

/** Timing of one head's cutting arm: belt travel that wipes the trailing leg, m; time to swing back and cover the blade, s. */
export interface CutTiming {
  wipeTravel: number
  reset: number
}

/**
 * Gap that must follow a case at belt speed `speed`, m: the arm must have wiped the trailing leg and swung back
 * before the next leading face arrives. Common practice, no source; derived from the arm's motion.
 */
export function gapNeeded(minimumGap: number, cuts: readonly CutTiming[], speed: number): number {
  return cuts.reduce((gap, cut) => Math.max(gap, cut.wipeTravel + speed * cut.reset), minimumGap)
}

/** Cases a second that belts of `speed` m/s can pass, one case of `length` after the other with `gap`. Derived. */
export const steadyRate = (speed: number, length: number, gap: number): number => speed / (length + gap)
