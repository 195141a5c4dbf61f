/** Keys of sensors on conveyors that stop a piece and start it again. */
import * as z from 'zod'
import { name, quantity } from './kit.js'

const sensor = (what: string) =>
  z
    .strictObject({
      full: name
        .optional()
        .describe('a conveyor: its sensor must see a case without a break, moving or standing'),
      clear: name.optional().describe('in place of `full`: a conveyor whose sensor must see none'),
      at: quantity(
        'length',
        'place of the sensor, from the end of that conveyor back; when not given, the longest case behind its entrance, where nothing that still lies on the piece before can cover it',
      ).optional(),
      for: quantity('time', 'how long without a break, so that cases that pass do not count'),
    })
    .describe(what)

/** Keys of a piece that sensors stop and start. */
export const sensed = {
  'stops-when': sensor('the piece stands as soon as this holds, and what is in hand waits').optional(),
  'starts-when': sensor(
    'it runs again once this holds; once `stops-when` does not, when not given',
  ).optional(),
  restart: quantity('time', 'from then until it runs: running up; 0 s when not given').optional(),
}

export type SensorKeys = z.output<ReturnType<typeof sensor>>
