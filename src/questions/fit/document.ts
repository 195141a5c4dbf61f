/** The result document of `command: fit`: what was read of a record, what it says of each input, and how it reads in a scenario; SI. */
import type { Made } from '../../answers/made.js'
import type { Warned } from '../../answers/warning.js'
import type { Amount } from '../../catalogue/figure.js'
import type { FileRead } from '../../record/read-record.js'
import type { Account } from '../../record/record.js'

/** A number with the interval in which it lies with the confidence of the fit; an end that is not known is null. */
export interface Known {
  value: number
  low: number | null
  high: number | null
}

/** A family of laws as it fits the times of an input. */
export interface FamilyResult {
  family: 'exponential' | 'weibull' | 'gamma' | 'lognormal' | 'mixture'
  /** In the words of the format, such as `shape` or `cv`. */
  parameters: ({ name: string; unit: string } & Known)[]
  /** Mean of the law, s. */
  mean: Known
  logLikelihood: number
  aic: number
  bic: number
  /** Largest gap between the law and the record, and how often a record of that law shows as large a one; null where it was not worked out. */
  kolmogorovSmirnov: { statistic: number; p: number } | null
  andersonDarling: { statistic: number; p: number } | null
  /** Part of the mean by which the quantiles of law and record lie apart at most. */
  quantileGap: number | null
}

export const testNames = [
  'trend-laplace',
  'trend-mil-hdbk-189',
  'trend-lengths',
  'hour-of-day',
  'counts-a-shift',
  'ljung-box',
  'runs',
  'alike',
] as const

/** A test of what a fit takes for granted. */
export interface TestResult {
  test: (typeof testNames)[number]
  /** What it asks, in words. */
  asks: string
  statistic: number
  p: number
  /** After Holm, over all tests of the record. */
  adjustedP: number
  /** Shown, whatever else was tested: what was taken for granted does not hold. */
  isShown: boolean
}

export const remarkCodes = [
  'few',
  'none-seen',
  'nothing-fits',
  'not-told-apart',
  'mean-moved',
  'trend',
  'clustered',
  'hours-differ',
  'not-alike',
  'walk-within',
  'unseen-short',
  'longest-seen',
  'left-out',
  'no-exposure',
  'worked-share',
  'no-source',
  'mean-seen',
] as const

/** What a reader must know of an input before it is used. */
export interface Remark {
  code: (typeof remarkCodes)[number]
  text: string
}

/** A point of a picture. */
export type At = readonly [x: number, y: number]

/** What the record says of one input of a scenario. */
export interface FittedInput {
  /** Such as `line.sealer.jams.clear`. */
  path: string
  words: string
  what: 'chance' | 'times' | 'time-to' | 'time-between' | 'mix'
  /** How many were seen whole, and how many were cut off. */
  events: number
  cutOff: number
  exposure: Amount | null
  /** Text of the value as a scenario has it; null where none can be said. */
  value: string | null
  /** Further values that go with it, by their path. */
  also: Record<string, string>
  restsOn: 'counted' | 'fitted' | 'observed' | 'nothing'
  /** Of what is counted: events a unit of exposure, with exact limits. */
  rate: (Known & { unit: string }) | null
  /** Of what has a law: its mean, s, within the intervals of the laws that the record does not tell from it. */
  mean: Known | null
  /** Of times: mean of those that were seen whole with its standard error, s. */
  seen: { mean: number; standardError: number | null } | null
  chosen: FamilyResult['family'] | null
  /** Families that the record does not tell apart from the chosen one. */
  alike: FamilyResult['family'][]
  families: FamilyResult[]
  tests: TestResult[]
  remarks: Remark[]
  pictures: {
    /** Quantile of the law against that of the record, s. */
    quantiles: At[]
    /** Where bars begin and end, s, their part of the record a second; with the density of each family at points. */
    histogram: {
      bars: { from: number; to: number; share: number }[]
      densities: { family: FamilyResult['family']; at: At[] }[]
    } | null
    /** Share that lasts longer, of the record (Kaplan and Meier) and of the law. */
    survival: { record: At[]; law: At[] } | null
    /** Events against exposure, in its unit. */
    trend: At[]
    /** Events of each hour of the day, and those that would be expected were all alike. */
    hours: { hour: number; events: number; exposure: number; low: number; high: number }[]
  }
}

export interface FitResult extends Warned {
  format: 'tapeshift-result/1'
  command: 'fit'
  made: Omit<Made, 'scenario' | 'plain'> & { record: { title: string; sha256: string } }
  display: 'metric'
  record: {
    files: FileRead[]
    zone: string | null
    roundedTo: Amount
    seenFrom: Amount
    shifts: number
    days: { first: string; last: string; count: number }
    /** Days that no fit used. */
    heldOut: string[]
    cases: number | null
    /** Minutes of the shifts by what the line did, as far as the record says. */
    time: { what: string; time: Amount; stops: number }[]
  }
  account: Account[]
  inputs: FittedInput[]
  notes: string[]
}
