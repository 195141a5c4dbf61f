/** Keys of `speeds`: steps of the speed of a drive by how full a conveyor is. */
import * as z from 'zod'
import { name, quantity } from './kit.js'

export const speeds = z
  .array(
    z.strictObject({
      of: name.describe(
        'the conveyor whose level counts: the share of its length that cases take, with the room kept between them',
      ),
      above: quantity('share', 'the drive runs at this speed once the level is above', { from: 0, to: 1 }),
      at: quantity('speed', 'that speed: of a sealer not above the rating of its heads', { above: 0 }),
      'back-below': quantity(
        'share',
        'until the level is below; 10 points under `above`, when not given (common practice, no source)',
        { from: 0, to: 1 },
      ).optional(),
    }),
  )
  .min(1)
  .max(10)
  .describe(
    'other speeds by level; of several that hold the last one counts, and where none does the usual speed',
  )

export type SpeedStep = z.output<typeof speeds>[number]
