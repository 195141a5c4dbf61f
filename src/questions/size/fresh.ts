/**
 * The design that a search ends with, judged on shifts that the search did not see. Those that it saw ended because they looked good:
 * of 95 % intervals over them 88 % covered the truth (tests/slow/size-coverage). Shifts of other numbers have other random numbers, so
 * whatever the search went by, an interval over them covers as often as it says, if their number was fixed before.
 */
import type { Tried } from './search.js'

/** Fewest shifts that make a figure useful: of 200 a share of 90 % is known to about 4 points. */
const fewest = 200

/**
 * The first and the number of the fresh shifts of a design after a search that went up to shift `most` of any: as many as the search
 * took of it, and 200 at least, but never more than `most`. Both are fixed before the first of them is simulated.
 */
export const freshShifts = (
  { shifts }: Pick<Tried, 'shifts'>,
  most: number,
): { first: number; count: number } => ({
  first: most + 1,
  count: Math.min(most, Math.max(fewest, shifts)),
})
