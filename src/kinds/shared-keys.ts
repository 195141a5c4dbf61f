/** Keys that several kinds of equipment share. */
import * as z from 'zod'
import { timeDistribution } from '../scenario/distribution.js'
import { assume, choice, name, quantity, whole } from '../scenario/kit.js'

export { planned } from '../scenario/planned-keys.js'
export { sensed } from '../scenario/sensor-keys.js'
export { slowStart } from '../scenario/slow-start-keys.js'

/**
 * A key `to`, or one whose name ends in `-to`, says where cases go: `scenario/routes` reads every way of a line off such
 * keys, whatever kind of equipment has them.
 */
export const passesTo = name.describe(
  'name of the piece that takes the cases, or exit (default: the next entry)',
)

export const rightOfWay = name.describe(
  'name of the piece that goes first if several wait to pass cases to this one',
)

export const runBy = assume(
  choice(['machine', 'people'], 'people stop at breaks; machines continue'),
  'machine',
  'definition of the format',
)

export const breakdowns = z
  .strictObject({
    after: timeDistribution(
      'time from one repair to the next breakdown; a number of stops per shift counts calendar time, unless `counted-in` says otherwise',
      { above: 0, isPerShift: true },
    ),
    'counted-in': assume(
      choice(
        ['running-time', 'calendar-time'],
        'running-time: the clock counts while the machine works; calendar-time: always',
      ),
      'running-time',
      'common practice, no source',
    ),
    repair: timeDistribution('time to repair, once somebody is there'),
  })
  .describe('failures of the drive: cases in the machine wait and continue after the repair')

export const acceleration = quantity(
  'acceleration',
  'even acceleration of its drive from rest: each start costs speed / (2 x acceleration), and what rides stands until then; it stops at once, and so do changes of speed (where it slows down evenly too, give half). Not given: it is at its speed at once',
  { above: 0 },
)

/** Most pieces that stand side by side under one name. */
const mostSideBySide = 20

/** Keys of a piece that stands several times: `scenario/side-by-side` makes pieces of them. */
export const sideBySide = {
  'side-by-side': whole(
    'number of pieces like this side by side, after a divert of their own; they merge in the next piece',
    1,
    mostSideBySide,
  ).optional(),
  divert: z
    .strictObject({
      rule: assume(
        choice(
          ['shortest', 'alternate'],
          'shortest: to the free piece with the fewest cases; alternate: strictly in turn',
        ),
        'shortest',
        'definition of the format',
      ),
      time: assume(timeDistribution('time for one case in the divert'), '0 s', 'definition of the format'),
    })
    .optional()
    .describe('how cases are divided among pieces side by side'),
}
export const paceByHour = z
  .array(quantity('share', 'pace in an hour of the shift', { above: 0, to: 3 }))
  .min(1)
  .max(1000)
  .describe(
    'run by people: their pace in each hour of the shift; the last value continues to the end. The time per case is divided by it',
  )

export const handover = quantity(
  'time',
  'run by people: nobody works here for this time at the start and at the end of each shift. It counts as a break of the piece, not of the shift',
  { above: 0 },
)
