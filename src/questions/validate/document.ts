/** The result document of `command: validate`: days of the plant, what the model made of each, and whether the two are alike; SI. */
import type { Made } from '../../answers/made.js'
import type { Warned } from '../../answers/warning.js'
import type { Display } from '../../catalogue/printed-units.js'
import type { Verdict } from '../../statistics/equivalence.js'
import type { Driver } from './asked.js'
import type { Stopped } from './causes.js'
import type { DrivenBy } from './driven.js'

/** A number with its interval; an end that is not known is null. */
export interface Known {
  mean: number
  low: number | null
  high: number | null
}

/** A day of the plant among its runs. */
export interface DayResult {
  day: string
  shifts: number
  drivenBy: DrivenBy
  /** Good cases. */
  plant: number
  /** Of the runs: mean, median, and the ends between which the day should lie. */
  model: { mean: number; median: number; low: number; high: number }
  /** Runs with fewer good cases than the plant had, ties broken by lot. */
  below: number
  isInside: boolean
}

/** Model less plant of something that is counted each day. */
export interface GapResult extends Known {
  /** Difference in standard errors of its own; null where it cannot be said. */
  standardised: number | null
  /** Least risk at which it would be shown among all gaps of the table (Bonferroni), as its interval says; null where it cannot be said. */
  p: number | null
  isShown: boolean
}

/** Stops of a cause, a day. */
export interface CauseResult {
  /** Null: what the record names no cause for, and what else stops the model; a log need not hold all stops, so these are not compared. */
  path: string | null
  words: string
  /** The stops of the plant were put in, and none came by a law. */
  isPutIn: boolean
  plant: Stopped
  model: Stopped
  stops: GapResult
  seconds: GapResult
}

/** What differs most of what goes into the output, in the direction in which the output differs where there is such a one. */
export interface Explanation {
  path: string
  words: string
  what: 'stops' | 'seconds'
  plant: number
  model: number
  isShown: boolean
  /** Good cases a day that its minutes are worth at the pace of the plant; positive: more by the model. */
  worth: number
  /** It goes the way of the gap. */
  isAlong: boolean
}

/** Good cases of plant and model, a day. */
export interface GoodResult {
  plant: number
  model: number
  /** Model less plant, cases a day, with the interval of the confidence of the study. */
  difference: Known & { t: number | null; degreesOfFreedom: number; p: number | null }
  /** The same without any law: days drawn anew. */
  bootstrap: { low: number; high: number } | null
  /** In parts of what the plant had, with the interval that decides. */
  share: Known
  p: number | null
  verdict: Verdict
}

/** Days that lie where their runs do. */
export interface RanksResult {
  low: number
  high: number
  share: number
  inside: number
  p: number
}

/** Of the plant's stops, a day. */
export interface OwnStopsResult {
  put: Stopped
  /** Those for which the record names no place in the line. */
  left: Stopped
  /** What the clock of the log leaves open of how long those were that were put in, one standard deviation, s. */
  open: number
}

/** The same days with the plant's own stops. */
export interface BesideResult {
  days: DayResult[]
  good: GoodResult
  ranks: RanksResult
}

export interface ValidateResult extends Warned {
  format: 'tapeshift-result/1'
  command: 'validate'
  made: Omit<Made, 'plain'> & { record: { title: string; sha256: string }; shiftsSha256: string }
  display: Display
  margin: number
  runs: number
  /** What of the plant was fed to the model: its arrivals where they were logged, its stops too, or each in turn. */
  drivenBy: Driver
  /** Null where none were put in. */
  ownStops: OwnStopsResult | null
  /** The days may have been used by a fit: this is no validation. */
  isCalibration: boolean
  /** How the days were chosen, in words. */
  chosen: string
  leftOut: { day: string; why: string }[]
  days: DayResult[]
  good: GoodResult
  ranks: RanksResult
  regression: {
    intercept: number
    slope: number
    f: number
    degreesOfFreedom: [number, number]
    p: number
  } | null
  /** The same days with the plant's own stops, where both were asked for. */
  beside: BesideResult | null
  causes: CauseResult[]
  explains: Explanation | null
  /** Reports for those who know the line: how many, and how many told apart show that the model can be told from the plant. */
  sheet: { count: number; right: number; p: number } | null
  notes: string[]
}
