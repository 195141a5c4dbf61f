/** Fits of a family to times by maximum likelihood, with intervals. */
import type { Family, FittedLaw } from './law.js'
import type { Sample } from './sample.js'

/** A parameter as it is named in `FittedLaw`. What nothing bounds ends at 0 or Infinity. */
export interface Parameter {
  name: string
  value: number
  /** Standard error from the observed information; Infinity where it says nothing. */
  se: number
  /** Ends of the interval at the confidence that was asked for. */
  low: number
  high: number
}

/** A law that is fitted. */
export interface Fit {
  law: FittedLaw
  /** Times in the record. */
  n: number
  /** Those of them that were seen to end: not right-censored. */
  events: number
  logLikelihood: number
  parameters: readonly Parameter[]
  /** Covariances of the estimates of `parameters`, in their order. */
  covariance: readonly (readonly number[])[]
  /** Mean of the law, s, with its interval. */
  mean: { value: number; low: number; high: number }
  aic: number
  bic: number
}

/**
 * Why a law cannot be fitted. `no-events`: none was seen to end, there is an upper limit at most. `few-values`: fewer than three different
 * times, which say nothing of a spread. `zero`: a time of 0 s, which the family does not know. `impossible`: a time that cannot
 * be in the record, below 0 or shorter than what it shows. `no-maximum`: the likelihood grows without end towards the edge of the family.
 */
export type Why = 'no-events' | 'few-values' | 'zero' | 'impossible' | 'no-maximum'

/** No fit. */
export interface Unfitted {
  why: Why
}

/** The law of `family` that makes `sample` likeliest, with intervals at `confidence`, on (0, 1). */
export function fit(_sample: Sample, _family: Family, _confidence = 0.95): Fit | Unfitted {
  return { why: 'no-events' }
}
