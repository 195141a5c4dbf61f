/** What a record says of one input of a scenario, before any law is fitted: counts with what they were counted in, and times. */
import type { Sample } from '../statistics/fitting/sample.js'

/** In what a count was counted; null where the record does not say. */
export interface Exposure {
  value: number
  unit: 'cases' | 's' | 'strips'
}

/** One logged stop, as the input sees it. In the order of their beginnings. */
export interface Occurrence {
  /** When it began, s since 1970 in UTC. */
  at: number
  /**
   * What was read of it, s: of `times` how long it lasted, or was seen to last where it was cut off; of `time-to` the running time
   * from the one before; of `chance` its length.
   */
  value: number
  isCutOff: boolean
  /** The plant's words for the piece. */
  piece: string
  /** Number of its shift in the record. */
  shift: number
  /** Local hour of the day in which it began, 0 to 23. */
  hour: number
  /** Exposure of the fitted shifts until it began, in the unit of the exposure; null where that is not known, and of `times`. */
  exposureBefore: number | null
}

interface OfAnyInput {
  /** The value of a scenario that this is about, `line.sealer.jams.chance`. */
  path: string
  /** What it is, in words: `jams of line.sealer`. */
  words: string
  /** How many stops, cases or gaps it rests on, as logged. Of a count: those that `exposure` saw. */
  count: number
  /** What has to be known to read it rightly: sentences for the report, with figures; none where all is plain. */
  notes: readonly string[]
}

/** Where several stops make one input. */
interface OfStops extends OfAnyInput {
  occurrences: readonly Occurrence[]
  /** Shorter ones are not in the log, s; 0: all are. A count is then of those alone: divide by the share of the law above it. */
  seenFrom: number
  /** Times that the log calls a stop hold the walk of whoever puts it right, which a scenario counts apart. */
  holdsWalk: boolean
}

/** Where exposure is known, it is that of the fitted shifts. */
interface Exposed extends OfStops {
  exposure: Exposure | null
  /** The same by local hour of the day, 24 of them: cases spread over the running time of their shift; null as `exposure`. */
  exposureByHour: readonly number[] | null
  /** The same by the plant's words for the piece; null where nobody knows how it is shared out. */
  exposureByPiece: ReadonlyMap<string, number> | null
}

/** `count` events in `exposure` cases or strips: a chance for each. Zero events are one too. */
export interface LoggedChance extends Exposed {
  what: 'chance'
}

/** Running time from one repair to the next stop, and what it was counted in. */
export interface LoggedTimeTo extends Exposed {
  what: 'time-to'
  sample: Sample
}

/** How long stops last. */
export interface LoggedTimes extends OfStops {
  what: 'times'
  sample: Sample
}

/** Time from one case to the next. */
export interface LoggedTimeBetween extends OfAnyInput {
  what: 'time-between'
  sample: Sample
  /** Those that were seen whole, in order, s; as shown, however coarse the clock. */
  gaps: Float64Array
  /** Shift in which each lies. */
  shifts: Uint16Array
  /** Whole gaps by the local hour in which they begin, and the time that these and those that were cut off took, s. */
  countByHour: readonly number[]
  secondsByHour: readonly number[]
  /** Gaps that began during a logged stop, a break or lost time: left out. */
  leftOut: number
}

/** How the cases are shared out among the kinds. */
export interface LoggedMix extends OfAnyInput {
  what: 'mix'
  kinds: readonly { name: string; count: number }[]
}

export type LoggedInput = LoggedChance | LoggedTimeTo | LoggedTimes | LoggedTimeBetween | LoggedMix

/** What a scenario says that a record does not. */
export interface Facts {
  /** Number of taping heads by the name of the sealer: a tape break is counted in strips. */
  heads?: ReadonlyMap<string, number>
  /** The one entry of `arrivals`. */
  source?: string
}

/** The notes that there are. */
export const chosen = (notes: readonly (string | false)[]): string[] => notes.filter((note) => note !== false)
