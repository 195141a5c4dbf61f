/** Keys of a side of a case that varies from case to case: one law between two ends. */
import * as z from 'zod'
import { broken, decided, text, unitOf } from './kit.js'
import { inOrder, oneLaw, outOfOrder } from './law-keys.js'
import { type SizeLaw, sideEnds } from './size-law.js'

const side = (doc: string) => decided('length', doc, sideEnds)

const laws = oneLaw({
  normal: z
    .strictObject({
      mean: side('mean before the cuts'),
      sd: decided('length', 'standard deviation before the cuts', { above: 0, to: sideEnds.to }),
      'at-least': side('smallest: the distribution is cut off below it and rescaled'),
      'at-most': side('largest: cut off above it'),
    })
    .refine(
      (n) => n['at-least'] <= n.mean && n.mean <= n['at-most'] && n['at-least'] < n['at-most'],
      broken(
        'conflict',
        'at-least, mean and at-most must be in this order',
        'the smallest and the largest that the machine makes',
      ),
    )
    .optional(),
  triangular: z
    .strictObject({ low: side('smallest'), mode: side('most likely'), high: side('largest') })
    .refine(inOrder, outOfOrder)
    .optional(),
  uniform: z
    .strictObject({ low: side('smallest'), high: side('largest') })
    .refine(
      (u) => u.low < u.high,
      broken('conflict', 'low must be below high', 'swap the two, or write only one size'),
    )
    .optional(),
  observed: z
    .strictObject({
      file: text('CSV file beside the scenario, with a header line', 1000),
      column: text('name of its column', 200),
      unit: unitOf('length', 'unit of the recorded sizes'),
    })
    .optional(),
})

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
