/** The instants next to one: numbers are a little apart, and nothing happens between two neighbours. */

/** Half of what 1 and the next number are apart. */
const half = Number.EPSILON / 2

/** The number after a positive one. */
export function justAfter(instant: number): number {
  const after = instant + instant * half
  return after > instant ? after : instant * (1 + Number.EPSILON)
}

/** The number before a positive one. */
export const justBefore = (instant: number): number => instant - instant * half
