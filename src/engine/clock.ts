/** The event clock: one pending time per actor; the loop takes the earliest, lets it act, and repeats. */
import { unset } from './unset.js'

/** Something that acts at its pending time and then sets the next one. */
export interface Actor {
  readonly label: string
  /** Its pending time has come: `Clock.now`. It must move that time on, or events repeat without time passing. */
  act(): void
}

/** Nothing pending. */
export const never = Infinity

/** Events at one instant, per actor, before the loop is taken to be stuck. */
const mostAtOneInstant = 100_000

/** Events keep happening without time passing: a fault of the model, with the actors that repeat. */
export class StuckClock extends Error {
  constructor(
    readonly now: number,
    readonly labels: readonly string[],
  ) {
    super(`time stands still at ${now} s: ${labels.join(', ')} act again and again`)
    this.name = 'StuckClock'
  }
}

/** Slots whose earliest is remembered together: a power of two. */
const blockBits = 3
const blockSize = 2 ** blockBits

/**
 * Pending times in one typed array. Simultaneous events have one order: the actor added first acts first. They
 * are simultaneous where their times are the same number: of two that rounding keeps apart the smaller is first, for a tolerance
 * would be no order (within it a meets b and b meets c, but a does not meet c), and a run that is cut between the two would see another one. A
 * scan finds the earliest; for the dozen actors of a line it is faster than a heap and allocates nothing. It reads only blocks of
 * slots in which a time was set since, so that a long line does not pay for all its actors with each event.
 */
export class Clock {
  /** The instant, s. */
  now = unset
  /** Events since `reset`. */
  events = 0
  /** After an actor of a slot before `watched` has acted, `ahead` may go on by itself, no further than the end of the run, and move `now` on. */
  watched = 0
  ahead: { workAhead(end: number): void } | null = null
  /** Pending time of each slot. */
  times = new Float64Array(0)
  /** By block: whether a time was set in it since it was read, its earliest time, and the slot of that. */
  private isStale = new Uint8Array(0)
  private earliestOf = new Float64Array(0)
  private firstOf = new Uint32Array(0)
  private readonly actors: Actor[] = []

  constructor() {
    this.reset()
  }

  /** Adds an actor with nothing pending; returns its slot. Earlier slots act first among equals. */
  add(actor: Actor): number {
    const slot = this.actors.push(actor) - 1
    const blocks = (slot >> blockBits) + 1
    this.times = new Float64Array(blocks * blockSize).fill(never)
    this.isStale = new Uint8Array(blocks).fill(1)
    this.earliestOf = new Float64Array(blocks)
    this.firstOf = new Uint32Array(blocks)
    return slot
  }

  /** Actors so far: the slot of the next. */
  get joined(): number {
    return this.actors.length
  }

  /** Sets the pending time of a slot: not before now; `never` for none. */
  set(slot: number, time: number): void {
    this.times[slot] = time
    this.changed(slot)
  }

  /** The pending time of a slot has been set in `times`, which allocates nothing, whereas a time handed to `set` may be. */
  changed(slot: number): void {
    this.isStale[slot >> blockBits] = 1
  }

  /** Back to time 0 with nothing pending. */
  reset(): void {
    this.now = 0
    this.events = 0
    this.times.fill(never)
    this.isStale.fill(1)
  }

  /** Runs every event up to and including `end`, then stands at `end`. Throws `StuckClock`. */
  run(end: number): void {
    const { times, actors } = this
    const count = actors.length
    let atOneInstant = 0
    for (;;) {
      const slot = this.earliest()
      const time = times[slot]!
      if (!(time <= end)) break
      if (time > this.now) {
        this.now = time
        atOneInstant = 0
      } else if (++atOneInstant > mostAtOneInstant * count) throw this.stuck(slot)
      this.events++
      actors[slot]!.act()
      if (slot < this.watched) this.ahead!.workAhead(end)
    }
    this.now = end
  }

  /**
   * The slot whose time is the earliest. A method of its own: the loop of `run` may be compiled while it runs, and a time that
   * such a loop carries along was then allocated with each event.
   */
  private earliest(): number {
    const { times, isStale, earliestOf, firstOf } = this
    let slot = 0
    let earliest = never
    for (let block = 0; block < isStale.length; block++) {
      if (isStale[block] === 1) {
        isStale[block] = 0
        let first = block << blockBits
        let firstTime = times[first]!
        for (let index = first + 1; index < (block + 1) << blockBits; index++) {
          const time = times[index]!
          if (time < firstTime) {
            firstTime = time
            first = index
          }
        }
        earliestOf[block] = firstTime
        firstOf[block] = first
      }
      if (earliestOf[block]! < earliest) {
        earliest = earliestOf[block]!
        slot = firstOf[block]!
      }
    }
    return slot
  }

  private stuck(slot: number): StuckClock {
    const labels = new Set<string>([this.actors[slot]!.label])
    for (const [index, actor] of this.actors.entries())
      if (this.times[index]! <= this.now) labels.add(actor.label)
    return new StuckClock(this.now, [...labels])
  }
}
