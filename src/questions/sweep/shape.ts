/** What the document of a sweep looks like once it is read back. */
import * as z from 'zod'
import { differenceShape, drawsAskedShape, intervalKeys } from '../../answers/line-shape.js'
import { studyKeys } from '../../answers/study-shape.js'
import { figureOfInputsShape, figureShape } from '../../catalogue/figure-shape.js'
import {
  anything,
  ascending,
  byName,
  count,
  isSo,
  maybe,
  number,
  numberOrNull,
  place,
  shapeOf,
  text,
  textOf,
  textOrNull,
} from '../../catalogue/shape.js'
import type { Crossing } from './curve.js'
import type {
  CostOf,
  CurveOf,
  CurveResult,
  EachInput,
  EachResult,
  Factor,
  GridOf,
  PlanOf,
  SpeedByHand,
  SweepMeasure,
  SweepPoint,
  SweepResult,
} from './document.js'
import { sweepRules } from './shape-rules.js'

const factor = shapeOf<Factor>()({
  path: text,
  unit: text,
  values: ascending.min(1),
  base: numberOrNull,
  si: shapeOf<Factor['si']>()({ unit: text, values: z.array(number) }),
  minutes: z.array(number).nullable(),
})

const measure = shapeOf<SweepMeasure>()({ name: textOf(), label: text, unit: text })

const figures = byName(figureShape)

const point = shapeOf<SweepPoint>()({
  set: byName(anything),
  at: z.array(number),
  measures: figures,
  errors: maybe(z.array(text)),
})

const crossing = shapeOf<Crossing>()({ level: number, at: number, from: place, rises: isSo })

const along = z.array(
  shapeOf<CurveOf['steps'][number]>()({ from: place, to: place, difference: differenceShape }),
)

const curveOf = shapeOf<CurveOf>()({
  steps: along,
  onward: along,
  changes: z.array(
    shapeOf<CurveOf['changes'][number]>()({
      ...intervalKeys,
      inputs: maybe(figureOfInputsShape),
      place,
      unit: text,
      isShown: isSo,
    }),
  ),
  knee: place.nullable(),
  enough: place.nullable(),
  crossings: z.array(crossing),
})

const costOf = shapeOf<CostOf>()({
  least: place,
  notDearer: z.array(place),
  base: numberOrNull,
  breakEven: z.array(crossing),
  differences: z.array(differenceShape),
})

const curve = shapeOf<CurveResult>()({
  measures: byName(curveOf),
  cost: costOf.nullable(),
  byHand: shapeOf<SpeedByHand>()({
    machine: text,
    ceiling: numberOrNull,
    littleGain: numberOrNull,
  }).nullable(),
})

const gridOf = shapeOf<GridOf>()({
  levels: ascending,
  lines: z.array(
    shapeOf<GridOf['lines'][number]>()({ level: number, points: z.array(z.tuple([number, number])) }),
  ),
}).refine(({ levels, lines }) => lines.every(({ level }) => levels.includes(level)), 'lines at `levels`')

const moved = shapeOf<EachInput['differences'][string]>()({
  low: differenceShape.nullable(),
  high: differenceShape.nullable(),
})

const each = shapeOf<EachResult>()({
  inputs: z.array(
    shapeOf<EachInput>()({
      path: text,
      base: text,
      low: textOrNull,
      high: textOrNull,
      differences: byName(moved),
    }),
  ),
  order: byName(z.array(text)),
})

const planOf = shapeOf<PlanOf>()({
  intercept: number,
  effects: z.array(
    shapeOf<PlanOf['effects'][number]>()({
      mean: number,
      low: number,
      high: number,
      standardised: number,
      standardisedHalf: number,
      isShown: isSo,
      inputs: maybe(figureOfInputsShape),
      path: text,
    }),
  ),
  explained: numberOrNull,
  residual: number,
  degreesOfFreedom: count,
  family: count,
})

export const sweepShape = shapeOf<SweepResult>()({
  ...studyKeys('sweep'),
  kind: z.enum(['curve', 'grid', 'each', 'plan']),
  target: numberOrNull,
  currency: text,
  factors: z.array(factor),
  measures: z.array(measure),
  base: figures,
  points: z.array(point),
  curve: curve.nullable(),
  grid: byName(gridOf).nullable(),
  each: each.nullable(),
  plan: byName(planOf.nullable()).nullable(),
  leftOut: z.array(shapeOf<SweepResult['leftOut'][number]>()({ path: text, reason: text })),
  drawn: maybe(drawsAskedShape),
}).superRefine(sweepRules)
