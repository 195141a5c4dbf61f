/** Times as a record shows them: exact, rounded, cut off, or in the log only from some length on. All in s. */

/** What is known of one time. */
export type Seen =
  /** Its length. */
  | { at: number }
  /** It was longer: right-censored. */
  | { over: number }
  /** It lies between these; the upper end may be Infinity, the lower one 0. */
  | { between: readonly [low: number, high: number] }
  /**
   * The difference of two readings of a clock that shows whole `grain`s: where the time began within a grain is even chance, so
   * the chance of reading d when it is x is 1 - |x - d| / grain, 0 beyond one grain.
   */
  | { clocked: number; grain: number }

/** Times of one sort. */
export interface Sample {
  /** What is known of each; alike ones may stand once. */
  seen: readonly Seen[]
  /** How often each of `seen` stands in the record, whole, at least 1. */
  counts: readonly number[]
  /** Shorter ones are not in the record (left-truncation); 0: all are. */
  from: number
}
