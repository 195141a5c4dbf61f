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

/** Of a triangular law. */
export const inOrder = ({ low, mode, high }: { low: number; mode: number; high: number }): boolean =>
  low <= mode && mode <= high && low < high

/** What is told where they are not. */
export const outOfOrder = broken(
  'conflict',
  'low, mode and high must be in this order',
  'put the smallest value in low and the largest in high',
)
