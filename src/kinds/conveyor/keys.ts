/** Keys of `type: conveyor`. */
import * as z from 'zod'
import { jams } from '../../scenario/jam-keys.js'
import { assume, choice, quantity } from '../../scenario/kit.js'
import { speeds } from '../../scenario/speed-keys.js'
import {
  acceleration,
  breakdowns,
  passesTo,
  planned,
  rightOfWay,
  sensed,
  sideBySide,
} from '../shared-keys.js'

export const conveyor = z
  .strictObject({
    type: z.literal('conveyor').describe('carries cases from one place to the next'),
    carries: assume(
      choice(
        ['accumulating', 'belt', 'gravity'],
        'accumulating: cases close up behind a stopped case, also across joints; belt: all cases stop together, also while the tail of a case stopped ahead is on it; gravity: accumulating without a drive',
      ),
      'accumulating',
      'definition of the format',
    ),
    length: quantity('length', 'length along the travel', { above: 0, to: 2000 }),
    speed: assume(
      quantity('speed', 'speed of the drive; for gravity, of the rolling cases', { above: 0 }),
      '18 m/min',
      'common practice, no source',
    ),
    spacing: assume(
      quantity('length', 'gap kept between cases, stopped or moving'),
      '20 mm',
      'from memory, low confidence',
    ),
    'start-delay': assume(
      quantity(
        'time',
        'accumulating and gravity: delay until a case starts after the one ahead (start wave)',
      ),
      '0 s',
      'definition of the format',
    ),
    zone: quantity(
      'length',
      'accumulating: length of a zone; each case takes whole zones, and spacing is not used',
      {
        from: 0.01,
      },
    ).optional(),
    'roller-pitch': quantity('length', 'distance from one roller to the next; only for `check`', {
      above: 0,
      to: 10,
    }).optional(),
    jams: jams.optional(),
    breakdowns: breakdowns.optional(),
    planned: planned.optional(),
    ...sensed,
    speeds: speeds.optional(),
    acceleration: acceleration.optional(),
    'right-of-way': rightOfWay.optional(),
    ...sideBySide,
    to: passesTo.optional(),
  })
  .describe('a conveyor')

export type ConveyorKeys = z.output<typeof conveyor>
