/** Conveyors by hand: the step of speed that draws cases apart, and rollers and zones under a case. */

/** Least ratio of speeds, next over first, that draws cases back to back apart by `gap`, m. Derived. */
export const speedRatioFor = (length: number, gap: number): number => (length + gap) / length

/** Belts of a sealer over the speed at which cases arrive, at least; 1.5 is usual too, and never less than 1. From memory, low confidence. */
export const infeedSpeedRatio = 1.2

/** Widest roller pitch, m, that keeps three rollers under the shortest case; soft bottoms ask for four. Common practice, no source. */
export const widestRollerPitch = (shortest: number): number => shortest / 3

/** Least zone, m: the longest case and a margin of 75 mm, the least of 75 to 150 mm. From memory, low confidence. */
export const leastZone = (longest: number): number => longest + 0.075
