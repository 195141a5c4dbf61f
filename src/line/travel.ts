/** Belt travel: how far a belt has run since the start of the shift; it stands and runs, and what is on it moves along. */
import { type Clock, never } from '../engine/clock.js'

/** Rounding of a time into a travel, m: a travel that was to be reached now has been reached within this. */
export const hair = 1e-9

// places in `numbers`: belt travel, m, at the instant since which it runs or stands, s
const at = 0
const since = 1

export class Travel {
  private readonly numbers = new Float64Array(2)
  isRunning = true

  constructor(
    private readonly clock: Clock,
    readonly speed: number,
  ) {}

  reset(): void {
    this.numbers[at] = 0
    this.numbers[since] = 0
    this.isRunning = true
  }

  /** Travel now, m. */
  now(): number {
    return this.isRunning
      ? this.numbers[at]! + this.speed * (this.clock.now - this.numbers[since]!)
      : this.numbers[at]!
  }

  /** When the belt will have run `travel` metres; `never` while it stands. */
  when(travel: number): number {
    return this.isRunning ? this.numbers[since]! + (travel - this.numbers[at]!) / this.speed : never
  }

  stop(): void {
    this.numbers[at] = this.now()
    this.numbers[since] = this.clock.now
    this.isRunning = false
  }

  start(): void {
    if (this.isRunning) return
    this.numbers[since] = this.clock.now
    this.isRunning = true
  }
}
