/** When an accumulating conveyor takes a case, while nothing disturbs it: by the relation of `Bed`, from the times of those ahead. */
import { unset } from '../../engine/unset.js'
import type { Equipment } from '../../line/equipment.js'
import type { Spell } from '../spell.js'
import { hair } from '../travel.js'
import type { AccumulatingConveyor } from './accumulating-conveyor.js'
import { ConveyorStage } from './conveyor-stage.js'

/** A lower part of `AccumulatingStage`, which is the only class that is made of it. */
export abstract class RoomAhead extends ConveyorStage {
  /** Room that each takes, m, the time to move on by that, s, and the sum of the rooms of those before it, m. */
  protected readonly pitches: Float64Array
  protected readonly pitchTimes: Float64Array
  protected readonly pitchBefore: Float64Array
  /** When the last one came: the last that had left by then. */
  protected lastGone = 0
  /** The same as the case comes whose entry was found last. */
  protected goneThen = 0
  /** When who was told no asks again, s. */
  protected again = unset
  /** Room that `findTaken` finds, m. */
  protected taken = unset
  /** Start delay, s: with it those are felt for a while that have left; the first of which something is known; and when the next may come behind them, s. */
  protected readonly delay: number
  protected known = 0
  protected follows = unset

  constructor(
    spell: Spell,
    unit: Equipment,
    protected readonly conveyor: AccumulatingConveyor,
    /** A case is taken only if it will lie wholly on the conveyor while its exit is shut. */
    protected readonly waitsForRoom: boolean,
  ) {
    super(spell, unit, conveyor)
    this.pitches = spell.ring()
    this.pitchTimes = spell.ring()
    this.pitchBefore = spell.ring()
    this.delay = conveyor.keys['start-delay']
  }

  /** Whoever comes waits for room on all of a bed of which this is the first part. */
  protected get isPartOfBed(): boolean {
    return this.waitsForRoom && this.next instanceof RoomAhead
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

  /** Finds the room that those take who come before this one and have not gone. */
  protected findTaken(number: number): void {
    const { pitchBefore } = this
    const { mask } = this.spell
    const first = this.goneThen + 1
    this.taken = first < number ? pitchBefore[number & mask]! - pitchBefore[first & mask]! : 0
  }

  /** Finds when there is room for the case, and the one before is out of its way. */
  private findRoom(number: number): void {
    const { spell, gone, entered, wanted } = this
    const { mask, until } = spell
    const before = (number - 1) & mask
    const clear = entered[before]! + this.pitchTimes[before]! + this.delay
    this.goneThen = this.lastGone
    if (this.next !== null) {
      this.findRoomAcross(number, clear)
      return
    }
    let at = Math.max(wanted[number & mask]!, clear)
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
    entered[number & mask] = at
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

  /** The same where those that leave may lie across the end, and whoever comes is told no for what is shut farther on. */
  private findRoomAcross(number: number, clear: number): void {
    const { entered, wanted } = this
    const { mask, until } = this.spell
    // who comes to a bed of several parts may hear late that its exit has opened, so what it is told first counts
    let asks = this.isPartOfBed
    let at = Math.max(wanted[number & mask]!, asks ? entered[(number - 1) & mask]! : clear)
    while (at < until) {
      this.findGone(number, at)
      this.findTaken(number)
      if (this.taken < this.conveyor.length - hair) {
        this.findFollows(number)
        const free = Math.max(this.follows, clear)
        const isRefused = (asks || free <= at) && this.isRefused(at)
        if (free <= at && !isRefused) break
        // where more is kept here than on what follows, the next one may go before that one is so far on
        if (!isRefused) this.again = Math.min(free, this.again)
      }
      at = this.again
      asks = false
    }
    entered[number & mask] = at
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
    if (this.next === null || !(past > 0) || moves === -Infinity) return
    this.next.way = past
    this.next.findArrival(ahead)
    this.follows = Math.max(this.follows, this.next.arrival)
  }

  /** Finds who has gone by then, and when the next one goes. */
  private findGone(number: number, at: number): void {
    const { gone } = this
    const { mask } = this.spell
    while (this.goneThen + 1 < number && gone[(this.goneThen + 1) & mask]! <= at) this.goneThen++
    this.again = this.goneThen + 1 < number ? gone[(this.goneThen + 1) & mask]! : Infinity
  }

  /** Whether there is no room for the case that was measured as far as the exit, and if so, when it asks again. */
  private isRefused(at: number): boolean {
    if (!this.waitsForRoom || this.taken === 0) return false
    const { conveyor } = this
    const next = this.next!
    let room = conveyor.length - this.taken
    next.at = at
    if (!next.isShutThen(this.goneThen)) return false
    room += next.roomThen
    if (conveyor.need <= room + hair) return false
    this.again = Math.min(this.again, next.toldAt)
    return true
  }

  /** Those behind it are told as the first goes, if the others reach back to the entrance. */
  override isShutThen(last: number): boolean {
    const { conveyor, gone, pitchBefore, at } = this
    const { mask } = this.spell
    let first = last + 1
    while (first > this.first && gone[(first - 1) & mask]! > at) first--
    if (first > last || !(this.due[first & mask]! <= at)) return false
    const taken = pitchBefore[last & mask]! + this.pitches[last & mask]! - pitchBefore[first & mask]!
    this.roomThen = conveyor.length - taken
    this.toldAt = taken >= conveyor.length - hair ? gone[first & mask]! : Infinity
    return true
  }

  override findArrival(number: number): void {
    const { conveyor, pitchBefore, way } = this
    const { mask } = this.spell
    this.arrival = this.entered[number & mask]! + way / conveyor.speed
    // the last of those that must be past the end
    const mark = pitchBefore[number & mask]! + way - conveyor.length
    let ahead = number - 1
    while (ahead >= this.known && pitchBefore[ahead & mask]! >= mark - hair) ahead--
    if (ahead < this.known || this.gone[ahead & mask]! === -Infinity) return
    const past = mark - pitchBefore[ahead & mask]!
    this.arrival = Math.max(this.arrival, this.gone[ahead & mask]! + past / conveyor.speed)
    if (this.next === null) return
    this.next.way = past
    this.next.findArrival(ahead)
    this.arrival = Math.max(this.arrival, this.next.arrival)
  }
}
