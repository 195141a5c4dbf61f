/** Belt conveyor: cases keep their distance; when the one at the end cannot leave, the belt and all on it stand. */

import { never } from '../../engine/clock.js'
import { Ring } from '../../engine/ring.js'
import { unset } from '../../engine/unset.js'
import type { CaseIndex } from '../../line/cases.js'
import type { Floor } from '../../line/floor.js'
import { State } from '../../line/states.js'
import { Travel } from '../travel.js'
import { Conveyor } from './conveyor.js'
import type { ConveyorKeys } from './keys.js'

export class BeltConveyor extends Conveyor {
  private readonly travel: Travel
  private readonly items = new Ring(64)
  /** Belt travel from which the entrance is clear, m. */
  private clearFrom = unset
  /** Belt travel at which each case entered, in the order of the ring. */
  private entries: Float64Array
  private firstEntry = 0
  /** When the first case comes to the end, s, as `findDue` finds it. */
  private due = never
  private isBlocked = false
  /** It may run again after a stop, and has not yet offered the case that was refused before. */
  private offersAgain = false

  constructor(floor: Floor, name: string, keys: ConveyorKeys) {
    super(floor, name, keys)
    this.travel = new Travel(floor.clock, keys.speed)
    const most = Math.ceil(keys.length / (Math.min(...floor.lengths) + keys.spacing)) + 2
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
    super.empty()
  }

  /** A belt that stands takes nothing. */
  protected override isFull(): boolean {
    return !this.travel.isRunning
  }

  override take(item: CaseIndex): boolean {
    const { now } = this.floor.clock
    if (!this.travel.isRunning) return false
    const clear = this.travel.when(this.clearFrom)
    if (clear > now) {
      this.wakeAt = clear
      this.unit.wake()
      return false
    }
    const at = this.travel.now()
    this.entries[(this.firstEntry + this.items.length) & (this.entries.length - 1)] = at
    this.items.push(item)
    this.clearFrom = at + this.floor.lengths[this.floor.cases.kind[item]!]! + this.keys.spacing
    this.count(1)
    return true
  }

  /** Finds when the first case comes to the end. */
  private findDue(): void {
    this.due =
      this.items.length > 0
        ? this.travel.when(this.entries[this.firstEntry & (this.entries.length - 1)]! + this.keys.length)
        : never
  }

  override step(): void {
    const { now } = this.floor.clock
    this.findDue()
    if (this.due <= now || this.offersAgain) this.offerFirst()
    if (this.wakeAt <= now) {
      this.wakeAt = never
      this.unit.invite()
    }
  }

  private offerFirst(): void {
    const { now } = this.floor.clock
    const isTaken = this.unit.next.offer(this.items.at(0), this.unit)
    this.offersAgain = false
    this.isBlocked = !isTaken
    if (isTaken) {
      this.items.shift()
      this.firstEntry++
      this.travel.start()
      this.count(-1)
      if (this.unit.owes) this.wakeAt = Math.max(now, this.travel.when(this.clearFrom))
    } else {
      this.travel.stop()
      this.wakeAt = never
      this.noteFull()
    }
  }

  override roomAhead(): void {
    if (this.isBlocked) this.offerFirst()
  }

  override plan(): void {
    this.findDue()
    const due = Math.min(this.due, this.wakeAt)
    if (this.isBlocked) this.unit.plans(this.offersAgain ? this.floor.clock.now : due, State.blocked)
    else this.unit.plans(due, this.items.length === 0 ? State.waiting : State.working)
  }

  override freeze(): void {
    this.travel.stop()
    this.wakeAt = never
    this.noteFull()
  }

  override thaw(): void {
    const { now } = this.floor.clock
    // the belt stands until the case at its end goes: nobody comes onto it meanwhile
    this.offersAgain = this.isBlocked
    if (this.isBlocked) return
    this.travel.start()
    this.noteFull()
    if (this.unit.owes) this.wakeAt = Math.max(now, this.travel.when(this.clearFrom))
  }
}
