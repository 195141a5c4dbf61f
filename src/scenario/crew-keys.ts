/** Keys of a crew: who they are, what they can do, and when they are away. */
import * as z from 'zod'
import { skills } from './calls.js'
import { timeDistribution } from './distribution.js'
import { assume, name, quantity, whole } from './kit.js'
import { otherWork } from './other-work-keys.js'

export const breakList = z
  .array(
    z.strictObject({
      at: quantity('time', 'time since the start of the shift'),
      for: quantity('time', 'length of the break', { above: 0 }),
    }),
  )
  .max(100)

export const member = z.strictObject({
  people: assume(whole('number of people', 1, 1000), 1),
  walk: assume(timeDistribution('time to walk to a stop and begin'), '0 s'),
  does: z.array(z.enum(skills)).min(1).describe('tasks of this crew, the most urgent first'),
  'stands-at': name.optional().describe('sealer at which free people fold the flaps; a task calls them away'),
  breaks: breakList.optional().describe('own breaks instead of those of the shift, so that others can cover'),
  'other-work': otherWork.optional(),
})
