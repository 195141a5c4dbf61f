/** Keys of `slow-start`: a piece that runs slower for a while after it stood long. */
import * as z from 'zod'
import { assume, quantity } from './kit.js'

export const slowStart = z
  .strictObject({
    after: quantity(
      'time',
      'a stop, break or planned work that lasts at least so long is followed by a slow start; being blocked or having nothing to do is none',
      { above: 0 },
    ),
    at: quantity('share', 'share of its speed at which it works then; a station takes that much longer', {
      from: 0.01,
      to: 1,
    }),
    for: quantity('time', 'how long, while it does not stand', { above: 0 }),
    'at-shift-start': assume(z.boolean().describe('true: each shift begins so as well'), false),
  })
  .describe('it works slower for a while after it stood long')

export type SlowStartKeys = z.output<typeof slowStart>
