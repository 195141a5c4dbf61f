/** Arrivals as they were recorded, replayed alike in each shift: `log`. */
import { never } from '../engine/clock.js'
import type { RecordedLog } from '../scenario/arrivals.js'
import { fromMix, Pace, Time } from './pace.js'

/** A case whose time has passed, in a break or while the one before it waited, comes as soon as it may. */
export class LoggedPace extends Pace {
  override readonly batch = 1
  override readonly mayBeLate = true
  private row = 0

  constructor(private readonly log: RecordedLog) {
    super()
  }

  override reset(): void {
    this.row = 0
  }

  override next(): void {
    const { times } = this.log
    this.times[Time.due] = this.row < times.length ? Math.max(times[this.row]!, this.times[Time.now]!) : never
  }

  override bring(): number {
    const { kinds } = this.log
    const kind = kinds === null ? fromMix : kinds[this.row]!
    this.row++
    return kind
  }

  override afterBreak(due: number, _began: number, now: number): number {
    return Math.max(due, now)
  }
}
