/** Straight lines through the designs of a plan: what each factor does, with what draws of the inputs add. */
import { addedByInputs, isOffNothing } from '../../answers/difference-with-inputs.js'
import { leastDraws } from '../../scenario/limits.js'
import { bare } from '../../statistics/estimate.js'
import { type Layout, layoutOf, rowOf } from '../../statistics/layout.js'
import { regression, type Slope } from '../../statistics/regression.js'
import {
  drawsAt,
  type Factor,
  type PlanOf,
  type SampledDesign,
  type SweepMeasure,
  type SweepPoint,
} from './document.js'

/**
 * Straight lines through the points of a plan, each factor from 0 at its lowest to 1 at its highest value; `designs`: the same with what
 * is kept of their shifts.
 */
export function planOf(
  points: readonly SweepPoint[],
  designs: readonly SampledDesign[],
  factors: readonly Factor[],
  measures: readonly SweepMeasure[],
  confidence: number,
): Record<string, PlanOf | null> {
  const rows = points.map(({ at }) =>
    factors.map(({ values: [low, high] }, index) => (at[index]! - low!) / (high! - low!)),
  )
  const size = factors.length * measures.length
  return Object.fromEntries(
    measures.map((measure): [string, PlanOf | null] => {
      const { name } = measure
      const y = points.map(({ measures: figures }) => figures[name]?.mean ?? Number.NaN)
      const fitted = regression(rows, y, confidence, size)
      if (fitted === null) return [name, null]
      const { intercept, slopes, explained, residual, degreesOfFreedom } = fitted
      const layouts = layoutsOfSlopes(rows, designs, measure)
      const level = 1 - (1 - confidence) / size
      const effects = slopes.map((slope, index) => ({
        path: factors[index]!.path,
        ...withInputs(slope, degreesOfFreedom, layouts[index] ?? null, level),
      }))
      return [
        name,
        {
          ...{ intercept, effects },
          explained: Number.isFinite(explained) ? explained : null,
          ...{ residual, degreesOfFreedom, family: size },
        },
      ]
    }),
  )
}

/** A slope with what its draws add; where these turn it round it is not shown. */
function withInputs(
  slope: Slope,
  degreesOfFreedom: number,
  layout: Layout | null,
  level: number,
): Omit<PlanOf['effects'][number], 'path'> {
  const { mean, low, high } = slope
  const estimate = { ...bare(mean, degreesOfFreedom + 1), low, high }
  // a straight line knows no ends: of shares too it may go beyond all and none
  const { inputs } = addedByInputs(estimate, layout, '', level)
  return inputs ? { ...slope, inputs, isShown: slope.isShown && isOffNothing(inputs) } : slope
}

/** Of each factor its slope shift by shift in each draw: slopes add up what the points come to, so that these have their layout too. */
function layoutsOfSlopes(
  rows: readonly (readonly number[])[],
  designs: readonly SampledDesign[],
  measure: SweepMeasure,
): Layout[] {
  const drawn = designs.map(({ draws }) => drawsAt(draws, measure))
  const count = Math.min(...drawn.map(({ length }) => length))
  const ofDraws = Array.from({ length: count }, (_, draw) => {
    const figures = drawn.map((each) => {
      const sample = each[draw]
      return sample ? rowOf({ ...sample, kind: 'mean', isTimeOfEvents: false }) : null
    })
    if (figures.some((row) => row === null)) return null
    return figures[0]!.map(
      (_shift, shift) =>
        regression(
          rows,
          figures.map((row) => row![shift]!),
          0.95,
        )?.slopes ?? null,
    )
  })
  const said = ofDraws.flatMap((draw) =>
    draw?.every((slopes) => slopes !== null) ? [draw as Slope[][]] : [],
  )
  if (said.length < leastDraws) return []
  return rows[0]!.map((_, factor) => layoutOf(said.map((draw) => draw.map((slopes) => slopes[factor]!.mean))))
}
