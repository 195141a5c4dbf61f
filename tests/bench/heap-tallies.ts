/** What the line in the style of textbooks has in common: cases, the handshake between its pieces, and tallies over time. */
import type { Simulation } from './heap.js'

/** A case; lengths in m, times in s. */
export interface Case {
  readonly length: number
  readonly arrivedAt: number
  /** Tape on it, m. */
  tape: number
}

/** Whoever offers cases; it is told of room after a no. */
export interface Giver {
  roomAhead(): void
  /** The case that it passed on last goes on otherwise than was to be expected; who has no belts does not care. */
  tailMoves?(): void
}

export interface Taker {
  /** Takes the case now, or answers false and tells `from` of room later. */
  offer(item: Case, from: Giver): boolean
}

/** A number of cases, averaged over time. */
export class Level {
  private value = 0
  private area = 0
  private since = 0

  constructor(private readonly simulation: Simulation) {}

  change(by: number): void {
    const { now } = this.simulation
    this.area += this.value * (now - this.since)
    this.since = now
    this.value += by
  }

  /** Mean from time 0 to now. */
  mean(): number {
    this.change(0)
    return this.area / this.simulation.now
  }
}

export type State = 'working' | 'waiting' | 'blocked' | 'jam' | 'tape'

/** Time in each state, s. */
export class States {
  readonly times: Record<State, number> = { working: 0, waiting: 0, blocked: 0, jam: 0, tape: 0 }
  private state: State = 'waiting'
  private since = 0
  private lapsesAt = Infinity

  constructor(private readonly simulation: Simulation) {}

  /** Is in `state` from now; from `lapsesAt` it waits instead. */
  enter(state: State, lapsesAt = Infinity): void {
    const { now } = this.simulation
    const until = Math.max(this.since, Math.min(this.lapsesAt, now))
    this.times[this.state] += until - this.since
    this.times.waiting += now - until
    this.since = now
    this.state = state
    this.lapsesAt = lapsesAt
  }

  /** Share of the time from 0 to now in each state. */
  shares(): Record<State, number> {
    this.enter('waiting')
    const shares = { ...this.times }
    for (const state of Object.keys(shares) as State[]) shares[state] /= this.simulation.now
    return shares
  }
}

/** Durations seen one by one: mean, and quantiles from a histogram whose classes are 1 % wide. */
export class Durations {
  count = 0
  private sum = 0
  /** Cases by class, class 0 beginning at `shortest`. */
  private readonly classes: number[] = []
  private readonly shortest = 0.1

  add(time: number): void {
    this.count++
    this.sum += time
    const index = Math.max(0, Math.floor(Math.log(time / this.shortest) * 100))
    while (this.classes.length <= index) this.classes.push(0)
    this.classes[index]!++
  }

  mean(): number {
    return this.sum / this.count
  }

  /** Upper end of the class in which the share `p` is reached; NaN of none. */
  quantile(p: number): number {
    let left = p * this.count
    for (const [index, here] of this.classes.entries()) {
      left -= here
      if (left <= 0) return this.shortest * Math.exp((index + 1) / 100)
    }
    return Number.NaN
  }
}
