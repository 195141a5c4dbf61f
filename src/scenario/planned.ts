/** Planned work in a shift: its keys, and when it is due. */
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

type Times = Pick<PlannedKeys, 'at' | 'every'>

/** Rounding of a number of intervals that fill a shift. */
const hair = 1e-9

/** How often it is due in a shift of `length` s: not at its end. */
export const duesPerShift = ({ every }: Times, length: number): number =>
  every === undefined ? 1 : Math.max(0, Math.ceil(length / every - hair) - 1)

/** When it is due for the time `number`, from 0, s since the start of the shift. */
export const dueOf = ({ at, every }: Times, number: number): number =>
  every === undefined ? (at ?? 0) : (number + 1) * every
