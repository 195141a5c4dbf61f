/** Keys of `type: station`: any place that holds one case for a time. */
import * as z from 'zod'
import { timeDistribution } from '../../scenario/distribution.js'
import { jams } from '../../scenario/jam-keys.js'
import { assume, whole } from '../../scenario/kit.js'
import {
  breakdowns,
  handover,
  paceByHour,
  passesTo,
  planned,
  rightOfWay,
  runBy,
  sensed,
  sideBySide,
  slowStart,
} from '../shared-keys.js'

export const station = z
  .strictObject({
    type: z
      .literal('station')
      .describe('holds a case for some time: packer, labeller, check weigher, palletiser'),
    time: timeDistribution('time for one case'),
    servers: assume(whole('places that work in parallel', 1, 1000), 1, 'definition of the format'),
    'waiting-room': assume(
      z
        .union([whole('places to wait before it', 0, 1_000_000), z.literal('unlimited')])
        .describe('places to wait before it, or `unlimited`'),
      0,
      'definition of the format',
    ),
    every: z
      .strictObject({
        cases: whole('number of cases after which it stops'),
        stop: timeDistribution('length of that stop'),
      })
      .optional()
      .describe('a planned stop after a number of cases, such as a pallet change'),
    repairs: assume(
      z.boolean().describe('true: it closes cases, and they are no longer rejected'),
      false,
      'definition of the format',
    ),
    'run-by': runBy,
    'by-hour': paceByHour.optional(),
    handover: handover.optional(),
    jams: jams.optional(),
    breakdowns: breakdowns.optional(),
    planned: planned.optional(),
    'slow-start': slowStart.optional(),
    ...sensed,
    'right-of-way': rightOfWay.optional(),
    ...sideBySide,
    to: passesTo.optional(),
  })
  .describe('a station')

export type StationKeys = z.output<typeof station>
