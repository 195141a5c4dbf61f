/** An accumulating conveyor before a place while nothing disturbs it: the relation of `Bed`, case by case. */
import { unset } from '../../engine/unset.js'
import type { Equipment } from '../../line/equipment.js'
import type { Spell } from '../spell.js'
import { hair } from '../travel.js'
import type { TravelAhead } from '../travel-ahead.js'
import type { AccumulatingConveyor } from './accumulating-conveyor.js'
import { ConveyorStage } from './conveyor-stage.js'

export class AccumulatingStage extends ConveyorStage {
  /** Room that each takes, m, the time to move on by that, s, and the sum of the rooms of those before it, m. */
  private readonly pitches: Float64Array
  private readonly pitchTimes: Float64Array
  private readonly pitchBefore: Float64Array
  /** When the last one came: the last that had left by then. */
  private lastGone = 0
  /** The same as the case comes whose entry was found last. */
  private goneThen = 0
  /** Room that `findTaken` finds, m. */
  private taken = unset
  /** Start delay, s: with it those are felt for a while that have left; the first of which something is known; and when the next may come behind them, s. */
  private readonly delay: number
  private known = 0
  private follows = unset
  /** At some time there was no room for another case. */
  private wasFull = false

  constructor(
    spell: Spell,
    unit: Equipment,
    private readonly conveyor: AccumulatingConveyor,
    /** A case is taken only if it will lie wholly on the conveyor while its exit is shut. */
    private readonly waitsForRoom: boolean,
  ) {
    super(spell, unit, conveyor)
    this.pitches = spell.ring()
    this.pitchTimes = spell.ring()
    this.pitchBefore = spell.ring()
    this.delay = conveyor.keys['start-delay']
  }

  override isCalm(): boolean {
    const { conveyor } = this
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

  override findEntry(number: number): void {
    const { conveyor, spell, pitches, pitchBefore } = this
    const place = number & spell.mask
    const before = (number - 1) & spell.mask
    conveyor.need = spell.lengths[place]!
    conveyor.measure()
    pitches[place] = conveyor.pitch
    this.pitchTimes[place] = conveyor.pitch / conveyor.speed
    pitchBefore[place] = pitchBefore[before]! + pitches[before]!
    this.findRoom(number)
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

  /** Finds the room that those take who come before this one and have not gone. */
  private findTaken(number: number): void {
    const { pitchBefore } = this
    const { mask } = this.spell
    const first = this.goneThen + 1
    this.taken = first < number ? pitchBefore[number & mask]! - pitchBefore[first & mask]! : 0
  }

  /** Finds when there is room for the case, and the one before is out of its way. */
  private findRoom(number: number): void {
    const { spell, gone } = this
    const { mask, until } = spell
    const clear = this.entered[(number - 1) & mask]! + this.pitchTimes[(number - 1) & mask]! + this.delay
    let at = Math.max(this.wanted[number & mask]!, clear)
    this.goneThen = this.lastGone
    while (at < until) {
      while (this.goneThen + 1 < number && gone[(this.goneThen + 1) & mask]! <= at) this.goneThen++
      if (this.goneThen + 1 < number && this.isTaken(number, at)) {
        at = gone[(this.goneThen + 1) & mask]!
        continue
      }
      this.findFollows(number)
      if (this.follows <= at) break
      at = this.follows
    }
    this.entered[number & mask] = at
  }

  /**
   * Finds when the one before is past its own pitch, for which those that have left must have gone on: the last of them, or, where each starts
   * later than the one ahead of it, the last of those that must be past the end.
   */
  private findFollows(number: number): void {
    const { conveyor, pitchBefore, delay } = this
    const { mask } = this.spell
    const mark = pitchBefore[number & mask]! - conveyor.length
    let ahead = this.goneThen
    if (delay > 0) while (ahead > this.known && pitchBefore[ahead & mask]! > mark) ahead--
    const past = mark - pitchBefore[ahead & mask]!
    const moves = this.gone[ahead & mask]! + (number - 1 - ahead) * delay
    this.follows = past >= 0 ? moves + past / conveyor.speed + delay : -Infinity
  }

  /** Whether there is no room for the case that was measured: none while the cases reach back to the entrance. */
  private isTaken(number: number, at: number): boolean {
    const { conveyor } = this
    this.findTaken(number)
    if (this.taken >= conveyor.length - hair) return true
    if (!this.waitsForRoom) return false
    const asks = conveyor.hasZones || this.due[(this.goneThen + 1) & this.spell.mask]! <= at
    return asks && !(conveyor.need <= conveyor.length - this.taken + hair)
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
    conveyor.hasTail = false
    conveyor.isBlocked = false
    conveyor.wakeAt = Infinity
    conveyor.due = Infinity
    if (conveyor.aboard > 0) conveyor.findDue()
  }
}
