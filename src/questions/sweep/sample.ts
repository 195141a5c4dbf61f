/** What is kept of the shifts of a swept design: the numbers of the measures that were asked for, and what these come to. */

import { observationsOf, type StudyMeasure, tooFew } from '../../answers/figures.js'
import type { ShiftResult } from '../../line/line.js'
import { type Estimate, estimateOf, type Few, type Observations, ofFew } from '../../statistics/estimate.js'
import { linearised } from '../../statistics/paired.js'

/** A measure over shifts, in their order. A shift that says nothing has NaN. */
export interface Sample extends Observations {
  values: number[]
  overs: number[] | null
  /** What the figure rests on, where that is too little. */
  few?: Few | null
}

/** The numbers of a measure; null of a quantile over shifts, of which no difference is known. */
export function sampleOf(
  measure: StudyMeasure,
  shifts: readonly ShiftResult[],
  exposure: number,
): Sample | null {
  const observed = observationsOf(measure, shifts)
  return observed && { ...observed, exposure, few: tooFew(measure, shifts, exposure) }
}

/** The figure with its interval: plain, so that the difference of two figures is that of their pairs. */
export function sampleEstimate(sample: Sample, confidence: number): Estimate {
  const found = estimateOf(sample, confidence)
  // of a count the limits say it themselves
  return !sample.few || sample.kind === 'count' ? found : ofFew(found, sample.few)
}

/** Numbers a shift whose mean is the figure: of a ratio its linearised shifts. */
export function perShift({ values, overs }: Sample): number[] {
  return overs === null ? values : linearised(values.map((value, shift) => [value, overs[shift]!]))
}
