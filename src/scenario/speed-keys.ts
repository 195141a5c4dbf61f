/** Keys of `speeds`: steps of the speed of a drive by how full a conveyor is. */
import * as z from 'zod'
import { name, quantity, share } from './kit.js'

export const speeds = z
  .array(
    z.strictObject({
      of: name.describe(
        'the conveyor whose level is measured: the share of its length taken by cases and the gaps kept between them',
      ),
      above: share('level above which the drive runs at this speed'),
      at: quantity('speed', 'the speed; for a sealer at most the rating of its heads', { above: 0 }),
      'back-below': share(
        'level below which the drive returns to its usual speed (default: 10 percentage points under `above`; common practice, no source)',
      ).optional(),
    }),
  )
  .min(1)
  .max(10)
  .describe(
    'other speeds by level; if several apply the last one is used, and if none applies the usual speed',
  )

export type SpeedStep = z.output<typeof speeds>[number]
