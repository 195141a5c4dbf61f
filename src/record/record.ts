/** A plant's record once it is read and cleaned: shifts that were run, stops, cases, and what was done to them. */

/** A span of time, s since 1970 in UTC. */
export interface Span {
  begins: number
  ends: number
}

/** A shift that was run. */
export interface LoggedShift extends Span {
  /** Local date on which it begins, `2026-01-31`. */
  day: string
  /** Good cases; null where they were not counted. */
  good: number | null
  /** In order, apart from one another, within the shift. */
  breaks: readonly Span[]
  /**
   * Time in which a piece stood that counts for no stop, in order: what remains of a stop after a break or the end of a shift, and
   * stops that were left out. It is no running time.
   */
  lost: readonly Span[]
  /** Kept back by `--hold-out`: for validation, never for a fit. */
  isHeldOut: boolean
  /** Row of its file, the header being 1. */
  row: number
}

/** What a reason of the log is in a scenario: a path such as `line.sealer.jams`, or one of these words. */
export type Meaning = string
export const meaningsWithoutPath = ['break', 'starved', 'blocked', 'other'] as const

/** A stop of the log. */
export interface LoggedStop extends Span {
  /** The plant's own words. */
  piece: string
  reason: string
  /** Null: nothing of the record says what its reason means. */
  means: Meaning | null
  /** Number of its shift. */
  shift: number
  /** It ran into a break or the end of the shift: it was longer than is seen. */
  isCutOff: boolean
  /** How long it could have been seen: until the next break or the end of the shift, s. */
  limit: number
  row: number
}

/**
 * What of a stop counts for none, though the piece stood: the rest of one after a break or the end of its shift, and one that began in a break, outside
 * of the shifts, or is shorter than is seen.
 */
export interface LoggedRest extends Span {
  means: Meaning | null
  /** Number of the shift in which it lies, breaks included. */
  shift: number
}

/** Cases as a scanner or counter saw them, in order. */
export interface LoggedCases {
  /** s since 1970 in UTC. */
  times: Float64Array
  /** Number of the shift of each. */
  shifts: Uint16Array
  /** Kind of each by its place in `names`; null where none was written. */
  kinds: Uint16Array | null
  names: readonly string[]
  /** Grain of their clock, s; 0: finer than a second. */
  roundedTo: number
  /** Entry of `arrivals` in the scenario that they are of; null where the record names none. */
  source: string | null
}

/** One thing that was found while reading, and what was done about it. */
export interface Account {
  /** A closed word for programs, such as `overlap` or `doubled`. */
  code: string
  /** Whether rows stayed as they are, were changed, were left out, or the record cannot be used as it is. */
  did: 'noted' | 'changed' | 'left-out' | 'refused'
  file: string
  /** What was found and what was done, in a sentence. */
  words: string
  /** Rows that it is about, the first few; the header being 1. */
  rows: readonly number[]
  /** How many rows in all. */
  count: number
  /** Minutes and seconds that it moves, s; 0 where none. */
  seconds: number
  /** The nearest mend; empty where nothing has to be done. */
  fix: string
}

/** A record after cleaning. */
export interface CleanRecord {
  title: string
  /** IANA name of the time zone; null: times stand as they are. */
  zone: string | null
  /** Grain of the clock of the stops, s; 0: finer than a second. */
  roundedTo: number
  /** How long a stop was: the difference of two readings of that clock, or timed as such and then rounded to `roundedTo`. */
  lengths: 'clocked' | 'timed'
  /** Shorter stops are not in the log, s; 0: all are. */
  seenFrom: number
  /** In order, apart from one another. */
  shifts: readonly LoggedShift[]
  /** What `means` names, in its order, whether it occurs or not. */
  meanings: readonly Meaning[]
  /** Breaks are not among them: they are in the shifts. In order of their beginnings. */
  stops: readonly LoggedStop[]
  rests: readonly LoggedRest[]
  cases: LoggedCases | null
  account: readonly Account[]
}
