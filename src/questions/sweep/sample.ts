/** What is kept of the shifts of a swept design: the numbers of the measures that were asked for, and what these come to. */

import { type StudyMeasure, tooFew } from '../../answers/figures.js'
import type { ShiftResult } from '../../line/line.js'
import { type Estimate, estimateOf, type Few, type Observations, ofFew } from '../../statistics/estimate.js'
import {
  linearised,
  type PairedDifference,
  pairedDifference,
  pairedRatioDifference,
  pairedShareDifference,
} from '../../statistics/paired.js'

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
  const { kind, index } = measure
  if (kind === 'quantile') return null
  const column = (place: number) => shifts.map(({ values }) => values[place]!)
  const overs = kind === 'ratio' ? column(index + 1) : null
  return { kind, values: column(index), overs, exposure, few: tooFew(measure, shifts, exposure) }
}

/** The figure with its interval: plain, so that the difference of two figures is that of their pairs. */
export function sampleEstimate(sample: Sample, confidence: number): Estimate {
  const found = estimateOf(sample, confidence)
  // of a count the limits say it themselves
  return !sample.few || sample.kind === 'count' ? found : ofFew(found, sample.few)
}

/** One design less another over the same shifts, with its own interval at a confidence. */
export function sampleDifference(of: Sample, against: Sample, confidence: number): PairedDifference {
  if (of.kind === 'share') return pairedShareDifference(against.values, of.values, confidence)
  if (of.overs === null || against.overs === null)
    return pairedDifference(against.values, of.values, confidence)
  return pairedRatioDifference(against.values, against.overs, of.values, of.overs, confidence)
}

/** Numbers a shift whose mean is the figure: of a ratio its linearised shifts. */
export function perShift({ values, overs }: Sample): number[] {
  return overs === null ? values : linearised(values.map((value, shift) => [value, overs[shift]!]))
}
