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

/** Times that come one by one as a sample: alike ones stand once, with their number. */
export function sampleFrom(all: Iterable<Seen>, from: number): Sample {
  const rows = new Map<string | number, { seen: Seen; count: number }>()
  for (const seen of all) {
    const key = keyOf(seen)
    const known = rows.get(key)
    if (known) known.count++
    else rows.set(key, { seen, count: 1 })
  }
  const alike = [...rows.values()]
  return { seen: alike.map(({ seen }) => seen), counts: alike.map(({ count }) => count), from }
}

/** The same for what is alike, another for what is not; a number where that will do. */
const keyOf = (seen: Seen): string | number =>
  'at' in seen ? seen.at : 'over' in seen ? -1 - seen.over : JSON.stringify(seen)

/** What a time is read as, the middle of an interval; null where it was cut off. */
export function readAs(seen: Seen): number | null {
  if ('over' in seen) return null
  if ('at' in seen) return seen.at
  if ('clocked' in seen) return seen.clocked
  const middle = (seen.between[0] + seen.between[1]) / 2
  return middle === Infinity ? null : middle
}
