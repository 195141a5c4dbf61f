/** Keys of a crew: who they are, what they can do, when they are away, and what they do beside the line. */
import * as z from 'zod'
import { skills } from './calls.js'
import { timeDistribution } from './distribution.js'
import { assume, name, quantity, whole } from './kit.js'

export const breakList = z
  .array(
    z.strictObject({
      at: quantity('time', 'time since the start of the shift'),
      for: quantity('time', 'length of the break', { above: 0 }),
    }),
  )
  .max(100)

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

const otherWork = z
  .union([z.array(item).min(1).max(20), item])
  .describe(
    'work beside the line, one kind or a list; started when no stop waits. Jobs that are due in the meantime wait',
  )

export type OtherWorkGiven = z.output<typeof otherWork>

export const member = z.strictObject({
  people: assume(whole('number of people', 1, 1000), 1),
  walk: assume(timeDistribution('time to walk to a stop and begin'), '0 s'),
  does: z.array(z.enum(skills)).min(1).describe('tasks of this crew, the most urgent first'),
  'stands-at': name.optional().describe('sealer at which free people fold the flaps; a task calls them away'),
  breaks: breakList.optional().describe('own breaks instead of those of the shift, so that others can cover'),
  'other-work': otherWork.optional(),
})
