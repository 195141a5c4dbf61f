/** What a piece of equipment did in a spell in which nothing disturbed it: see `kinds/row`. */

/** Times, s. */
export interface Did {
  readonly waiting: number
  readonly blocked: number
  /** In another state than these two and working, which it books itself. */
  readonly other: number
  /** Running time that is left until it breaks down, less the times at work that have ended; and since when it works, if it does. */
  readonly left: number
  readonly worksSince: number
}
