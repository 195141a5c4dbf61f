/** Belt travel: how far a belt has run since the start of the shift; it stands and runs, and what is on it moves along. */

import { type Clock, never } from '../engine/clock.js'
import { unset } from '../engine/unset.js'

/** Rounding of a time into a travel, m: a travel that was to be reached now has been reached within this. */
export const hair = 1e-9

export class Travel {
  /** Belt travel, m, at the instant since which it runs, s; `never` while it stands. */
  at = unset
  since = unset
  isRunning = true
  /** Speed while it runs, m/s. */
  speed = unset
  /** Speed of its drive, m/s. */
  protected full = unset

  constructor(
    protected readonly clock: Clock,
    private readonly usual: number,
  ) {
    this.speed = usual
    this.full = usual
  }

  reset(): void {
    this.at = 0
    this.full = this.usual
    this.speed = this.full
    this.since = 0
    this.isRunning = true
  }

  /** Travel now, m. */
  now(): number {
    return this.isRunning ? this.at + this.speed * (this.clock.now - this.since) : this.at
  }

  /** When the belt will have run `travel` metres; `never` while it stands. */
  when(travel: number): number {
    // so short that the compiler always dissolves the call: a number handed over or back would be allocated
    return this.since + (travel - this.at) / this.speed
  }

  /** Runs no faster than `ahead` from now on; true where that is another speed than before. */
  keepTo(ahead: { pace: number }): boolean {
    if (this.speed === Math.min(this.full, ahead.pace)) return false
    this.at = this.now()
    if (this.isRunning) this.since = this.clock.now
    this.speed = Math.min(this.full, ahead.pace)
    return true
  }

  /** The drive runs at this speed from now, m/s, as far as `ahead` lets it. */
  runsAt(speed: number, ahead: { pace: number }): void {
    this.full = speed
    this.keepTo(ahead)
  }

  stop(): void {
    this.at = this.now()
    this.since = never
    this.isRunning = false
  }

  start(): void {
    if (this.isRunning) return
    this.since = this.clock.now
    this.isRunning = true
  }
}
