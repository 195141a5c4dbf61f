/** What a figure of a document looks like once it is read back. */
import * as z from 'zod'
import type { Few } from '../statistics/estimate.js'
import type { Amount, Figure, FigureOfInputs, Figures } from './figure.js'
import { byName, count, isSo, maybe, number, numberOrNull, shapeOf, text } from './shape.js'

const ends = z.object({ low: numberOrNull, high: numberOrNull })

export const fewShape = shapeOf<Few>()({ events: count, of: z.enum(['events', 'in breaks', 'shifts']) })

export const figureOfInputsShape = shapeOf<FigureOfInputs>()({
  low: numberOrNull,
  high: numberOrNull,
  alone: ends,
  share: number,
  draws: count,
})

export const figureShape = shapeOf<Figure>()({
  mean: numberOrNull,
  low: numberOrNull,
  high: numberOrNull,
  sd: numberOrNull,
  n: count,
  unit: text,
  label: text,
  shrink: maybe(number),
  few: maybe(fewShape),
  bunches: maybe(number),
  isFixed: maybe(isSo),
  inputs: maybe(figureOfInputsShape),
})

/** Figures by the keys of their measures. */
export const figuresShape = <Key extends string>() =>
  byName(figureShape) as unknown as z.ZodType<Figures<Key>>

export const amountShape = shapeOf<Amount>()({ value: numberOrNull, unit: text })
