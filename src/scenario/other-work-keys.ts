/** Keys of `other-work`: what a crew does beside the line. */
import * as z from 'zod'
import { timeDistribution } from './distribution.js'
import { assume, quantity } from './kit.js'

const item = z.strictObject({
  does: z.string().min(1).max(40).optional().describe('name of the work'),
  share: quantity('share', 'share of the time on duty of each person; jobs come at random', {
    above: 0,
    to: 1,
  }).optional(),
  every: timeDistribution('instead of `share`: time on duty from one job to the next', {
    above: 0,
  }).optional(),
  takes: timeDistribution('time of one job; no default, because stops of the line may wait for it'),
  'can-be-left': assume(
    z
      .boolean()
      .describe(
        'true: people leave the job at once for a stop of the line and continue later; false: the stop waits until the job is done',
      ),
    false,
  ),
})

export type OtherWorkKeys = z.output<typeof item>

export const otherWork = z
  .union([z.array(item).min(1).max(20), item])
  .describe(
    'work beside the line, one kind or a list; started when no stop waits. Jobs that are due in the meantime wait',
  )

export type OtherWorkGiven = z.output<typeof otherWork>
