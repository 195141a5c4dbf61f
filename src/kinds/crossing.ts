/**
 * What belts do while they hold the tail of a case that they have passed on: they stand while it stands, and run while it runs;
 * where it goes slower than they do, they go on at its pace from when the case behind touches it. The rules are those of
 * `line/tail`.
 */
import { never } from '../engine/clock.js'
import { unset } from '../engine/unset.js'
import type { Floor } from '../line/floor.js'
import { Tail } from '../line/tail.js'
import type { Unit } from '../line/unit.js'
import { hair } from './travel.js'

/** Belts that wait again for the same case do so no shorter, s: a look each nanosecond would take minutes for a shift. */
const shortest = 0.001

export class Crossing {
  /** The belts hold a tail, as far as was looked; when it will have crossed is in `endAt`. */
  isOn = false
  /** The case ahead stands, so the belts must. */
  stands = false
  /** When to look again, s. */
  nextAt = never
  /** When the tail will have crossed if nothing changes, s; `never` while that is not known. */
  endAt = unset
  /** Fastest that the belts may run, m/s; infinite where nothing is near. */
  pace = Infinity
  /** The case ahead goes slower than the belts: whoever comes behind it may touch it. */
  isSlow = false
  /** Told before it looks: from the next case on the belts to their end, m. */
  behind = unset
  /** Somebody waits until the tail has crossed: it is looked at again then. */
  isAwaited = false
  private readonly tail = new Tail()
  /** Where the case that is passed on stood last, m: at first where it left. */
  private stoodAt = unset
  /** It was taken to wait until those ahead let it go on to the end without a stop. */
  private waits = false
  /** Of that case, m. */
  length = unset
  /** Of the drive of the belts now, m/s. */
  speed = unset

  constructor(
    private readonly floor: Floor,
    private readonly unit: () => Unit,
    /** Of the belts, m/s. */
    private readonly usual: number,
  ) {
    this.speed = usual
  }

  reset(): void {
    this.speed = this.usual
    this.isOn = false
    this.stands = false
    this.nextAt = never
    this.endAt = 0
    this.isAwaited = false
    this.pace = Infinity
    this.isSlow = false
    this.behind = Infinity
  }

  /** A case has been passed on just now, whose length is in `length`: `look` is to follow. */
  begin(): void {
    this.tail.distance = this.length
    this.stoodAt = 0
    this.waits = false
    this.endAt = never
    this.isOn = true
    this.isAwaited = false
  }

  /** The belts stop for a cause of their own: what happens ahead until they run again is not told. */
  forget(): void {
    this.endAt = never
  }

  /** The belts may hold a tail still. */
  get mayHold(): boolean {
    return this.isOn && !(this.endAt < this.floor.clock.now)
  }

  /** Somebody waits for a tail that has not crossed, as far as was looked. */
  get isWaitedOut(): boolean {
    return this.isOn && this.isAwaited
  }

  /** Asks the piece ahead how the case goes on. */
  look(): void {
    if (!this.isOn) return
    const { now } = this.floor.clock
    this.nextAt = never
    this.stands = false
    this.isSlow = false
    this.pace = Infinity
    // what would have held it up before that has been told, and nothing that happens later can
    if (this.endAt < now) {
      this.isOn = false
      return
    }
    const { tail } = this
    const unit = this.unit()
    unit.next.follow(tail, unit)
    this.endAt = tail.reach > tail.distance - hair ? tail.reachAt : never
    if (tail.gone > tail.distance - hair || this.endAt <= now) {
      this.isOn = false
      return
    }
    // reached by running to the last, so this is when it moves on, or has moved on
    const startAt = tail.reachAt - (tail.reach - tail.gone) / tail.speed
    // not a hair earlier, whoever looks: all that follows hangs on the instant at which the belts stopped
    if (tail.reachAt <= now || tail.reach <= this.stoodAt + hair) {
      this.stands = true
      this.stoodAt = tail.reach
    } else if (startAt > now + hair) {
      this.standUntil(startAt)
    } else {
      if (this.endAt === never) this.nextAt = tail.reachAt
      if (tail.speed < this.speed) this.keepOff()
    }
    if (this.isAwaited) this.nextAt = Math.min(this.nextAt, this.endAt)
  }

  /** One that is held up later on its way waits for that again and again, however short it is. */
  private standUntil(startAt: number): void {
    this.stands = true
    this.nextAt = this.waits ? Math.max(startAt, this.floor.clock.now + shortest) : startAt
    this.waits = true
  }

  /** Where the tail goes slower than the belts: when the case behind touches it, and from then on its pace. */
  private keepOff(): void {
    const { tail } = this
    this.isSlow = true
    const apart = this.behind - (tail.distance - tail.gone)
    if (apart > hair) {
      const touchesAt = this.floor.clock.now + apart / (this.speed - tail.speed)
      if (touchesAt < tail.reachAt) this.nextAt = Math.min(this.nextAt, touchesAt)
    } else {
      this.pace = tail.speed
      this.nextAt = tail.reachAt
    }
  }
}
