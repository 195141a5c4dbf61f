/** A piece of equipment in a spell in which nothing disturbs it, and whoever works it ahead of the clock books what it did: see `kinds/row`. */
import { never } from '../engine/clock.js'
import { unset } from '../engine/unset.js'
import type { Did } from './did.js'
import type { Feeder } from './handshake.js'
import { Joint } from './joint.js'
import { State } from './states.js'

/** A lower part of `Equipment`, which is the only class that is made of it. */
export abstract class Undisturbed extends Joint {
  /** Since when its time has not been booked, as the spell began, s. */
  worksFrom = unset

  /** Its breakdowns hang on its running time. */
  get countsRunning(): boolean {
    return this.breakdowns?.counts(State.working) === true
  }

  /** Running time until it breaks down, as of `worksFrom`, s. */
  get runningLeft(): number {
    return this.breakdowns?.left ?? never
  }

  /** It does not break down before this, s. */
  get soundUntil(): number {
    if (!this.countsRunning) return this.runningLeft
    return (this.state === State.working ? this.stateSince : this.floor.clock.now) + this.runningLeft
  }

  /** Nothing disturbs it from now; its cases come from `from`. What it works is booked when that ends. */
  calmBegins(from: Feeder): void {
    const { now } = this.floor.clock
    this.worksFrom = now
    if (this.countsRunning && this.state === State.working && this.lapsesAt >= now)
      this.worksFrom = this.stateSince
    else {
      this.bookState(this.lapsesAt < now ? State.waiting : this.state)
      this.lapsesAt = never
      this.bookState(this.state)
    }
    this.owed = 0
    this.lastFrom = from
    this.isCarriedTo = from.carries
  }

  /** That is over at `until`, s, and it did this. */
  calmEnds(until: number, did: Did): void {
    // of one that never waits, or takes no time, what is left of the sums may be a rounding below none
    const waited = Math.max(did.waiting, 0)
    this.stateTimes[State.waiting]! += waited
    this.stateTimes[State.blocked]! += did.blocked
    this.stateTimes[State.working]! += Math.max(until - this.worksFrom - waited - did.blocked - did.other, 0)
    this.state = State.waiting
    this.stateSince = this.floor.clock.now
    this.lapsesAt = never
    if (!this.countsRunning) return
    this.breakdowns!.left = did.left
    if (!(did.worksSince < until)) return
    // it is at work still: that is booked, and taken off what is left, when it ends
    this.state = State.working
    this.stateSince = did.worksSince
    this.stateTimes[State.working]! -= until - did.worksSince
  }

  /** Events have it again. */
  goesOnByEvents(): void {
    this.refresh()
  }
}
