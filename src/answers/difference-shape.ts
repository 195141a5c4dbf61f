/** What a difference of two designs looks like in a document that is read back. */
import { fewShape, figureOfInputsShape } from '../catalogue/figure-shape.js'
import { count, isSo, maybe, number, numberOrNull, shapeOf, text } from '../catalogue/shape.js'
import type { DifferenceFigure, Interval } from './difference-figure.js'

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
