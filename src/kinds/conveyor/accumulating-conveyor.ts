/** Accumulating conveyor: cases close up behind one that stands, and follow it when it moves again. */

import { never } from '../../engine/clock.js'
import type { CaseIndex } from '../../line/cases.js'
import type { Floor } from '../../line/floor.js'
import { State } from '../../line/states.js'
import { hair } from '../travel.js'
import type { ConveyorKeys } from './keys.js'
import { PacedBed } from './paced-bed.js'

/** The events of a bed of cases that close up: `bed` says where they are. */
export class AccumulatingConveyor extends PacedBed {
  readonly shortest: number
  /** When the first comes to the end, s. */
  due = never
  isBlocked = false
  /** It moves again after a stop, and has not yet offered the case that was refused before. */
  offersAgain = false
  /** Its state while it holds cases and offers none: blocked while the first stands behind one that lies across the end, not yet asked whether it jams. */
  private moving: State = State.working

  constructor(floor: Floor, name: string, keys: ConveyorKeys) {
    super(floor, name, keys)
    // measured as the shortest
    this.shortest = this.need
  }

  override empty(): void {
    this.due = never
    this.wakeAt = never
    this.isBlocked = false
    this.offersAgain = false
    this.moving = State.working
    super.empty()
  }

  override isFull(): boolean {
    return this.reserved + this.shortest > this.length + hair
  }

  override take(item: CaseIndex): boolean {
    const { now } = this.floor.clock
    if (this.unit.frozen) return false
    this.need = this.floor.cases.length[item]!
    this.measure()
    if (this.hasZones ? !this.fits() : !this.unit.isCarriedTo && this.isShut() && !this.fits()) return false
    this.findClear()
    if (this.clearAt > now) {
      if (this.clearAt < this.wakeAt) {
        this.wakeAt = this.clearAt
        this.unit.wake()
      }
      return false
    }
    const number = this.firstOn + this.aboard
    const place = number & this.mask
    const before = (number - 1) & this.mask
    const pitch = this.pitch
    this.items[place] = item
    this.entered[place] = Math.max(now, this.movesAt)
    this.pitches[place] = pitch
    this.pitchTimes[place] = pitch / this.speed
    this.pitchBefore[place] = number > 0 ? this.pitchBefore[before]! + this.pitches[before]! : 0
    this.aboard++
    this.findReserved()
    if (this.aboard === 1) this.findDue()
    this.count(1)
    return true
  }

  /** Whether the case that was measured will lie wholly on the bed of which this is the first part, or with zones on this, while nothing leaves. */
  private fits(): boolean {
    this.tail.room = 0
    if (this.hasZones) this.tail.room = this.length - this.reserved
    else this.addRoom(this.tail)
    return this.need <= this.tail.room + hair
  }

  /** The exit of the bed is shut, of which this may be a part. */
  override isShut(): boolean {
    return this.isBeforePlace ? this.isBlocked : this.unit.next.isShut()
  }

  override hold(isHeld: boolean): void {
    if (isHeld === this.isHeld || this.aboard === 0) return
    const last = (this.firstOn + this.aboard - 1) & this.mask
    this.floor.observer?.tail(this.name, this.items[last]!, isHeld)
    if (isHeld) {
      this.asked = this.firstOn + this.aboard - 1
      this.target = this.pitches[last]!
      this.findReach()
      this.heldAt = this.gone
      this.isHeld = true
      if (this.aboard === 1) {
        // whose tail is held is not at the end, whatever was offered behind one that stands across that
        this.due = never
        this.isBlocked = false
        this.offersAgain = false
        this.moving = State.working
      }
      return
    }
    this.isHeld = false
    this.findNow()
    this.entered[last] = this.now - this.heldAt / this.speed
    if (this.aboard === 1) this.findDue()
    if (this.unit.owes && !this.unit.frozen) this.wakeWhenClear()
  }

  override heedsTail(): boolean {
    return this.hasTail
  }

  /** The case that left last goes on otherwise: so may those behind it, as far as they stand close. */
  override tailMoves(): void {
    if (this.moving === State.blocked) this.findDueBehindTail()
    else {
      this.askAhead()
      if (this.aboard > 0 && !this.isBlocked) this.findDue()
    }
    if (this.unit.owes) this.wakeWhenClear()
    if (this.isPacked()) this.unit.tellBehind()
  }

  /** Cases may stand as far back as its entrance, counting one that stands across its end. */
  private isPacked(): boolean {
    return (
      this.firstOn > 0 && this.reserved + this.pitches[(this.firstOn - 1) & this.mask]! > this.length - hair
    )
  }

  // --- events ---

  /** Those who were told no are to be told when there is room. */
  private wakeWhenClear(): void {
    this.findClear()
    this.wakeAt = Math.max(this.floor.clock.now, this.clearAt)
  }

  /** Finds when the first case comes to the end. */
  findDue(): void {
    const { firstOn: first, mask } = this
    if (this.isHeld && this.aboard === 1) {
      this.due = never
      return
    }
    const free = this.entered[first & mask]! + this.crossing
    if (first === 0) {
      this.due = free
      return
    }
    this.due = Math.max(free, this.leftAt() + this.pitchTimes[(first - 1) & mask]! + this.delay)
  }

  /** The same where the one that left last may stand across the end: found only where cases jam, for the next piece would say no. */
  private findDueBehindTail(): void {
    const { now } = this.floor.clock
    this.askAhead()
    this.findDue()
    if (this.tail.reach < this.tail.distance - hair) this.due = never
    else this.due = Math.max(this.due, this.tail.reachAt + this.delay)
    this.moving = this.due > now + hair ? State.blocked : State.working
  }

  override step(): void {
    const { now } = this.floor.clock
    // one that is offered again stands at the end, though by its drive, which runs up, it would come there later
    if (this.offersAgain || (this.due <= now && !this.isBlocked)) {
      if (this.isBlocked || this.jams === null) this.offerFirst()
      else this.jamOrOffer()
    }
    if (this.wakeAt <= now) {
      this.wakeAt = never
      this.unit.invite()
    }
  }

  /** Cases jam at the end: one that is kept from it comes to it later. */
  private jamOrOffer(): void {
    if (this.hasTail) this.findDueBehindTail()
    if (this.moving === State.working && !this.jamsWith(this.first())) this.offerFirst()
  }

  private offerFirst(): void {
    this.offersAgain = false
    if (this.delay > 0 && this.hasTail) this.askAhead()
    const item = this.first()
    // read before it goes: its number may be used again
    const length = this.floor.cases.length[item]!
    this.isBlocked = !this.unit.next.offer(item, this.unit)
    if (this.isBlocked) return
    this.leftLength = length
    this.jams?.passed()
    const wasPacked = this.isPackedFull()
    this.forgetTail()
    this.left[this.firstOn & this.mask] = Math.max(this.floor.clock.now, this.movesAt)
    this.hasTail = !this.isBeforePlace
    this.goOn()
    this.count(-1)
    if (this.unit.owes) this.wakeWhenClear()
    if (wasPacked) this.unit.tellBehind()
  }

  override first(): CaseIndex {
    return this.items[this.firstOn & this.mask]!
  }

  /** It stood at the end while the conveyor stood: to those behind it is as if it had left when that began, for all is shifted in time then. */
  protected override takeOutFirst(): void {
    this.left[this.firstOn & this.mask] = this.unit.frozenAt
    this.forgetTail()
    this.hasTail = false
    this.leftLength = 0
    this.goOn()
  }

  /** Standing still shifts the whole picture in time. */
  private shift(passed: number): void {
    const from = Math.max(0, this.firstOn + this.aboard - this.items.length)
    for (let number = from; number < this.firstOn + this.aboard; number++) {
      this.entered[number & this.mask]! += passed
      this.left[number & this.mask]! += passed
    }
    this.due += passed
  }

  /** The next case is the first. */
  private goOn(): void {
    this.firstOn++
    this.aboard--
    this.findReserved()
    if (this.aboard > 0) this.findDue()
    else this.due = never
  }

  override roomAhead(): void {
    if (this.isBlocked && !this.isStillBehind()) this.offerFirst()
  }

  /** There is room ahead before the first has come there from behind the tail: it is offered as soon as it has. */
  private isStillBehind(): boolean {
    if (!this.hasTail || this.offersAgain) return false
    if (this.delay > 0) this.askAhead()
    this.findDue()
    this.isBlocked = this.due <= this.floor.clock.now + hair
    return !this.isBlocked
  }

  override plan(): void {
    const wake = this.wakeAt
    if (this.isBlocked) this.unit.plans(this.offersAgain ? this.floor.clock.now : wake, State.blocked, never)
    else this.unit.plans(Math.min(this.due, wake), this.aboard === 0 ? State.waiting : this.moving, never)
  }

  override runsAt(speed: number): void {
    if (speed === this.speed) return
    this.changeSpeed(speed)
    if (this.hasTail) this.askAhead()
    if (this.aboard > 0) this.findDue()
    if (this.moving === State.blocked) this.findDueBehindTail()
    if (this.unit.owes && !this.unit.frozen) this.wakeWhenClear()
    this.unit.tellBehind()
  }

  override freeze(): void {
    // a run-up that is broken off has moved nothing
    const { now } = this.floor.clock
    if (this.movesAt > now) {
      this.shift(now - this.movesAt)
      this.movesAt = now
    }
    this.keepWhereTheyStand()
    if (this.aboard === 0) return
    this.findDue()
    // one that stands behind a tail is not at the end, whatever was offered
    if (this.due > now + hair) this.isBlocked = false
  }

  override thaw(passed: number): void {
    this.movesAt = this.floor.clock.now + this.runUp
    this.shift(passed + this.runUp)
    // its exit stays shut until the offer is taken: nobody comes in meanwhile for whom there is no room
    this.offersAgain = this.isBlocked
    if (this.unit.owes) this.wakeWhenClear()
    else this.wakeAt = never
  }
}
