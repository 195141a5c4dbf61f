/** What documents tell of one line, of its losses, of draws of its inputs and of how far it is from another, once it is read back. */
import * as z from 'zod'
import { fewShape, figureOfInputsShape, figureShape, figuresShape } from '../catalogue/figure-shape.js'
import type { MeasureName } from '../catalogue/measures.js'
import {
  ascending,
  byName,
  count,
  isSo,
  maybe,
  number,
  numberOrNull,
  shapeOf,
  text,
  textOf,
} from '../catalogue/shape.js'
import type { ContributionsTold, ContributionWithEnds, DrawsTold, InputEndsTold } from './contributions.js'
import type { DifferenceFigure, Interval } from './difference-figure.js'
import type { EquipmentResult, HeldOverShift, LineResult } from './line-result.js'
import type { Losses, LossStep, MachineLosses } from './losses.js'
import type { DrawsAsked } from './with-inputs.js'

const held = shapeOf<HeldOverShift>()({
  place: text,
  at: ascending,
  mean: z.array(number),
  p10: z.array(number),
  p90: z.array(number),
}).refine(
  ({ at, ...bands }) => [bands.mean, bands.p10, bands.p90].every(({ length }) => length === at.length),
  'as many of `mean`, `p10` and `p90` as of `at`',
)

const equipment = shapeOf<EquipmentResult>()({
  type: text,
  pieces: maybe(z.array(text)),
  measures: figuresShape(),
  states: figuresShape(),
  heads: maybe(byName(figuresShape())),
  jams: maybe(byName(figuresShape())),
  effectiveness: maybe(figuresShape()),
})

/** Figures without which nothing can be said of a line. */
const needed = figuresShape<'output'>().refine(
  (measures) => measures.output !== undefined,
  'figures, `output` among them',
)

/** The keys of a document that tell of one line. */
export const lineKeys = {
  measures: needed as unknown as z.ZodType<LineResult['measures']>,
  costLeftOut: z.array(text),
  engine: maybe(z.enum(['ahead', 'events'])),
  arrivals: byName(figuresShape()),
  equipment: byName(equipment),
  crew: byName(figuresShape()),
  outputs: z.array(number).min(1),
  held: z.array(held),
} satisfies { [Key in keyof LineResult]: z.ZodType<LineResult[Key]> }

const step = shapeOf<LossStep>()({
  key: text,
  jam: maybe(text),
  label: text,
  cases: figureShape,
  share: number,
})

const machine = shapeOf<MachineLosses>()({
  machine: text,
  type: text,
  rate: number,
  how: text,
  could: number,
  limit: maybe(figureShape),
  losses: z.array(step),
  leaves: figureShape,
  isFollowed: isSo,
})

export const lossesShape = shapeOf<Losses>()({
  machines: z.array(machine).min(1),
  line: z.array(step),
  output: figureShape,
})

const contribution = { path: text, share: number, data: numberOrNull }
const end = shapeOf<ContributionWithEnds['low']>()({ input: number, figure: number })
const withEnds = shapeOf<ContributionWithEnds>()({ ...contribution, low: end, high: end })

const told = { measure: textOf<MeasureName>(), label: text, explained: number }

export const contributionsShape = shapeOf<ContributionsTold>()({
  ...told,
  shares: z.array(shapeOf<ContributionsTold['shares'][number]>()(contribution)),
})

const inputEnds = shapeOf<InputEndsTold>()({
  ...told,
  unit: text,
  middle: number,
  shares: z.array(withEnds),
})

/** The keys that tell of draws of the inputs. */
export const drawsKeys = {
  draws: count,
  shifts: count,
  contributions: z.array(inputEnds),
}
export const drawsShape = shapeOf<DrawsTold>()(drawsKeys)

export const drawsAskedShape = shapeOf<DrawsAsked>()({ draws: count, shifts: count })

/** The keys of a number with its interval. */
export const intervalKeys = { mean: numberOrNull, low: numberOrNull, high: numberOrNull }
export const intervalShape = shapeOf<Interval>()(intervalKeys)

export const differenceShape = shapeOf<DifferenceFigure>()({
  ...intervalKeys,
  n: count,
  few: maybe(fewShape),
  sd: numberOrNull,
  unit: text,
  label: text,
  family: numberOrNull,
  alone: shapeOf<DifferenceFigure['alone']>()({
    low: numberOrNull,
    high: numberOrNull,
    inputs: maybe(figureOfInputsShape),
  }),
  inputs: maybe(figureOfInputsShape),
  p: numberOrNull,
  isShown: isSo.nullable(),
  varianceRatio: numberOrNull,
  acrossDraws: maybe(
    shapeOf<NonNullable<DifferenceFigure['acrossDraws']>>()({ more: count, less: count, draws: count }),
  ),
  matters: shapeOf<NonNullable<DifferenceFigure['matters']>>()({
    amount: number,
    shifts: numberOrNull,
  }).nullable(),
})
