/** Steps of the speed of a drive by how full a conveyor is: the keys. */
import * as z from 'zod'
import { name, quantity } from './kit.js'

/** By how much the level must fall before a step is left again, as a share of the conveyor: 10 points, common practice, no source. */
const usualFall = 0.1

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

/** The level under which a step is left again. */
export const backBelow = ({ above, 'back-below': given }: SpeedStep): number =>
  given ?? Math.max(0, above - usualFall)
