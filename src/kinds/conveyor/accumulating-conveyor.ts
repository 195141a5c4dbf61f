/** Accumulating conveyor: cases close up behind one that stands, and follow it when it moves again. */

import { never } from '../../engine/clock.js'
import { unset } from '../../engine/unset.js'
import type { CaseIndex } from '../../line/cases.js'
import type { Floor } from '../../line/floor.js'
import { State } from '../../line/states.js'
import { wholeZones, zonesFor } from '../../trade/zones.js'
import { Conveyor } from './conveyor.js'
import type { ConveyorKeys } from './keys.js'

/** Rounding of sums of lengths that must not turn away a case that just fits, m. */
const hair = 1e-9

/**
 * The triangular kinematic wave (Newell, Transportation Research B 36 (2002) 195-205): a case's path is the later
 * of free flow and the leader's path, shifted by the leader's pitch in space and the start delay in time. Places
 * are those of the leading edge. Pitch = length + spacing. With D the length and v the speed,
 *
 *   arrival at the end  = max(enter + D / v, leader's leaving + pitch of leader / v + delay)
 *   entrance clear      = when the last case has moved its own pitch, by the same relation, + delay
 *
 * The second looks back to the case that was D ahead of the entrance: the first whose pitches, summed from it to
 * the last case, reach D. While the exit is shut a case is taken only if it will lie wholly on the conveyor; one that is
 * just entering when it shuts may stand across the entrance.
 *
 * With zones the pitch of a case is the whole zones that it takes, D is the length of the whole zones, and a case is
 * taken only while that many are free. All zones hand over at once when the first empties, as in the relation
 * above; where each waits until the one ahead is empty, the start delay is zone / v. Common practice, no source.
 */
export class AccumulatingConveyor extends Conveyor {
  private readonly length: number
  private readonly speed: number
  /** Time over the whole length in free flow, s. */
  private readonly crossing: number
  /** Room that a case takes, by kind, m: length and spacing, or whole zones. */
  private readonly pitchOf: Float64Array
  /** Time to move on by it, s, by kind. */
  private readonly pitchTimeOf: Float64Array
  /** Room that must be free for it, by kind, m: the last of a full conveyor needs no spacing behind it. */
  private readonly needs: Float64Array
  private readonly hasZones: boolean
  private readonly delay: number
  private readonly shortest: number

  /** Rings over the running number of a case on this conveyor. */
  private readonly mask: number
  private readonly items: Int32Array
  private readonly entered: Float64Array
  private readonly left: Float64Array
  private readonly pitches: Float64Array
  /** Time to move on by that pitch, s. */
  private readonly pitchTimes: Float64Array
  /** Sum of the pitches of all cases so far, this one included. */
  private readonly pitchSum: Float64Array
  /** Sum of the pitches of the cases on it, m. */
  private reserved = unset
  /** When the first comes to the end, s. */
  private due = never
  /** When the next case may enter behind the last one, s, as `findClear` finds it. */
  private clearAt = unset
  private first = 0
  private aboard = 0
  /** The case that was a conveyor's length ahead of the entrance: see above. */
  private ahead = 0
  private isBlocked = false
  /** It moves again after a stop, and has not yet offered the case that was refused before. */
  private offersAgain = false

  constructor(floor: Floor, name: string, keys: ConveyorKeys) {
    super(floor, name, keys)
    const { zone } = keys
    this.hasZones = zone !== undefined
    this.length = zone === undefined ? keys.length : wholeZones(keys.length, zone) * zone
    this.needs = floor.lengths.map((length) => (zone === undefined ? length : zonesFor(length, zone) * zone))
    this.pitchOf = zone === undefined ? floor.lengths.map((length) => length + keys.spacing) : this.needs
    this.speed = keys.speed
    this.pitchTimeOf = this.pitchOf.map((pitch) => pitch / keys.speed)
    this.crossing = this.length / this.speed
    this.delay = keys['start-delay']
    this.shortest = Math.min(...this.needs)
    const most = Math.ceil((2 * this.length) / Math.min(...this.pitchOf)) + 8
    const size = 2 ** Math.ceil(Math.log2(most))
    this.mask = size - 1
    this.items = new Int32Array(size)
    this.entered = new Float64Array(size)
    this.left = new Float64Array(size)
    this.pitches = new Float64Array(size)
    this.pitchTimes = new Float64Array(size)
    this.pitchSum = new Float64Array(size)
  }

  override empty(): void {
    this.first = 0
    this.aboard = 0
    this.ahead = 0
    this.reserved = 0
    this.due = never
    this.wakeAt = never
    this.isBlocked = false
    this.offersAgain = false
    super.empty()
  }

  protected override isFull(): boolean {
    return this.reserved + this.shortest > this.length + hair
  }

  override take(item: CaseIndex): boolean {
    const { now } = this.floor.clock
    if (this.unit.frozen) return false
    const kind = this.floor.cases.kind[item]!
    const fits = this.reserved + this.needs[kind]! <= this.length + hair
    if (!fits && (this.isBlocked || this.hasZones)) return false
    this.findClear()
    if (this.clearAt > now) {
      if (this.clearAt < this.wakeAt) {
        this.wakeAt = this.clearAt
        this.unit.wake()
      }
      return false
    }
    const number = this.first + this.aboard
    const place = number & this.mask
    const pitch = this.pitchOf[kind]!
    this.items[place] = item
    this.entered[place] = now
    this.pitches[place] = pitch
    this.pitchTimes[place] = this.pitchTimeOf[kind]!
    this.pitchSum[place] = (number > 0 ? this.pitchSum[(number - 1) & this.mask]! : 0) + pitch
    this.reserved += pitch
    this.aboard++
    if (this.aboard === 1) this.findDue()
    this.count(1)
    return true
  }

  /** Finds when the next case may enter behind the last one. */
  private findClear(): void {
    const { mask, left } = this
    const last = this.first + this.aboard - 1
    if (last < 0) {
      this.clearAt = 0
      return
    }
    const sum = this.pitchSum[last & mask]!
    const free = this.entered[last & mask]! + this.pitchTimes[last & mask]! + this.delay
    while (this.ahead < last && sum - this.pitchSum[this.ahead & mask]! >= this.length) this.ahead++
    const ahead = this.ahead & mask
    const excess = sum - (this.pitchSum[ahead]! - this.pitches[ahead]!) - this.length
    if (excess < 0) this.clearAt = free
    else if (this.ahead >= this.first) this.clearAt = never
    else
      this.clearAt = Math.max(free, left[ahead]! + excess / this.speed + (last - this.ahead + 1) * this.delay)
  }

  /** Those who were told no are to be told when there is room. */
  private wakeWhenClear(): void {
    this.findClear()
    this.wakeAt = Math.max(this.floor.clock.now, this.clearAt)
  }

  /** Finds when the first case comes to the end. */
  private findDue(): void {
    const { first, mask } = this
    const free = this.entered[first & mask]! + this.crossing
    if (first === 0) {
      this.due = free
      return
    }
    const leader = (first - 1) & mask
    this.due = Math.max(free, this.left[leader]! + this.pitchTimes[leader]! + this.delay)
  }

  override step(): void {
    const { now } = this.floor.clock
    if (this.due <= now && (!this.isBlocked || this.offersAgain)) this.offerFirst()
    if (this.wakeAt <= now) {
      this.wakeAt = never
      this.unit.invite()
    }
  }

  private offerFirst(): void {
    const { now } = this.floor.clock
    const item = this.items[this.first & this.mask]!
    this.offersAgain = false
    this.isBlocked = !this.unit.next.offer(item, this.unit)
    if (this.isBlocked) return
    const place = this.first & this.mask
    this.left[place] = now
    this.first++
    this.aboard--
    this.reserved = this.aboard > 0 ? this.reserved - this.pitches[place]! : 0
    if (this.aboard > 0) this.findDue()
    else this.due = never
    this.count(-1)
    if (this.unit.owes) this.wakeWhenClear()
  }

  override roomAhead(): void {
    if (this.isBlocked) this.offerFirst()
  }

  override plan(): void {
    const wake = this.wakeAt
    if (this.isBlocked) this.unit.plans(this.offersAgain ? this.floor.clock.now : wake, State.blocked)
    else this.unit.plans(Math.min(this.due, wake), this.aboard === 0 ? State.waiting : State.working)
  }

  override freeze(): void {}

  override thaw(passed: number): void {
    // standing still shifts the whole picture in time
    const from = Math.max(0, this.first + this.aboard - this.items.length)
    for (let number = from; number < this.first + this.aboard; number++) {
      this.entered[number & this.mask]! += passed
      this.left[number & this.mask]! += passed
    }
    this.due += passed
    // its exit stays shut until the offer is taken: nobody comes in meanwhile for whom there is no room
    this.offersAgain = this.isBlocked
    if (this.unit.owes) this.wakeWhenClear()
    else this.wakeAt = never
  }
}
