/** Belt conveyor: cases keep their distance; when the one at the end cannot leave, the belt and all on it stand. */

import { never } from '../../engine/clock.js'
import { Ring } from '../../engine/ring.js'
import { unset } from '../../engine/unset.js'
import type { CaseIndex } from '../../line/cases.js'
import type { Floor } from '../../line/floor.js'
import type { Sensor } from '../../line/sensor.js'
import { State } from '../../line/states.js'
import type { Tail } from '../../line/tail.js'
import { Crossing } from '../crossing.js'
import { travelOf } from '../run-up-travel.js'
import { hair, type Travel } from '../travel.js'
import { Conveyor } from './conveyor.js'
import type { ConveyorKeys } from './keys.js'

export class BeltConveyor extends Conveyor {
  readonly travel: Travel
  readonly items = new Ring(64)
  /** Belt travel from which the entrance is clear, m. */
  clearFrom = unset
  /** Belt travel at which each case entered, in the order of the ring. */
  entries: Float64Array
  firstEntry = 0
  /** When the first case comes to the end, s, as `findDue` finds it. */
  private due = never
  isBlocked = false
  /** It may run again after a stop, and has not yet offered the case that was refused before. */
  offersAgain = false
  /** The case that left last, while its tail lies on it. */
  readonly crossing = new Crossing(this.floor, () => this.unit, this.keys.speed)
  /** Belt travel at which the last case entered, m; the last case is held by its tail, at this place, m. */
  lastEntry = unset
  isHeld = false
  private heldAt = unset

  constructor(floor: Floor, name: string, keys: ConveyorKeys) {
    super(floor, name, keys)
    this.travel = travelOf(floor.clock, keys.speed, keys)
    const most = Math.ceil(keys.length / (floor.cases.sizes.shortest + keys.spacing)) + 2
    this.entries = new Float64Array(2 ** Math.ceil(Math.log2(most)))
  }

  override empty(): void {
    this.travel.reset()
    this.items.clear()
    this.firstEntry = 0
    this.clearFrom = 0
    this.wakeAt = never
    this.isBlocked = false
    this.offersAgain = false
    this.crossing.reset()
    this.lastEntry = 0
    this.isHeld = false
    super.empty()
  }

  /** A belt that stands takes nothing. */
  protected override isFull(): boolean {
    return !this.travel.isRunning
  }

  override take(item: CaseIndex): boolean {
    const { now } = this.floor.clock
    if (!this.travel.isRunning || this.isHeld) return false
    const clear = this.travel.when(this.clearFrom)
    if (clear > now) {
      this.wakeAt = clear
      this.unit.wake()
      return false
    }
    const at = this.travel.now()
    this.entries[(this.firstEntry + this.items.length) & (this.entries.length - 1)] = at
    this.items.push(item)
    this.lastEntry = at
    this.clearFrom = at + this.floor.cases.length[item]! + this.keys.spacing
    this.count(1)
    if (this.crossing.isSlow && this.items.length === 1) this.tailMoves()
    return true
  }

  // --- tails ---

  override follow(tail: Tail): void {
    const at = this.isHeld ? this.heldAt : this.travel.now() - this.lastEntry
    tail.gone = Math.min(at, tail.distance)
    tail.speed = this.travel.speed
    if (this.travel.isRunning && !this.isHeld) {
      tail.reach = tail.distance
      tail.reachAt = this.travel.when(this.lastEntry + tail.distance)
    } else tail.stands()
  }

  /** The belt runs on under a case that is held. */
  override hold(isHeld: boolean): void {
    if (isHeld === this.isHeld || this.items.length === 0) return
    this.isHeld = isHeld
    this.floor.observer?.tail(this.name, this.items.at(this.items.length - 1), isHeld)
    const at = this.travel.now()
    if (isHeld) {
      this.heldAt = at - this.lastEntry
      return
    }
    const slipped = at - this.heldAt - this.lastEntry
    this.lastEntry += slipped
    this.clearFrom += slipped
    this.entries[(this.firstEntry + this.items.length - 1) & (this.entries.length - 1)]! += slipped
    this.wakeWhenClear()
  }

  override heedsTail(): boolean {
    return this.crossing.isOn
  }

  override tailMoves(): void {
    // how far the first case is from the end
    this.crossing.behind =
      this.items.length > 0
        ? this.entries[this.firstEntry & (this.entries.length - 1)]! + this.keys.length - this.travel.now()
        : Infinity
    this.crossing.look()
    this.runOrStand()
  }

  override get standsForTail(): boolean {
    return this.crossing.stands
  }

  override get pace(): number {
    return this.travel.isRunning ? this.travel.speed : 0
  }

  override isShut(): boolean {
    return !this.travel.isRunning
  }

  // --- speed and sensors ---

  override runsAt(speed: number): void {
    this.crossing.speed = speed
    this.travel.runsAt(speed, this.crossing)
    if (!this.unit.frozen) this.tailMoves()
    this.wakeWhenClear()
    this.unit.tellBehind()
  }

  override shareTaken(): number {
    const { floor, items, keys } = this
    let taken = 0
    for (let index = 0; index < items.length; index++)
      taken += floor.cases.length[items.at(index)]! + keys.spacing
    return taken / keys.length
  }

  override see(sensor: Sensor): void {
    const place = Math.max(0, this.keys.length - sensor.fromEnd)
    const end = this.firstEntry + this.items.length
    sensor.isCovered = false
    sensor.changesAt = never
    // of those that have left only the last may still lie across the end
    sensor.next = Math.max(sensor.next, this.firstEntry - 1, 0)
    if (sensor.next < this.firstEntry && !this.seeLeft(sensor, place)) sensor.next++
    for (; !sensor.isCovered && sensor.next < end; sensor.next++)
      if (this.seeOn(sensor, sensor.next, place)) return
  }

  /** Whether the sensor sees the case that left last. */
  private seeLeft(sensor: Sensor, place: number): boolean {
    const { tail, unit } = this
    if (this.isBeforePlace || this.leftLength === 0) return false
    tail.distance = place + this.leftLength - this.keys.length
    if (tail.distance <= 0) return false
    unit.next.follow(tail, unit)
    sensor.changesAt = tail.reach < tail.distance - hair ? never : tail.reachAt
    sensor.isCovered = !(sensor.changesAt <= this.floor.clock.now)
    if (!sensor.isCovered) sensor.changesAt = never
    return sensor.isCovered
  }

  /** Looks at a case on the belt; false where it has passed. */
  private seeOn(sensor: Sensor, number: number, place: number): boolean {
    const index = number - this.firstEntry
    const entry = this.entries[number & (this.entries.length - 1)]!
    const length = this.floor.cases.length[this.items.at(index)]!
    const isHeld = this.isHeld && index === this.items.length - 1
    const gone = isHeld ? this.heldAt : this.travel.now() - entry
    if (gone >= place + length - hair) return false
    sensor.isCovered = gone >= place - hair
    if (!isHeld && this.travel.isRunning)
      sensor.changesAt = this.travel.when(entry + (sensor.isCovered ? place + length : place))
    return true
  }

  // --- events ---

  /** Runs at its pace, unless the case at its end cannot leave or the one stands that has just left. */
  private runOrStand(): void {
    const isOtherPace = this.travel.keepTo(this.crossing)
    const shouldRun = !this.isBlocked && !this.crossing.stands && !this.unit.frozen
    if (shouldRun === this.travel.isRunning) {
      if (isOtherPace) this.unit.tellBehind()
      return
    }
    if (shouldRun) {
      this.travel.start()
      this.wakeWhenClear()
    } else {
      this.travel.stop()
      this.wakeAt = never
    }
    this.noteFull()
    this.unit.tellBehind()
  }

  private wakeWhenClear(): void {
    if (this.unit.owes && this.travel.isRunning)
      this.wakeAt = Math.max(this.floor.clock.now, this.travel.when(this.clearFrom))
  }

  /** Finds when the first case comes to the end. */
  private findDue(): void {
    this.due =
      this.items.length > 0 && !(this.isHeld && this.items.length === 1)
        ? this.travel.when(this.entries[this.firstEntry & (this.entries.length - 1)]! + this.keys.length)
        : never
  }

  override step(): void {
    const { now } = this.floor.clock
    if (this.crossing.nextAt <= now) {
      this.tailMoves()
      this.findDue()
    }
    if (this.due <= now || this.offersAgain) {
      if (!this.isBlocked && this.jamsWith(this.first())) return
      this.offerFirst()
    }
    if (this.wakeAt <= now) {
      this.wakeAt = never
      this.unit.invite()
    }
  }

  private offerFirst(): void {
    const item = this.first()
    // read before it goes: its number may be used again
    const length = this.floor.cases.length[item]!
    this.offersAgain = false
    this.isBlocked = !this.unit.next.offer(item, this.unit)
    if (this.isBlocked) {
      this.runOrStand()
      return
    }
    this.jams?.passed()
    this.takeOutFirst()
    this.leftLength = length
    if (!this.isBeforePlace) {
      this.crossing.length = length
      this.crossing.begin()
      this.tailMoves()
    } else if (!this.travel.isRunning) this.runOrStand()
    this.count(-1)
    this.wakeWhenClear()
  }

  override first(): CaseIndex {
    return this.items.at(0)
  }

  protected override takeOutFirst(): void {
    this.items.shift()
    this.firstEntry++
    this.leftLength = 0
  }

  override roomAhead(): void {
    if (this.isBlocked) this.offerFirst()
  }

  override plan(): void {
    this.findDue()
    const acts = this.offersAgain ? this.floor.clock.now : Math.min(this.due, this.crossing.nextAt)
    const due = Math.min(acts, this.wakeAt)
    if (this.isBlocked || this.crossing.stands) this.unit.plans(due, State.blocked, never)
    else this.unit.plans(due, this.items.length === 0 ? State.waiting : State.working, never)
  }

  override freeze(): void {
    this.crossing.forget()
    this.travel.stop()
    this.wakeAt = never
    this.noteFull()
  }

  override thaw(): void {
    // the belt stands until the case at its end goes: nobody comes onto it meanwhile
    this.offersAgain = this.isBlocked
    this.tailMoves()
  }
}
