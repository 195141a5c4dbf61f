/** Rules of the keys of a law, of times and of sizes alike. */
import * as z from 'zod'
import { broken } from './kit.js'

/** A map of exactly one of the laws of `shape`. */
export const oneLaw = <Shape extends z.core.$ZodLooseShape>(shape: Shape) =>
  z
    .strictObject(shape)
    .refine(
      (given) => Object.keys(given).length === 1,
      broken(
        'one-of',
        'exactly one distribution is needed here',
        `keep one of ${Object.keys(shape).join(', ')}`,
      ),
    )
    .meta({ minProperties: 1, maxProperties: 1 })

/** A triangular law, its smallest and most likely value as `low` reads them, its largest as `high` does. */
export const triangularOf = (low: (doc: string) => z.ZodType<number>, high = low) =>
  z
    .strictObject({ low: low('smallest'), mode: low('most likely'), high: high('largest') })
    .refine(
      (law) => law.low <= law.mode && law.mode <= law.high && law.low < law.high,
      broken(
        'conflict',
        'low, mode and high must be in this order',
        'put the smallest value in low and the largest in high',
      ),
    )
    .optional()
