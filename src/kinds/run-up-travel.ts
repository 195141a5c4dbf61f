/** Travel of a belt that does not come to its speed at once. */
import type { Clock } from '../engine/clock.js'
import { type DriveKeys, runUpOf } from './run-up.js'
import { Travel } from './travel.js'

/** Stands for what a start from rest costs, and then runs at its speed. Apart from `Travel`, whose methods must stay as short as they are. */
class RunUpTravel extends Travel {
  constructor(
    clock: Clock,
    usual: number,
    private readonly keys: DriveKeys,
  ) {
    super(clock, usual)
  }

  override now(): number {
    return this.isRunning && this.clock.now > this.since ? super.now() : this.at
  }

  override keepTo(ahead: { pace: number }): boolean {
    const startsAt = this.since
    const isOther = super.keepTo(ahead)
    if (isOther && this.isRunning) this.since = Math.max(startsAt, this.since)
    return isOther
  }

  override start(): void {
    if (this.isRunning) return
    super.start()
    this.since += runUpOf(this.keys, this.full)
  }
}

/** Travel of belts with these keys, whose usual speed is `usual`, m/s. */
export const travelOf = (clock: Clock, usual: number, keys: DriveKeys): Travel =>
  keys.acceleration === undefined ? new Travel(clock, usual) : new RunUpTravel(clock, usual, keys)
