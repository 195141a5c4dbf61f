/** Keys of a side of a case that varies from case to case: one law between two ends. */
import * as z from 'zod'
import { choice, decided } from './kit.js'
import { dimensions } from './quantity.js'
import { type SizeLaw, sideEnds } from './size-law.js'
import { inOrder, outOfOrder } from './triangular.js'

const side = (doc: string) => decided('length', doc, sideEnds)
const units = Object.keys(dimensions.length.units) as [string, ...string[]]

const laws = z
  .strictObject({
    normal: z
      .strictObject({
        mean: side('mean before the cuts'),
        sd: decided('length', 'standard deviation before the cuts', { above: 0, to: sideEnds.to }),
        'at-least': side('smallest: the distribution is cut off below it and rescaled'),
        'at-most': side('largest: cut off above it'),
      })
      .refine((n) => n['at-least'] <= n.mean && n.mean <= n['at-most'] && n['at-least'] < n['at-most'], {
        message: 'at-least, mean and at-most must be in this order',
        params: { code: 'conflict', fix: 'the smallest and the largest that the machine makes' },
      })
      .optional(),
    triangular: z
      .strictObject({ low: side('smallest'), mode: side('most likely'), high: side('largest') })
      .refine(inOrder, outOfOrder)
      .optional(),
    uniform: z
      .strictObject({ low: side('smallest'), high: side('largest') })
      .refine((u) => u.low < u.high, {
        message: 'low must be below high',
        params: { code: 'conflict', fix: 'swap the two, or write only one size' },
      })
      .optional(),
    observed: z
      .strictObject({
        file: z.string().min(1).max(1000).describe('CSV file beside the scenario, with a header line'),
        column: z.string().min(1).max(200).describe('name of its column'),
        unit: choice(units, 'unit of the recorded sizes'),
      })
      .optional(),
  })
  .refine((given) => Object.keys(given).length === 1, {
    message: 'exactly one distribution is needed here',
    params: { code: 'one-of', fix: 'keep one of normal, triangular, uniform, observed' },
  })
  .meta({ minProperties: 1, maxProperties: 1 })

/** A map of one law, for a side that varies. */
export const sizeLaw = laws.transform(({ normal, triangular, uniform, observed }): SizeLaw => {
  if (normal) {
    const { mean, sd, 'at-least': atLeast, 'at-most': atMost } = normal
    return { law: 'normal', mean, sd, atLeast, atMost }
  }
  if (triangular) return { law: 'triangular', ...triangular }
  if (uniform) return { law: 'uniform', ...uniform }
  return { law: 'observed', ...observed!, values: [] }
})
