/** What stands on a bed behind a tail across its end: how that one goes on, and when those behind can follow it. */

import { never } from '../../engine/clock.js'
import { unset } from '../../engine/unset.js'
import { hair } from '../travel.js'
import { Conveyor } from './conveyor.js'

/** A lower part of `AccumulatingConveyor`, as `Bed` is. */
export abstract class Following extends Conveyor {
  /** Of its drive now, m/s. */
  speed = unset
  /** Start delay at that speed, s. */
  protected delay = unset
  /** When its drive has run up after the last stop, s: before that nothing moves. */
  movesAt = unset
  firstOn = 0
  /** The instant that counts, s: where it stands, the one since which it does. */
  protected now = unset
  /** The one that left last has gone onto another conveyor or belts, and may lie across the end: not onto a place, nor out of the line by hand. */
  hasTail = false
  /** When the tail across the end will move on, s, as was foretold when it was looked at last, and how far it had come, m. */
  protected startsAt = never
  private startsFrom = unset
  /** Where it stood last, as it moved on, m: those behind had closed up to it. */
  protected stoodAt = unset
  /** Rings over the running number of a case: see `Bed`. */
  protected abstract readonly mask: number
  protected abstract readonly left: Float64Array
  protected abstract readonly pitches: Float64Array

  override empty(): void {
    this.firstOn = 0
    this.movesAt = 0
    this.hasTail = false
    this.forgetTail()
    super.empty()
  }

  /** Finds the instant at which cases are where they are now. */
  protected findNow(): void {
    this.now = this.unit.frozen ? this.unit.frozenAt : Math.max(this.floor.clock.now, this.movesAt)
  }

  /** Asks how the one that left last goes on, as far as its pitch, and notes where it stood. */
  protected askAhead(): void {
    const { tail, unit } = this
    this.findNow()
    tail.distance = this.pitches[(this.firstOn - 1) & this.mask]!
    unit.next.follow(tail, unit)
    this.noteTail()
  }

  /** Those behind the tail come later than it lets them: they start later, or their drive is slower than that which draws it off. */
  private get trails(): boolean {
    return this.delay > 0 || this.tail.speed > this.speed
  }

  /**
   * A tail that moves on is followed no faster than by the drive here, from where those behind had closed up to it: it is as if it had left so
   * late that at the speed here it has come as far without a stop. That it will move on later is noted when it has, for until then
   * it may turn out otherwise; and that it has crossed where those behind start later than it lets them.
   */
  protected noteTail(): void {
    const { tail, speed, now } = this
    this.noteStart()
    if (!this.trails) return
    if (tail.gone >= tail.distance - hair) {
      if (this.delay > 0 && tail.reachAt <= now)
        this.noteLeft(tail.reachAt - tail.distance / speed, tail.distance)
      return
    }
    // one that stands is closed up to, and one that is slower holds up by itself
    if (tail.reach <= tail.gone + hair || tail.speed < speed) return
    const startsAt = tail.reachAt - (tail.reach - tail.gone) / tail.speed
    if (startsAt <= now) {
      this.noteLeft(now - tail.gone / speed, tail.gone)
      return
    }
    this.startsAt = startsAt
    this.startsFrom = tail.gone
  }

  /** The tail has moved on since, where that was foretold. */
  protected noteStart(): void {
    if (this.startsAt <= this.now)
      this.noteLeft(this.startsAt - this.startsFrom / this.speed, this.startsFrom)
    this.startsAt = never
  }

  /** It is as if it had left then, and those behind are closed up to it where it came `from`. */
  private noteLeft(left: number, from: number): void {
    const place = (this.firstOn - 1) & this.mask
    if (left <= this.left[place]! + hair) return
    this.left[place] = left
    this.stoodAt = from
  }

  /** Another one leaves, of which nothing is known. */
  protected forgetTail(): void {
    this.startsAt = never
    this.stoodAt = 0
  }

  /** When the one that left last did so, s, to those that follow it. */
  protected leftAt(): number {
    const left = this.left[(this.firstOn - 1) & this.mask]!
    return this.startsAt === never ? left : Math.max(left, this.startsAt - this.startsFrom / this.speed)
  }
}
