/** Keys of `other-work`: what a crew does beside the line. */
import * as z from 'zod'
import { timeDistribution } from './distribution.js'
import { assume, quantity } from './kit.js'

const item = z.strictObject({
  does: z.string().min(1).max(40).optional().describe('what it is, in words'),
  share: quantity(
    'share',
    'of the time in which each of them is there; comes by chance, as from many who want something',
    { above: 0, to: 1 },
  ).optional(),
  every: timeDistribution(
    'in place of `share`: time in which the crew is there, from one piece of it to the next',
    { above: 0 },
  ).optional(),
  takes: timeDistribution('how long one piece of it takes; without a default, for stops wait for it'),
  'can-be-left': assume(
    z
      .boolean()
      .describe(
        'true: a stop of the line takes them off at once, and they go on with it later; false: the stop waits until it is done',
      ),
    false,
    'definition of the format',
  ),
})

export type OtherWorkKeys = z.output<typeof item>

export const otherWork = z
  .union([z.array(item).min(1).max(20), item])
  .describe(
    'work beside the line, one kind or a list: begun when no stop waits for them; what is due meanwhile waits in a row',
  )

export type OtherWorkGiven = z.output<typeof otherWork>
