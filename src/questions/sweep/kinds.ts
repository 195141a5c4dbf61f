/** What the points of a sweep say: along a curve, over a grid, one factor at a time, and of a plan. */

import { type DifferenceFigure, differenceOf, judgedFigures } from '../../answers/difference-figure.js'
import { addedByInputs, layoutOfDifference } from '../../answers/difference-with-inputs.js'
import { orNull } from '../../answers/line-result.js'
import { contour } from '../../statistics/contour.js'
import { type CurveComparison, crossings, curveComparisons, enoughOf, kneeOf } from './curve.js'
import {
  type CostOf,
  type CurveOf,
  type CurveResult,
  costName,
  drawsAt,
  type EachInput,
  type EachResult,
  type Factor,
  type GridOf,
  heldName,
  type SampledDesign,
  type SweepMeasure,
  type SweepPoint,
} from './document.js'
import { type Sample, sampleEstimate } from './sample.js'

/** Shares of the shifts at which a target is looked at. */
export const heldLevels = [0.9, 0.95, 0.99]

/** A design less another by a measure; null where one of them does not have it. */
function comparisonOf(of: SampledDesign | null, against: SampledDesign, measure: SweepMeasure) {
  const [sample, other] = [of?.samples[measure.name], against.samples[measure.name]]
  return sample && other
    ? {
        measure,
        at: (confidence: number) => differenceOf(sample, other, confidence),
        layout: layoutOfDifference(drawsAt(of!.draws, measure), drawsAt(against.draws, measure)),
      }
    : null
}

const meanAt = (design: SampledDesign, { name }: SweepMeasure): number => {
  const sample = design.samples[name]
  return sample === undefined ? Number.NaN : sampleEstimate(sample, 0.95).mean
}

/** What a curve is made of: points along one factor, which ascend, and the scenario as it stands. */
interface CurveParts {
  designs: readonly SampledDesign[]
  base: SampledDesign
  measures: readonly SweepMeasure[]
  target: number | null
  confidence: number
  factorUnit: string
  /** The points differ in a price that their cost leaves out: then it does not say which one is cheapest. */
  isCostInPart?: boolean
}

/** The measures along a curve and what its cost says; all comparisons are judged together. */
export function curveOf(parts: CurveParts): Pick<CurveResult, 'measures' | 'cost'> {
  const { designs, base, measures, target, confidence, factorUnit } = parts
  const x = designs.map(({ at }) => at[0]!)
  const all = measures.flatMap((measure) => {
    const samples = designs.map((design) => design.samples[measure.name])
    if (samples.some((sample) => sample === undefined)) return []
    const draws = designs.map((design) => drawsAt(design.draws, measure))
    return curveComparisons(x, samples as Sample[], draws).map((each) => ({ measure, ...each }))
  })
  const cost = parts.isCostInPart ? undefined : measures.find(({ name }) => name === costName)
  const againstBase = cost ? designs.map((design) => comparisonOf(design, base, cost)) : []
  const figures = judgedFigures(
    [...all, ...(againstBase.every((each) => each !== null) ? againstBase : [])],
    confidence,
  )
  const along = Object.fromEntries(
    measures.map((measure): [string, CurveOf] => {
      const own = all.flatMap((each, index) =>
        each.measure === measure
          ? [{ ...each, difference: figures[index]!, isShown: figures[index]!.isShown === true }]
          : [],
      )
      const of = (what: CurveComparison['what']) => own.filter((each) => each.what === what)
      const changes = of('change').map(({ place, isShown, difference }) => {
        const { mean, low, high, unit, inputs } = difference
        return {
          ...{ place, mean, low, high },
          ...(inputs ? { inputs } : {}),
          unit: factorUnit === '' ? unit : `${unit} per ${factorUnit}`,
          isShown,
        }
      })
      const means = designs.map((design) => meanAt(design, measure))
      const levels =
        measure.name === heldName
          ? heldLevels
          : measure.name === 'throughput' && target !== null
            ? [target]
            : []
      return [
        measure.name,
        {
          steps: of('step').map(({ place, difference }) => ({ from: place, to: place + 1, difference })),
          onward: of('onward').map(({ place, difference }) => ({
            from: place,
            to: x.length - 1,
            difference,
          })),
          changes,
          knee: kneeOf(changes),
          enough: enoughOf(x.length, own),
          crossings: levels.flatMap((level) => crossings(x, means, level)),
        },
      ]
    }),
  )
  return { measures: along, cost: costOf(parts, figures.slice(all.length)) }
}

/**
 * The point of least cost, and those that are not shown to cost more. Which point is the least is chosen after looking, so each difference
 * is judged as one of all pairs (Bonferroni).
 */
function costOf(
  { designs, base, measures, confidence, isCostInPart }: CurveParts,
  differences: DifferenceFigure[],
): CostOf | null {
  if (isCostInPart) return null
  const measure = measures.find(({ name }) => name === costName)
  if (!measure) return null
  const costs = designs.map((design) => meanAt(design, measure))
  const least = costs.reduce(
    (best, cost, place) => (cost < (costs[best] ?? Infinity) || Number.isNaN(costs[best]) ? place : best),
    0,
  )
  if (Number.isNaN(costs[least] ?? Number.NaN)) return null
  const pairs = (designs.length * (designs.length - 1)) / 2
  const level = 1 - (1 - confidence) / Math.max(1, pairs)
  const notDearer = designs.flatMap((design, place) => {
    const dearer = place === least ? null : comparisonOf(design, designs[least]!, measure)
    if (dearer === null) return [place]
    const difference = dearer.at(level)
    const { inputs } = addedByInputs(difference, dearer.layout, measure.unit, level)
    return (inputs?.low ?? difference.low) > 0 ? [] : [place]
  })
  const own = meanAt(base, measure)
  const x = designs.map(({ at }) => at[0]!)
  return {
    ...{ least, notDearer, base: orNull(own) },
    // nothing lies on either side of a level that is not known
    breakEven: crossings(x, costs, own),
    differences,
  }
}

/** Contours of each measure over two factors. */
export function gridOf(
  points: readonly SweepPoint[],
  factors: readonly Factor[],
  measures: readonly SweepMeasure[],
): Record<string, GridOf> {
  const [x, y] = factors.map(({ values }) => values) as [number[], number[]]
  return Object.fromEntries(
    measures.map(({ name }) => {
      const z = gridValues({ points, factors }, name)
      const levels = name === heldName ? heldLevels : evenLevels(z.flat())
      const lines = levels.flatMap((level) =>
        contour(x, y, z, level).map((line) => ({ level, points: line })),
      )
      return [name, { levels, lines }]
    }),
  )
}

/** Means of a measure, a row a value of the second factor; NaN where a point could not be simulated. */
export function gridValues(
  { points, factors }: { points: readonly SweepPoint[]; factors: readonly Factor[] },
  name: string,
): number[][] {
  const [x, y] = factors.map(({ values }) => values) as [number[], number[]]
  return y.map((row) => x.map((column) => gridPoint(points, column, row)?.measures[name]?.mean ?? Number.NaN))
}

/** The point at a value of both factors; undefined where it could not be simulated. */
export const gridPoint = (points: readonly SweepPoint[], x: number, y: number): SweepPoint | undefined =>
  points.find(({ at }) => at[0] === x && at[1] === y)

/** Four levels between the lowest and the highest value, with three figures; none where all are alike. */
function evenLevels(values: readonly number[]): number[] {
  const known = values.filter((value) => !Number.isNaN(value))
  const [low, high] = [Math.min(...known), Math.max(...known)]
  if (!(high > low)) return []
  return [...new Set([0.2, 0.4, 0.6, 0.8].map((part) => Number((low + part * (high - low)).toPrecision(3))))]
}

const sides = ['low', 'high'] as const

/** An input that was moved, with the design of each end; null where that could not be simulated. */
export interface MovedInput extends Omit<EachInput, 'differences'> {
  ends: { low: SampledDesign | null; high: SampledDesign | null }
  /** Draws of the base with that input held. */
  against?: SampledDesign['draws']
}

/** Every input against the base; all differences are judged together. */
export function eachOf(
  inputs: readonly MovedInput[],
  base: SampledDesign,
  measures: readonly SweepMeasure[],
  confidence: number,
): EachResult {
  const all = inputs.flatMap((input) =>
    measures.flatMap((measure) =>
      sides.flatMap((side) => {
        const compared = comparisonOf(input.ends[side], { ...base, draws: input.against }, measure)
        return compared ? [{ ...compared, of: `${side} ${measure.name} ${input.path}` }] : []
      }),
    ),
  )
  const figures = judgedFigures(all, confidence)
  const known = new Map(all.map(({ of }, index) => [of, figures[index]!]))
  const result = inputs.map(({ path, base: text, low, high }): EachInput => {
    const differences = measures.map(({ name }) => [
      name,
      Object.fromEntries(sides.map((side) => [side, known.get(`${side} ${name} ${path}`) ?? null])),
    ])
    return { path, base: text, low, high, differences: Object.fromEntries(differences) }
  })
  return {
    inputs: result,
    order: Object.fromEntries(
      measures.map(({ name }) => [
        name,
        [...result].sort((a, b) => sizeOf(b, name) - sizeOf(a, name)).map(({ path }) => path),
      ]),
    ),
  }
}

/** The larger of what the two ends of an input do. */
const sizeOf = ({ differences }: EachInput, name: string): number =>
  Math.max(...sides.map((side) => Math.abs(differences[name]![side]?.mean ?? 0)))
