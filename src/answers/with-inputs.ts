/** What draws of the inputs add to the figures of a study. */
import type { ShiftResult } from '../line/line.js'
import type { Scenario } from '../scenario/schema.js'
import { ofInputs } from '../statistics/both-kinds.js'
import type { Estimate, Observations } from '../statistics/estimate.js'
import { type Layout, layoutOfDraws, layoutOfQuantiles, scaleOf } from '../statistics/layout.js'
import { observationsOf, type StudyMeasure } from './figures.js'

/** How many draws, and how many shifts of each. */
export interface DrawsAsked {
  draws: number
  shifts: number
}

/** A draw with its shifts. */
export interface SimulatedDraw {
  inputs: readonly number[]
  /** The scenario as it was drawn. */
  scenario: Scenario
  shifts: readonly ShiftResult[]
}

/** Draws of a study: the shifts of each, and the paths of what was drawn. */
export interface Draws extends DrawsAsked {
  of: readonly SimulatedDraw[]
}

/** What the draws say of a measure, in the scale in which it is combined; null where too few of them say anything. */
export function layoutOfMeasure(measure: StudyMeasure, { of }: Draws): Layout | null {
  if (measure.kind === 'quantile')
    return layoutOfQuantiles(
      of.map(({ shifts }) => shifts.map(({ values }) => values[measure.index]!)),
      measure.below!,
    )
  return layoutOfDraws(of.map(({ shifts }) => observationsOf(measure, shifts) as Observations))
}

/** The estimate of a measure with what its inputs add; as it is where it has no interval, or the draws say nothing. */
export function withInputs(
  measure: StudyMeasure,
  estimate: Estimate,
  draws: Draws | null,
  confidence: number,
): Estimate {
  if (draws === null || Number.isNaN(estimate.low) || Number.isNaN(estimate.high)) return estimate
  const layout = layoutOfMeasure(measure, draws)
  if (layout === null) return estimate
  return withLayout(estimate, layout, measure, confidence)
}

/** An estimate with what its inputs add by their layout. */
export function withLayout(
  estimate: Estimate,
  layout: Layout,
  { kind, isTimeOfEvents, unit }: Pick<StudyMeasure, 'kind' | 'isTimeOfEvents'> & { unit: string },
  confidence: number,
): Estimate {
  // nothing that is counted, lasts or costs is below 0, and no share that stays below 1 may pass it
  const ends = [
    Math.min(0, estimate.low),
    unit === 'share' && estimate.high <= 1 ? 1 : Number.POSITIVE_INFINITY,
  ] as const
  const scale = kind === 'quantile' ? 'itself' : scaleOf({ kind, isTimeOfEvents: isTimeOfEvents === true })
  return { ...estimate, inputs: ofInputs(estimate, layout, confidence, { scale, ends }) }
}
