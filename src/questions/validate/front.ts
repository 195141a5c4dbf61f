/** What the page of a validation shows first: good cases of plant and model, the gap between them, and the days. */
import { counted, grouped, percentText } from '../../report/format.js'
import type { Shown } from '../../report/front.js'
import type { ValidateResult } from './document.js'
import { signedPercent, verdictTones } from './words.js'

export function validateFront({ good, days, ranks, margin }: ValidateResult): Shown {
  const { share } = good
  return {
    tiles: [
      { label: 'Plant', value: grouped(good.plant, 0), unit: 'good cases a day' },
      { label: 'Model', value: grouped(good.model, 0), unit: 'good cases a day' },
      {
        label: 'Model less plant',
        value: signedPercent(share.mean),
        interval:
          share.low === null || share.high === null
            ? 'no interval'
            : `(${signedPercent(share.low)} to ${signedPercent(share.high)})`,
        note: `margin ${percentText(margin)}`,
        tone: verdictTones[good.verdict],
      },
      {
        label: `Days where ${percentText(ranks.share)} of their runs lie`,
        value: grouped(ranks.inside, 0),
        unit: `of ${counted(days.length, 'day')}`,
      },
    ],
    told: [],
    picture: 'days',
  }
}
