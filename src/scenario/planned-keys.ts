/** Keys of `planned`: work that is planned in a shift. */
import * as z from 'zod'
import { timeDistribution } from './distribution.js'
import { name, quantity, text } from './kit.js'

export const planned = z
  .array(
    z.strictObject({
      does: text('name of the work, such as cleaning', 40),
      at: quantity('time', 'time since the start of each shift').optional(),
      every: quantity(
        'time',
        'instead of `at`: repeated at this interval, counted from the start of each shift',
        {
          above: 0,
        },
      ).optional(),
      takes: timeDistribution('how long the piece is stopped for it'),
      needs: name
        .optional()
        .describe('crew that does it; the piece keeps running until they arrive (default: nobody is needed)'),
    }),
  )
  .min(1)
  .max(20)
  .describe('planned work in the shift: the piece stops; cases in it wait and continue afterwards')

export type PlannedKeys = z.output<typeof planned>[number]
