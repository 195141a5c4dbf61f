/** Keys of sensors on conveyors that stop a piece and start it again. */
import * as z from 'zod'
import { name, quantity } from './kit.js'

const sensor = (what: string) =>
  z
    .strictObject({
      full: name
        .optional()
        .describe('a conveyor whose sensor must see a case all the time, moving or stopped'),
      clear: name.optional().describe('instead of `full`: a conveyor whose sensor must see no case'),
      at: quantity(
        'length',
        'distance of the sensor from the end of the conveyor (default: one length of the longest case after its entrance, where cases still on the piece before cannot cover it)',
      ).optional(),
      for: quantity('time', 'for how long without interruption, so that passing cases do not count'),
    })
    .describe(what)

/** Keys of a piece that sensors stop and start. */
export const sensed = {
  'stops-when': sensor('the piece stops as soon as this is true; cases in it wait').optional(),
  'starts-when': sensor(
    'it starts again as soon as this is true (default: when `stops-when` is no longer true)',
  ).optional(),
  restart: quantity('time', 'delay from then until it runs, for run-up (default: 0 s)').optional(),
}

export type SensorKeys = z.output<ReturnType<typeof sensor>>
