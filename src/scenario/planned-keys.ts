/** Keys of `planned`: work that is planned in a shift. */
import * as z from 'zod'
import { timeDistribution } from './distribution.js'
import { name, quantity } from './kit.js'

export const planned = z
  .array(
    z.strictObject({
      does: z.string().min(1).max(40).describe('what it is, in words, such as cleaning'),
      at: quantity('time', 'since the start of each shift').optional(),
      every: quantity(
        'time',
        'in place of `at`: again and again, first so long after the start of each shift',
        {
          above: 0,
        },
      ).optional(),
      takes: timeDistribution('how long the piece stands for it'),
      needs: name
        .optional()
        .describe(
          'the crew of which somebody does it: the piece runs on until they are there; nobody, when not given',
        ),
    }),
  )
  .min(1)
  .max(20)
  .describe('planned work in the shift: the piece stands, and what is in hand waits and goes on after it')

export type PlannedKeys = z.output<typeof planned>[number]
