/** Keys of `type: divert`: a place that sends cases on by one of several ways. */
import * as z from 'zod'
import { timeDistribution } from '../../scenario/distribution.js'
import { jams } from '../../scenario/jam-keys.js'
import { assume, choice, name } from '../../scenario/kit.js'
import { breakdowns, planned, rightOfWay, sideBySide } from '../shared-keys.js'

const targets = z
  .array(name)
  .refine((list) => list.length >= 2 && list.length <= 100, {
    message: 'at least 2 and at most 100 ways',
    params: { code: 'out-of-range', fix: 'name another one' },
  })
  .meta({ minItems: 2, maxItems: 100 })
  .describe('alternate and shortest: names of pieces, in order; a name given twice gets two turns')
const targetsByCase = z.record(name, name).describe('by-case: for each case the name of the piece')

export const divert = z
  .strictObject({
    type: z.literal('divert').describe('sends cases on by one of several ways'),
    rule: assume(
      choice(
        ['by-case', 'alternate', 'shortest'],
        'by-case: each kind of case has its way; alternate: strictly in turn; shortest: to the piece with the fewest cases',
      ),
      'alternate',
      'definition of the format',
    ),
    to: z
      .union([targets, targetsByCase])
      .describe(
        'where cases go: a list of names, or with by-case a map from cases to names; exit: out of the line',
      ),
    time: assume(timeDistribution('time for one case'), '0 s', 'definition of the format'),
    jams: jams.optional(),
    breakdowns: breakdowns.optional(),
    planned: planned.optional(),
    'right-of-way': rightOfWay.optional(),
    ...sideBySide,
  })
  .describe('a divert')

export type DivertKeys = z.output<typeof divert>
