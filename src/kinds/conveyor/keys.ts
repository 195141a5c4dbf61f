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
        'accumulating: cases close up behind one that stands, across joints too; belt: all stop together, also while it holds the tail of a case that stands ahead; gravity: accumulating without a drive',
      ),
      'accumulating',
      'definition of the format',
    ),
    length: quantity('length', 'length along the travel', { above: 0, to: 2000 }),
    speed: assume(
      quantity('speed', 'speed of the drive, or of cases that roll down', { above: 0 }),
      '18 m/min',
      'common practice, no source',
    ),
    spacing: assume(
      quantity('length', 'room kept between cases that stand or ride behind one another'),
      '20 mm',
      'from memory, low confidence',
    ),
    'start-delay': assume(
      quantity('time', 'accumulating and gravity: time until a case follows the one ahead (the start wave)'),
      '0 s',
      'definition of the format',
    ),
    zone: quantity(
      'length',
      'accumulating: length of its zones; each case takes whole ones in place of spacing',
      {
        from: 0.01,
      },
    ).optional(),
    'roller-pitch': quantity('length', 'from one roller to the next; for `check`', {
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
