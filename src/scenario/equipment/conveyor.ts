/** Keys of `type: conveyor`. */
import { z } from 'zod'
import { assume, choice, quantity } from '../kit.js'
import { breakdowns, passesTo } from './common.js'

export const conveyor = z
  .strictObject({
    type: z.literal('conveyor').describe('carries cases from one place to the next'),
    carries: assume(
      choice(
        ['accumulating', 'belt'],
        'accumulating: cases close up behind one that stands; belt: all stop together',
      ),
      'accumulating',
      'definition of the format',
    ),
    length: quantity('length', 'length along the travel', { above: 0, to: 2000 }),
    speed: assume(
      quantity('speed', 'speed of the drive', { above: 0 }),
      '18 m/min',
      'common practice, no source',
    ),
    spacing: assume(
      quantity('length', 'room kept between cases that stand or ride behind one another'),
      '20 mm',
      'from memory, low confidence',
    ),
    'start-delay': assume(
      quantity('time', 'accumulating: time until a case follows the one ahead (the start wave)'),
      '0 s',
      'definition of the format',
    ),
    breakdowns: breakdowns.optional(),
    to: passesTo.optional(),
  })
  .describe('a conveyor')
