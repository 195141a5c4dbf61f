/** Belt travel: how far a belt has run since the start of the shift; it stands and runs, and what is on it moves along. */
import { never } from '../engine/clock.js'

/** Rounding of a time into a travel, m: a travel that was to be reached now has been reached within this. */
export const hair = 1e-9

export class Travel {
  private at = 0
  private since = 0
  isRunning = true

  constructor(readonly speed: number) {}

  reset(): void {
    this.at = 0
    this.since = 0
    this.isRunning = true
  }

  /** Travel now, m. */
  now(now: number): number {
    return this.isRunning ? this.at + this.speed * (now - this.since) : this.at
  }

  /** When the belt will have run `travel` metres; `never` while it stands. */
  when(travel: number): number {
    return this.isRunning ? this.since + (travel - this.at) / this.speed : never
  }

  stop(now: number): void {
    this.at = this.now(now)
    this.since = now
    this.isRunning = false
  }

  start(now: number): void {
    if (this.isRunning) return
    this.since = now
    this.isRunning = true
  }
}
