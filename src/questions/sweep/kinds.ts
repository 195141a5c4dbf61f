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

/** Of a measure what the draws of a design have. */
export const drawsAt = (
  draws: SampledDesign['draws'],
  { name }: Pick<SweepMeasure, 'name'>,
): readonly (Sample | undefined)[] => (draws ?? []).map((each) => each?.[name])

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
  const ownCost = base.samples[costName]
  const costs = cost && ownCost ? designs.map(({ samples }) => samples[costName]) : []
  const againstBase = costs.every((sample) => sample !== undefined)
    ? costs.map((sample, place) => ({
        measure: cost!,
        at: (level: number) => differenceOf(sample!, ownCost!, level),
        layout: layoutOfDifference(drawsAt(designs[place]!.draws, cost!), drawsAt(base.draws, cost!)),
      }))
    : []
  const figures = judgedFigures([...all, ...againstBase], confidence)
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
  const cheapest = designs[least]?.samples[costName]
  if (cheapest === undefined || Number.isNaN(costs[least])) return null
  const pairs = (designs.length * (designs.length - 1)) / 2
  const level = 1 - (1 - confidence) / Math.max(1, pairs)
  const notDearer = designs.flatMap(({ samples }, place) => {
    const sample = samples[costName]
    if (place === least) return [place]
    if (sample === undefined) return [place]
    const dearer = differenceOf(sample, cheapest, level)
    const draws = [place, least].map((each) => drawsAt(designs[each]!.draws, measure))
    const { inputs } = addedByInputs(dearer, layoutOfDifference(draws[0]!, draws[1]!), measure.unit, level)
    return (inputs?.low ?? dearer.low) > 0 ? [] : [place]
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
      const z = gridValues(points, x, y, name)
      const levels = name === heldName ? heldLevels : evenLevels(z.flat())
      const lines = levels.flatMap((level) =>
        contour(x, y, z, level).map((line) => ({ level, points: line })),
      )
      return [name, { levels, lines }]
    }),
  )
}

/** Means of a measure, a row a value of the second factor; NaN where a point could not be simulated. */
export const gridValues = (
  points: readonly SweepPoint[],
  x: readonly number[],
  y: readonly number[],
  name: string,
): number[][] =>
  y.map((row) =>
    x.map(
      (column) =>
        points.find(({ at }) => at[0] === column && at[1] === row)?.measures[name]?.mean ?? Number.NaN,
    ),
  )

/** Four levels between the lowest and the highest value, with three figures; none where all are alike. */
function evenLevels(values: readonly number[]): number[] {
  const known = values.filter((value) => !Number.isNaN(value))
  const [low, high] = [Math.min(...known), Math.max(...known)]
  if (!(high > low)) return []
  return [...new Set([0.2, 0.4, 0.6, 0.8].map((part) => Number((low + part * (high - low)).toPrecision(3))))]
}

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
  const sides = ['low', 'high'] as const
  const all = inputs.flatMap((input) =>
    measures.flatMap((measure) =>
      sides.flatMap((side) => {
        const [of, against] = [input.ends[side]?.samples[measure.name], base.samples[measure.name]]
        if (of === undefined || against === undefined) return []
        const draws = [input.ends[side]!.draws, input.against].map((each) => drawsAt(each, measure))
        return [
          {
            ...{ input, side, measure, layout: layoutOfDifference(draws[0]!, draws[1]!) },
            at: (level: number) => differenceOf(of, against, level),
          },
        ]
      }),
    ),
  )
  const figures = judgedFigures(all, confidence)
  const endDifference = (input: MovedInput, measure: SweepMeasure, side: 'low' | 'high') => {
    const place = all.findIndex(
      (each) => each.input === input && each.measure === measure && each.side === side,
    )
    return place < 0 ? null : figures[place]!
  }
  const result = inputs.map((input): EachInput => {
    const { path, base: text, low, high } = input
    const differences = measures.map((measure) => [
      measure.name,
      { low: endDifference(input, measure, 'low'), high: endDifference(input, measure, 'high') },
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
  Math.max(...['low' as const, 'high' as const].map((side) => Math.abs(differences[name]![side]?.mean ?? 0)))
