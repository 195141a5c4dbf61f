/** Arrivals by the time between them, which is the same law all shift long: `time-between` and `rate`. */
import type { Law } from '../engine/variates.js'
import type { Draw, Floor } from './floor.js'
import { fromMix, type Pace } from './pace.js'

export class SteadyPace implements Pace {
  readonly mayBeLate = false
  private readonly between: Draw

  constructor(
    floor: Floor,
    owner: string,
    law: Law,
    readonly batch: number,
  ) {
    this.between = floor.draws(owner, 'time between', law)
  }

  clear(): void {}

  reset(): void {}

  next(now: number): number {
    return now + this.between.draw()
  }

  bring(): number {
    return fromMix
  }

  /** A break keeps what is left of the interval. */
  afterBreak(due: number, began: number, now: number): number {
    return due + (now - began)
  }

  measures(): [] {
    return []
  }
}
