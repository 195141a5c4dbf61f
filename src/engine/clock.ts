/** The event clock: one pending time per actor; the loop takes the earliest, lets it act, and repeats. */

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

/**
 * Pending times in one typed array. Simultaneous events have one order: the actor added first acts first. A
 * scan finds the earliest; for the dozen actors of a line it is faster than a heap and allocates nothing.
 */
export class Clock {
  /** The instant, s. */
  now = 0
  /** Events since `reset`. */
  events = 0
  private times = new Float64Array(0)
  private readonly actors: Actor[] = []

  /** Adds an actor with nothing pending; returns its slot. Earlier slots act first among equals. */
  add(actor: Actor): number {
    const slot = this.actors.push(actor) - 1
    this.times = new Float64Array(slot + 1).fill(never)
    return slot
  }

  /** Sets the pending time of a slot: not before now; `never` for none. */
  set(slot: number, time: number): void {
    this.times[slot] = time
  }

  /** As `set`, for a time that may have passed: then it is now. */
  setFromNow(slot: number, time: number): void {
    this.times[slot] = Math.max(time, this.now)
  }

  /** Back to time 0 with nothing pending. */
  reset(): void {
    this.now = 0
    this.events = 0
    this.times.fill(never)
  }

  /** Runs every event up to and including `end`, then stands at `end`. Throws `StuckClock`. */
  run(end: number): void {
    const { times, actors } = this
    const count = actors.length
    let atOneInstant = 0
    for (;;) {
      let slot = 0
      let earliest = times[0]!
      for (let index = 1; index < count; index++) {
        const time = times[index]!
        if (time < earliest) {
          earliest = time
          slot = index
        }
      }
      if (!(earliest <= end)) break
      if (earliest > this.now) {
        this.now = earliest
        atOneInstant = 0
      } else if (++atOneInstant > mostAtOneInstant * count) throw this.stuck(slot)
      this.events++
      actors[slot]!.act()
    }
    this.now = end
  }

  private stuck(slot: number): StuckClock {
    const labels = new Set<string>([this.actors[slot]!.label])
    for (const [index, actor] of this.actors.entries())
      if (this.times[index]! <= this.now) labels.add(actor.label)
    return new StuckClock(this.now, [...labels])
  }
}
