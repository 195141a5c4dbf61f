/** The result document of a sweep: the points that were tried, and what they say as a curve, a grid, one factor at a time or a plan. */

import type { DifferenceFigure, Interval } from '../../answers/difference-figure.js'
import { figureOf } from '../../answers/line-result.js'
import type { StudyDocument } from '../../answers/made.js'
import { type DrawsAsked, withLayout } from '../../answers/with-inputs.js'
import type { Figure } from '../../catalogue/figure.js'
import type { MeasureName } from '../../catalogue/measures.js'
import type { MeasureKey } from '../../catalogue/of-line.js'
import type { ContourLine } from '../../statistics/contour.js'
import { layoutOfDraws } from '../../statistics/layout.js'
import type { Slope } from '../../statistics/regression.js'
import type { Crossing } from './curve.js'
import type { LeftOut } from './inputs.js'
import { type Sample, sampleEstimate } from './sample.js'

/** Measures of which more is said than of others: the share of shifts that reach the target, the cost of 1000 good cases. */
export const heldName: MeasureKey = 'target-held'
export const costName: MeasureKey = 'cost-per-1000'

/** A factor as it was written; `si` is the same in SI. `base` is what the scenario has, in `unit`; null where that is no such number. */
export interface Factor {
  path: string
  unit: string
  values: number[]
  base: number | null
  si: { unit: string; values: number[] }
  /** Of a conveyor's length: minutes that its free places last at the target, by hand, for each value. */
  minutes: number[] | null
}

/** A measure that was asked for. */
export interface SweepMeasure {
  name: MeasureName
  label: string
  unit: string
}

/** A design that was tried: its changes, where it stands along the factors, and its figures, each with an interval of its own. */
export interface SweepPoint {
  set: Record<string, unknown>
  at: number[]
  measures: Record<string, Figure>
  /** Codes of what `check` calls an error of it; absent where there are none, and where so many points were not checked. */
  errors?: string[]
}

/** A comparison along a curve: of the points at these places. */
interface CurveDifference {
  from: number
  to: number
  difference: DifferenceFigure
}

/** A change of slope at a point: in the measure's unit for one of the factor's. */
interface SlopeChange extends Interval, Pick<DifferenceFigure, 'inputs'> {
  place: number
  unit: string
  isShown: boolean
}

/** One measure along a curve. Places count the points from 0. */
export interface CurveOf {
  steps: CurveDifference[]
  /** From each point but the last two to the last. */
  onward: CurveDifference[]
  changes: SlopeChange[]
  /** Place of the largest change of slope that is shown. */
  knee: number | null
  /** Place from which on nothing more is shown. */
  enough: number | null
  /** Where levels are crossed. */
  crossings: Crossing[]
}

/** What the cost says of a curve. */
export interface CostOf {
  /** Place of the least cost of 1000 cases. */
  least: number
  /** Places whose cost is not shown to be above that of the least, wherever that may lie. */
  notDearer: number[]
  /** Cost of the scenario as it stands, and where the curve crosses that. */
  base: number | null
  breakEven: CurveOf['crossings']
  /** Of each point less the scenario as it stands; judged with all others of the curve. */
  differences: DifferenceFigure[]
}

/** What pencil and paper say where the speed of a sealer's belts is varied: cases/s and m/s. */
export interface SpeedByHand {
  machine: string
  ceiling: number | null
  littleGain: number | null
}

export interface CurveResult {
  measures: Record<string, CurveOf>
  /** Null where nothing is priced, and where the cost leaves out a price in which the points differ. */
  cost: CostOf | null
  byHand: SpeedByHand | null
}

/** Lines at which a measure has a level, over the first factor (x) and the second (y), in their units. */
export interface GridOf {
  levels: number[]
  lines: { level: number; points: ContourLine }[]
}

/** An input that was moved alone. */
export interface EachInput {
  path: string
  base: string
  low: string | null
  high: string | null
  /** Less the scenario as it stands, by measure; null where that end could not be simulated. */
  differences: Record<string, { low: DifferenceFigure | null; high: DifferenceFigure | null }>
}

export interface EachResult {
  inputs: EachInput[]
  /** Paths by the size of their larger difference, by measure. */
  order: Record<string, string[]>
}

/** A straight line through a measure: what each factor does from its lowest to its highest value. */
export interface PlanOf {
  intercept: number
  effects: (Slope & Pick<DifferenceFigure, 'inputs'> & { path: string })[]
  explained: number | null
  residual: number
  degreesOfFreedom: number
  /** How many effects low and high hold for together. */
  family: number
}

export type SweepKind = 'curve' | 'grid' | 'each' | 'plan'

export interface SweepResult extends StudyDocument<'sweep'> {
  kind: SweepKind
  target: number | null
  currency: string
  factors: Factor[]
  measures: SweepMeasure[]
  /** The scenario as it stands. */
  base: Record<string, Figure>
  points: SweepPoint[]
  curve: CurveResult | null
  /** By measure. */
  grid: Record<string, GridOf> | null
  each: EachResult | null
  /** By measure; null where no straight line could be fitted. */
  plan: Record<string, PlanOf | null> | null
  leftOut: LeftOut[]
  /** Draws of the inputs, the same for all points, and shifts of each. Not there where inputs are held fixed. */
  drawn?: DrawsAsked
}

/** A design with what is kept of its shifts, by measure. */
export interface SampledDesign {
  set: Record<string, unknown>
  at: number[]
  samples: Record<string, Sample>
  /** The same of each draw of its inputs; null of one that could not be simulated. */
  draws?: readonly (Record<string, Sample> | null)[] | undefined
}

/** Of a measure what the draws of a design have. */
export const drawsAt = (
  draws: SampledDesign['draws'],
  { name }: Pick<SweepMeasure, 'name'>,
): readonly (Sample | undefined)[] => (draws ?? []).map((each) => each?.[name])

/** A figure of the document from what was kept, with what the draws of its inputs add; without a sample nothing is known. */
function sampledFigure({ samples, draws }: SampledDesign, measure: SweepMeasure, confidence: number): Figure {
  const { name, label, unit } = measure
  const sample = samples[name]
  if (sample === undefined) return { mean: null, low: null, high: null, sd: null, n: 0, unit, label }
  const estimate = sampleEstimate(sample, confidence)
  const known = drawsAt(draws, measure).flatMap((each) => each ?? [])
  const isEnded = !Number.isNaN(estimate.low) && !Number.isNaN(estimate.high)
  const layout = known.length > 0 && isEnded ? layoutOfDraws(known) : null
  const whole = layout ? withLayout(estimate, layout, { ...known[0]!, unit }, confidence) : estimate
  return figureOf(whole, { unit, label })
}

/** The points of the document. */
export const pointsOf = (
  designs: readonly SampledDesign[],
  measures: readonly SweepMeasure[],
  confidence: number,
): SweepPoint[] =>
  designs.map((design) => ({
    set: design.set,
    at: design.at,
    measures: Object.fromEntries(
      measures.map((measure) => [measure.name, sampledFigure(design, measure, confidence)]),
    ),
  }))
