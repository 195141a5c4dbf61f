/** Keys of a crew: who they are, what they can do, and when they are away. */
import * as z from 'zod'
import { timeDistribution } from './distribution.js'
import { assume, name, quantity, whole } from './kit.js'
import { otherWork } from './other-work.js'

export const skills = ['jams', 'roll-change', 'size-setting', 'blade', 'breakdowns'] as const
export type Skill = (typeof skills)[number]

/** What somebody may be called for: a task in the words of `does`, or jams that are left to the crew of that name. */
export type Call = Skill | `jams by ${string}`

/** The call of a jam that the crew `by` clears; undefined: whoever does `jams`. */
export const jamsBy = (by: string | undefined): Call => (by === undefined ? 'jams' : `jams by ${by}`)

/** All that the crew `name` may be called for, the most urgent first: jams left to it stand before its other jams, or last. */
export function callsOf(name: string, does: readonly Skill[]): Call[] {
  const jams = does.indexOf('jams')
  const at = jams < 0 ? does.length : jams
  return [...does.slice(0, at), jamsBy(name), ...does.slice(at)]
}

/** Such a call in the words of `does`. */
export const taskOf = (call: Call): string => (call.startsWith(jamsBy('')) ? 'jams' : call)

export const breakList = z
  .array(
    z.strictObject({
      at: quantity('time', 'since the start of the shift'),
      for: quantity('time', 'its length', { above: 0 }),
    }),
  )
  .max(100)

export const member = z.strictObject({
  people: assume(whole('how many', 1, 1000), 1, 'definition of the format'),
  walk: assume(timeDistribution('time to come to a stop and begin'), '0 s', 'definition of the format'),
  does: z.array(z.enum(skills)).min(1).describe('the tasks that they do, the most urgent first'),
  'stands-at': name
    .optional()
    .describe('standing duty: who is free folds the flaps of this sealer; a task calls them away'),
  breaks: breakList
    .optional()
    .describe('breaks of their own in place of those of the shift, so that others cover'),
  'other-work': otherWork.optional(),
})
