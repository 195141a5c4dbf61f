/** Keys of `type: divert`: a place that sends cases on by one of several ways. */
import * as z from 'zod'
import { timeDistribution } from '../../scenario/distribution.js'
import { jams } from '../../scenario/jam-keys.js'
import { assume, choice, name } from '../../scenario/kit.js'
import { breakdowns, planned, rightOfWay, sideBySide } from '../shared-keys.js'

const targets = z
  .array(name)
  .refine((list) => list.length >= 2 && list.length <= 100, {
    message: 'two ways at least, and at most 100',
    params: { code: 'out-of-range', fix: 'name another one' },
  })
  .meta({ minItems: 2, maxItems: 100 })
  .describe('alternate and shortest: names of the equipment, in order; one that stands twice has two turns')
const targetsByCase = z.record(name, name).describe('by-case: for each case the name of the equipment')

export const divert = z
  .strictObject({
    type: z.literal('divert').describe('sends cases on by one of several ways'),
    rule: assume(
      choice(
        ['by-case', 'alternate', 'shortest'],
        'by-case: each case has its way; alternate: strictly by turns; shortest: to the one that holds fewest cases',
      ),
      'alternate',
      'definition of the format',
    ),
    to: z
      .union([targets, targetsByCase])
      .describe(
        'where cases go: a list of names, or by-case a map from cases to names; exit is out of the line',
      ),
    time: assume(timeDistribution('time that one case takes'), '0 s', 'definition of the format'),
    jams: jams.optional(),
    breakdowns: breakdowns.optional(),
    planned: planned.optional(),
    'right-of-way': rightOfWay.optional(),
    ...sideBySide,
  })
  .describe('a divert')

export type DivertKeys = z.output<typeof divert>
