/** Arrivals as they were recorded, replayed alike in each shift: `log`. */
import { never } from '../engine/clock.js'
import type { RecordedLog } from '../scenario/arrivals.js'
import { fromMix, type Pace } from './pace.js'

/** A case whose time has passed, in a break or while the one before it waited, comes as soon as it may. */
export class LoggedPace implements Pace {
  readonly batch = 1
  readonly mayBeLate = true
  private row = 0

  constructor(private readonly log: RecordedLog) {}

  clear(): void {}

  reset(): void {
    this.row = 0
  }

  next(now: number): number {
    return this.row < this.log.times.length ? Math.max(this.log.times[this.row]!, now) : never
  }

  bring(): number {
    const { kinds } = this.log
    const kind = kinds === null ? fromMix : kinds[this.row]!
    this.row++
    return kind
  }

  afterBreak(due: number, _began: number, now: number): number {
    return Math.max(due, now)
  }

  measures(): [] {
    return []
  }
}
