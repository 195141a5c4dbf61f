/** Arrivals by the time between them, which is the same law all shift long: `time-between` and `rate`. */

import type { Draw } from '../engine/draw.js'
import { unset } from '../engine/unset.js'
import type { Distribution } from '../scenario/law.js'
import type { Floor } from './floor.js'
import { Pace, Time } from './pace.js'

/** Arrivals closer than this to their place in an undisturbed row are in that place, s: sums of intervals drift by rounding. */
const hair = 1e-6

export class SteadyPace extends Pace {
  private readonly between: Draw
  /** Evenly spaced: arrivals since `rowBegan` that nothing has held up. */
  private inRow = 0
  private rowBegan = unset

  constructor(
    floor: Floor,
    owner: string,
    law: Distribution,
    override readonly batch: number,
    /** Evenly spaced arrivals a second; null where the law says more. */
    private readonly perSecond: number | null,
  ) {
    super()
    this.between = floor.intervals(owner, 'time between', law, batch)
  }

  override reset(): void {
    this.inRow = 0
    this.rowBegan = 0
  }

  override next(): void {
    const now = this.times[Time.now]!
    this.between.next()
    if (this.perSecond === null) {
      this.times[Time.due] = now + this.between.value
      return
    }
    const place = this.rowBegan + this.inRow / this.perSecond
    if (Math.abs(now - place) > hair) {
      this.rowBegan = now
      this.inRow = 0
    }
    this.inRow++
    this.times[Time.due] = this.rowBegan + this.inRow / this.perSecond
  }
}
