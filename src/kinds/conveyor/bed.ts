/** Where the cases of an accumulating conveyor are, and how the last one goes on: the relation by which they close up. */

import { never } from '../../engine/clock.js'
import { unset } from '../../engine/unset.js'
import type { Floor } from '../../line/floor.js'
import type { Tail } from '../../line/tail.js'
import { wholeZones, zonesFor } from '../../trade/zones.js'
import { hair } from '../travel.js'
import { Following } from './following.js'
import type { ConveyorKeys } from './keys.js'

/**
 * The triangular kinematic wave (Newell, Transportation Research B 36 (2002) 195-205): a case's path is the later
 * of free flow and the leader's path, shifted by the leader's pitch in space and the start delay in time. Places
 * are those of the leading edge. Pitch = length + spacing. With D the length and v the speed,
 *
 *   arrival at the end  = max(enter + D / v, leader's leaving + pitch of leader / v + delay)
 *   arrival at x        = max(enter + x / v, arrival of any case ahead at x + the pitches of those between + its own,
 *                             + a delay for each)
 *   entrance clear      = arrival of the last case at its own pitch + delay
 *
 * Of those ahead one decides: on here none may be farther than the end; of those that have left, the one that must be beyond the
 * end by less than its own pitch. Where that is the one that left last, and it goes onto another conveyor, that one says
 * when it is there (`line/tail`): so a row of conveyors is one bed. Else it has gone on at the same speed.
 *
 * A case that comes from a place is taken, while the exit is shut, only if it will lie wholly on the bed; one that is just
 * entering when it shuts may stand across the entrance. One that comes from a conveyor or from belts is taken as far as there is
 * room, and stands across the joint.
 *
 * With zones the pitch of a case is the whole zones that it takes, D is the length of the whole zones, and a case is
 * taken only while that many are free. All zones hand over at once when the first empties, as in the relation
 * above; where each waits until the one ahead is empty, the start delay is zone / v. Common practice, no source.
 *
 * A lower part of `AccumulatingConveyor`, which is the only class that is made of it: one object a conveyor, for speed.
 */
export abstract class Bed extends Following {
  readonly length: number
  private readonly spacing: number
  /** Of a zone, m; 0 where it has none. */
  private readonly zone: number
  readonly hasZones: boolean
  /** Of the case that was measured last: room that it takes, m, length and spacing, or whole zones. */
  pitch = unset
  /** Room that must be free for it, m: the last of a full conveyor needs no spacing behind it. */
  need = unset

  /** Rings over the running number of a case on this conveyor. */
  override readonly mask: number
  readonly items: Int32Array
  readonly entered: Float64Array
  /** When it left, s: as if it had gone on from there without a stop as long as its pitch lay across the end. */
  override readonly left: Float64Array
  override readonly pitches: Float64Array
  /** Time to move on by that pitch, s. */
  readonly pitchTimes: Float64Array
  /** Sum of the pitches of all cases before it, m. */
  readonly pitchBefore: Float64Array
  /** Sum of the pitches of the cases on it, m. */
  reserved = unset
  aboard = 0
  /** The case that was found to be felt last: where the next search begins. */
  ahead = 0
  /** Running number of the case that `findReach` is asked about: the last one, unless said; its way, how much of it it has gone and will go, m, and when, s. */
  protected asked = 0
  protected target = unset
  protected gone = unset
  protected reach = unset
  protected reachAt = unset
  /** When the next case may enter behind the last one, s, as `findClear` finds it. */
  protected clearAt = unset
  /** The last case is held by its tail, at this place, m. */
  isHeld = false
  protected heldAt = unset

  constructor(floor: Floor, name: string, keys: ConveyorKeys) {
    super(floor, name, keys)
    const { zone } = keys
    this.hasZones = zone !== undefined
    this.length = zone === undefined ? keys.length : wholeZones(keys.length, zone) * zone
    this.zone = zone ?? 0
    this.spacing = keys.spacing
    this.need = floor.cases.sizes.shortest
    this.measure()
    const most = Math.ceil((2 * this.length) / this.pitch) + 8
    const size = 2 ** Math.ceil(Math.log2(most))
    this.mask = size - 1
    this.items = new Int32Array(size)
    this.entered = new Float64Array(size)
    this.left = new Float64Array(size)
    this.pitches = new Float64Array(size)
    this.pitchTimes = new Float64Array(size)
    this.pitchBefore = new Float64Array(size)
  }

  override empty(): void {
    this.aboard = 0
    this.reserved = 0
    this.ahead = 0
    this.isHeld = false
    this.asked = 0
    super.empty()
  }

  /** Finds what a case takes whose length is in `need`. */
  measure(): void {
    if (this.hasZones) this.need = zonesFor(this.need, this.zone) * this.zone
    this.pitch = this.hasZones ? this.need : this.need + this.spacing
  }

  /** Somebody has come or gone: finds the room that is taken, by where they stand in the row, so that it does not hang on who came or went first. */
  findReserved(): void {
    const { firstOn, aboard, mask, pitchBefore } = this
    const last = (firstOn + aboard - 1) & mask
    this.reserved = aboard > 0 ? pitchBefore[last]! + this.pitches[last]! - pitchBefore[firstOn & mask]! : 0
  }

  /** They reach back to the entrance, but for a rounding. */
  protected isPackedFull(): boolean {
    return this.reserved >= this.length - hair
  }

  override get pace(): number {
    return this.speed
  }

  override addRoom(tail: Tail): void {
    tail.room += this.length - this.reserved
    this.unit.next.addRoom(tail)
  }

  // --- how the last case goes on ---

  /**
   * Finds how far the case will go of `target`, the last one at most its pitch, and when it is there, by what has left by now. A case
   * that has left as well is taken to have gone on freely: it is long past `target`.
   */
  protected findReach(): void {
    const { firstOn: first, mask, length, speed } = this
    const last = this.asked & mask
    const entered = this.entered[last]!
    this.findNow()
    this.reach = this.target
    if (this.aboard > 0) {
      if (this.isHeld && this.asked === first + this.aboard - 1) {
        this.gone = this.heldAt
        this.reach = this.heldAt
        this.reachAt = 0
        return
      }
      // none on here comes farther than to the end
      const over = this.pitchBefore[last]! - this.pitchBefore[first & mask]! + this.target - length
      if (over >= 0) this.reach -= over
    }
    this.reachAt = entered + this.reach / speed
    this.gone = Math.min(this.reach, speed * (this.now - entered))
    if (first > 0) this.followLeft()
  }

  /** The case no farther than those that have left let it. */
  private followLeft(): void {
    const { mask, speed, tail, pitchBefore, asked: last } = this
    const leader = this.firstOn - 1
    const mark = pitchBefore[last & mask]! + this.reach - this.length
    const beyond = mark - pitchBefore[leader & mask]!
    if (beyond > 0 && this.hasTail) {
      tail.distance = beyond
      this.followAcross()
      return
    }
    if (this.delay === 0 && beyond <= 0) return
    // one that left before is still felt for the delays between: the last of those that must be past the end
    const oldest = Math.max(0, this.firstOn + this.aboard - this.items.length)
    let ahead = Math.min(leader, Math.max(oldest, this.ahead))
    while (ahead < leader && pitchBefore[(ahead + 1) & mask]! <= mark) ahead++
    while (ahead > oldest && pitchBefore[ahead & mask]! > mark) ahead--
    this.ahead = ahead
    if (pitchBefore[ahead & mask]! > mark) return
    const past = mark - pitchBefore[ahead & mask]!
    const moves = this.left[ahead & mask]! + (last - ahead) * this.delay
    this.reachAt = Math.max(this.reachAt, moves + past / speed)
    // where it stood when that one was at the end, and from there on as soon as the delays are over
    const moved = Math.max(0, speed * (this.now - moves))
    this.gone = Math.max(0, Math.min(this.gone, this.reach - past + moved))
  }

  /** The same where the one that left last must be farther past the end than 0: it may still stand across it. */
  private followAcross(): void {
    const { speed, tail, unit, mask, asked: last } = this
    const leader = this.firstOn - 1
    const delays = (last - leader) * this.delay
    unit.next.follow(tail, unit)
    this.noteTail()
    const left = this.leftAt()
    const way = Math.min(tail.distance, tail.reach)
    if (way < tail.distance - hair) this.reach -= tail.distance - way
    const thereAt = delays + Math.max(left + way / speed, tail.reachAt)
    this.reachAt = Math.max(this.entered[last & mask]! + this.reach / speed, thereAt)
    const moved = Math.min(tail.gone, Math.max(this.stoodAt, speed * (this.now - delays - left)))
    this.gone = Math.max(0, Math.min(this.gone, this.reach - way + moved))
  }

  /**
   * The bed is about to stand: those that stand behind a tail across its end are where they are, and while the bed stands the tail goes on without them.
   * From here on each is as if it had entered so late that it has come just as far.
   */
  protected keepWhereTheyStand(): void {
    if (!this.hasTail) return
    this.findNow()
    const first = this.firstOn
    for (let number = first; number < first + this.aboard; number++) {
      const place = number & this.mask
      this.asked = number
      this.target = this.length
      this.findReach()
      const toTheEnd = this.length - (this.pitchBefore[place]! - this.pitchBefore[first & this.mask]!)
      const alone = Math.min(toTheEnd, this.speed * (this.now - this.entered[place]!))
      if (this.gone < alone - hair) this.entered[place] = this.now - this.gone / this.speed
    }
  }

  /** Finds when the next case may enter behind the last one. */
  protected findClear(): void {
    const { mask, firstOn: first } = this
    const last = first + this.aboard - 1
    if (last < 0) {
      this.clearAt = 0
      return
    }
    // one on here would have to be past the end
    if (this.aboard > 0 && this.isPackedFull()) {
      this.clearAt = never
      return
    }
    const place = last & mask
    const pitch = this.pitches[place]!
    if (this.isBeforePlace && this.delay === 0 && !this.isHeld) {
      // the same in short: nothing stands across the end
      this.clearAt = this.entered[place]! + this.pitchTimes[place]!
      if (first === 0) return
      const leader = (first - 1) & mask
      const beyond = this.pitchBefore[place]! + pitch - this.length - this.pitchBefore[leader]!
      if (beyond > 0) this.clearAt = Math.max(this.clearAt, this.left[leader]! + beyond / this.speed)
      return
    }
    this.asked = last
    this.target = pitch
    this.findReach()
    this.clearAt = this.reach < pitch - hair ? never : this.reachAt + this.delay
  }

  override follow(tail: Tail): void {
    this.asked = this.firstOn + this.aboard - 1
    this.target = tail.distance
    this.findReach()
    tail.gone = this.gone
    tail.reach = this.reach
    tail.reachAt = this.reachAt
    tail.speed = this.speed
  }
}
