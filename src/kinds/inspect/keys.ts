/** Keys of `type: inspect`: a place that inspects each case and rejects some. */
import * as z from 'zod'
import { timeDistribution } from '../../scenario/distribution.js'
import { jams } from '../../scenario/jam-keys.js'
import { assume, name, quantity } from '../../scenario/kit.js'
import { breakdowns, passesTo, planned, rightOfWay, runBy, sideBySide } from '../shared-keys.js'

export const inspect = z
  .strictObject({
    type: z.literal('inspect').describe('inspects each case and rejects some'),
    time: assume(timeDistribution('time for one case'), '0 s', 'definition of the format'),
    chance: assume(
      quantity('share', 'chance that a case is rejected for other reasons than an open seam', {
        from: 0,
        to: 1,
      }),
      '0 %',
      'definition of the format',
    ),
    'finds-unsealed': assume(
      quantity('share', 'share of the unsealed cases that it finds and rejects', { from: 0, to: 1 }),
      '100 %',
      'definition of the format',
    ),
    'rejects-to': assume(
      name.describe('name of the piece that takes the rejected cases; exit: they leave the line'),
      'exit',
      'definition of the format',
    ),
    'run-by': runBy,
    jams: jams.optional(),
    breakdowns: breakdowns.optional(),
    planned: planned.optional(),
    'right-of-way': rightOfWay.optional(),
    ...sideBySide,
    to: passesTo.optional(),
  })
  .describe('an inspection')

export type InspectKeys = z.output<typeof inspect>
