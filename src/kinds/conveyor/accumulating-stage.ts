/** An accumulating conveyor while nothing disturbs it: when its cases are at its end, what is counted of a spell, and where its end finds it. */
import { hair } from '../travel.js'
import type { TravelAhead } from '../travel-ahead.js'
import { RoomAhead } from './room-ahead.js'

export class AccumulatingStage extends RoomAhead {
  /** At some time there was no room for another case. */
  private wasFull = false

  override isCalm(): boolean {
    const { conveyor, unit } = this
    // who was told that there is no room is told of it later
    if (this.isPartOfBed && unit.owes && conveyor.wakeAt === Infinity) return false
    return !conveyor.offersAgain && conveyor.movesAt <= conveyor.floor.clock.now && !conveyor.isHeld
  }

  protected override takeUp(): void {
    const { conveyor, spell } = this
    const { mask, firstOn, aboard } = conveyor
    this.lastGone = spell.next - 1
    this.wasFull = conveyor.isFull()
    const felt = this.delay > 0 ? mask + 1 - aboard : 1
    this.known = spell.next - felt
    for (let back = 1; back <= felt; back++) this.copyGone(spell.next - back, firstOn - back)
    for (let own = firstOn; own < firstOn + aboard; own++) {
      const item = conveyor.items[own & mask]!
      this.copy(spell.add(item, conveyor.floor.cases.length[item]!), own)
    }
  }

  /** The same of one that has left: below 0 there was none. */
  private copyGone(number: number, own: number): void {
    const place = number & this.spell.mask
    if (own >= 0) {
      this.copy(number, own)
      this.gone[place] = this.conveyor.left[own & this.conveyor.mask]!
      return
    }
    this.entered[place] = -Infinity
    this.gone[place] = -Infinity
    this.pitches[place] = 0
    this.pitchTimes[place] = 0
    this.pitchBefore[place] = 0
  }

  /** What the conveyor knows of its case `own` is that of case `number`. */
  private copy(number: number, own: number): void {
    const { conveyor } = this
    const place = number & this.spell.mask
    const from = own & conveyor.mask
    this.entered[place] = conveyor.entered[from]!
    this.pitches[place] = conveyor.pitches[from]!
    this.pitchTimes[place] = conveyor.pitchTimes[from]!
    this.pitchBefore[place] = conveyor.pitchBefore[from]!
  }

  override resume(number: number): void {
    this.findDue(number)
    // a standstill may have moved it by a rounding
    if (number === this.first && !this.conveyor.isBlocked)
      this.due[number & this.spell.mask] = this.conveyor.due
  }

  override comes(number: number): void {
    const { conveyor, spell } = this
    const place = number & spell.mask
    this.due[place] = Infinity
    if (!(this.entered[place]! < spell.until)) return
    this.lastGone = this.goneThen
    this.findTaken(number)
    if (this.taken + this.pitches[place]! + conveyor.shortest > conveyor.length + hair) this.wasFull = true
    this.findDue(number)
  }

  private findDue(number: number): void {
    const { conveyor, spell } = this
    const before = (number - 1) & spell.mask
    this.due[number & spell.mask] = Math.max(
      this.entered[number & spell.mask]! + conveyor.crossing,
      this.gone[before]! + this.pitchTimes[before]! + this.delay,
    )
  }

  /** While the case stands across the joint, behind those that have closed up ahead. */
  override standAcross(number: number, behind: TravelAhead): void {
    if (this.waitsForRoom) return
    const { conveyor, spell, pitchBefore, gone } = this
    const { mask, lengths } = spell
    const { length, speed } = conveyor
    const entered = this.entered[number & mask]!
    const target = lengths[number & mask]!
    let way = 0
    let since = entered
    for (let ahead = this.lastGone + 1; ahead < number; ahead++) {
      // as far as it comes until this one has left
      const over = pitchBefore[number & mask]! - pitchBefore[ahead & mask]! + target - length
      const reach = target - over
      if (!(reach <= target - hair)) return
      const beyond = pitchBefore[number & mask]! + reach - length - pitchBefore[(ahead - 1) & mask]!
      let from = since
      if (reach > way + hair) {
        from = Math.max(from, entered + reach / speed)
        if (beyond > 0) from = Math.max(from, gone[(ahead - 1) & mask]! + beyond / speed)
      }
      const until = gone[ahead & mask]!
      if (until > from) behind.stand(from, until, from === this.wanted[number & mask]!)
      way = reach
      since = Math.max(from, until)
    }
  }

  protected override tellBlocked(): void {
    const { due, gone, first, oldest } = this
    const { mask, from, until } = this.spell
    let blocked = 0
    for (let number = first; number < oldest; number++)
      blocked += gone[number & mask]! - Math.max(from, due[number & mask]!)
    if (this.isShut) blocked += until - Math.max(from, due[oldest & mask]!)
    this.blocked = blocked
  }

  protected override rests(): void {
    const { entered, due, gone } = this
    const { mask, from } = this.spell
    for (let number = this.first; number < this.newest; number++) {
      this.rest(Math.max(from, gone[(number - 1) & mask]!), entered[number & mask]!)
      this.rest(due[number & mask]!, gone[number & mask]!)
    }
    if (this.oldest === this.newest) this.rest(Math.max(from, gone[(this.newest - 1) & mask]!), Infinity)
  }

  protected override tellFull(): void {
    if (!this.wasFull) return
    const { spell, conveyor, gone, entered, pitchBefore, pitches } = this
    const { mask, until, next } = spell
    const { clock } = conveyor.floor
    let { oldest, newest } = this
    for (;;) {
      const goes = oldest < newest ? gone[oldest & mask]! : Infinity
      const comes = newest < next ? entered[newest & mask]! : Infinity
      if (!(goes < until) && !(comes < until)) return
      clock.now = Math.min(goes, comes)
      if (goes <= comes) oldest++
      else newest++
      const last = (newest - 1) & mask
      conveyor.reserved =
        oldest < newest ? pitchBefore[last]! + pitches[last]! - pitchBefore[oldest & mask]! : 0
      conveyor.noteFull()
    }
  }

  override end(): void {
    const { spell, conveyor, oldest, newest } = this
    const { mask } = conveyor
    conveyor.firstOn = oldest
    conveyor.aboard = newest - oldest
    const felt = this.delay > 0 ? mask + 1 - conveyor.aboard : 1
    for (let number = oldest - felt; number < oldest; number++)
      conveyor.left[number & mask] = this.gone[number & spell.mask]!
    for (let number = oldest - felt; number < newest; number++) {
      const place = number & spell.mask
      conveyor.items[number & mask] = spell.items[place]!
      conveyor.entered[number & mask] = this.entered[place]!
      conveyor.pitches[number & mask] = this.pitches[place]!
      conveyor.pitchTimes[number & mask] = this.pitchTimes[place]!
      conveyor.pitchBefore[number & mask] = this.pitchBefore[place]!
    }
    conveyor.findReserved()
    conveyor.ahead = oldest - 1
    conveyor.hasTail = this.next !== null && this.leftLast > -Infinity
    conveyor.isBlocked = false
    conveyor.wakeAt = Infinity
    conveyor.due = Infinity
    if (conveyor.aboard > 0) conveyor.findDue()
  }
}
