/** A belt conveyor while nothing disturbs it: it stands from when a case is at its end until that has left, and while that stands across it. */
import type { Equipment } from '../../line/equipment.js'
import type { Spell } from '../spell.js'
import { hair } from '../travel.js'
import { TravelAhead } from '../travel-ahead.js'
import type { BeltConveyor } from './belt-conveyor.js'
import { ConveyorStage } from './conveyor-stage.js'

export class BeltStage extends ConveyorStage {
  private readonly travel: TravelAhead
  private readonly speed: number
  /** Belt travel at which each entered, and from which the next may, m. */
  private readonly places: Float64Array
  private readonly clears: Float64Array
  /** Standstills that are over as the case comes whose entry was found last. */
  private overThen = 0

  constructor(
    spell: Spell,
    unit: Equipment,
    private readonly belt: BeltConveyor,
  ) {
    super(spell, unit, belt)
    this.speed = belt.keys.speed
    this.travel = new TravelAhead(this.speed)
    this.places = spell.ring()
    this.clears = spell.ring()
  }

  override isCalm(): boolean {
    const { belt } = this
    return (
      belt.travel.isRunning && !belt.isBlocked && !belt.offersAgain && !belt.isHeld && !belt.crossing.mayHold
    )
  }

  protected override takeUp(): void {
    const { belt, spell } = this
    const { items, entries } = belt
    this.travel.begin(belt.travel)
    this.places[(spell.next - 1) & spell.mask] = belt.lastEntry
    for (let index = 0; index < items.length; index++) {
      const number = spell.add(items.at(index), belt.floor.cases.length[items.at(index)]!)
      this.entered[number & spell.mask] = spell.from
      this.places[number & spell.mask] = entries[(belt.firstEntry + index) & (entries.length - 1)]!
    }
    this.clears[(spell.next - 1) & spell.mask] = belt.clearFrom
  }

  override resume(number: number): void {
    this.findDue(number & this.spell.mask)
  }

  override findEntry(number: number): void {
    const { spell, travel, entered } = this
    const place = number & spell.mask
    const before = (number - 1) & spell.mask
    const { over } = travel
    travel.travel = this.clears[before]!
    travel.findWhen()
    travel.at = Math.max(travel.at, this.wanted[place]!, entered[before]!)
    travel.findRunning()
    entered[place] = travel.at
    this.overThen = travel.over
    // it may be another case that comes, and earlier
    travel.over = over
  }

  override comes(number: number): void {
    const { spell, travel } = this
    const place = number & spell.mask
    this.due[place] = Infinity
    travel.at = this.entered[place]!
    if (!(travel.at < spell.until)) return
    travel.over = this.overThen
    travel.findTravel()
    this.places[place] = travel.travel
    this.clears[place] = travel.travel + spell.lengths[place]! + this.belt.keys.spacing
    this.findDue(place)
  }

  private findDue(place: number): void {
    const { travel } = this
    travel.travel = this.places[place]! + this.belt.keys.length
    travel.findWhen()
    this.due[place] = travel.at
  }

  override leave(number: number): void {
    this.standFor(number, this.travel)
  }

  override findArrival(number: number): void {
    const { travel } = this
    travel.travel = this.places[number & this.spell.mask]! + this.way
    travel.at = this.entered[number & this.spell.mask]!
    travel.findArrival()
    this.arrival = travel.at
  }

  /** While the belt stands: that gives no room. */
  override isShutThen(): boolean {
    this.travel.at = this.at
    if (!this.travel.findsStanding()) return false
    this.roomThen = 0
    this.toldAt = this.travel.at
    return true
  }

  /** While the belt stands. */
  override standAcross(number: number, behind: TravelAhead): void {
    const { travel, spell } = this
    const place = number & spell.mask
    for (let each = travel.over; each < travel.count; each++) {
      if (!(travel.travelOf(each) - this.places[place]! < spell.lengths[place]! - hair)) return
      const from = travel.froms[each]!
      behind.stand(from, travel.untils[each]!, from === this.wanted[place]!)
    }
  }

  /** It stands for a case at its end and for one that lies across it; empty, it waits for cases only while it runs. */
  protected override tellBlocked(): void {
    const { travel, entered, gone } = this
    const { mask, from, until } = this.spell
    this.blocked = travel.standing(until)
    if (this.next === null) return
    travel.over = 0
    let waiting = 0
    for (let number = this.first; number <= this.newest; number++) {
      const since = Math.max(from, gone[(number - 1) & mask]!)
      const comes = number < this.newest ? entered[number & mask]! : until
      if (comes > since) waiting += travel.running(since, Math.min(until, comes))
    }
    this.waiting = waiting
  }

  protected override rests(): void {
    const { entered, gone, travel } = this
    const { mask, from } = this.spell
    travel.over = 0
    for (let number = this.first; number <= this.newest; number++) {
      const since = Math.max(from, gone[(number - 1) & mask]!)
      travel.tellRests(since, this)
      this.rest(since, number < this.newest ? entered[number & mask]! : Infinity)
    }
    travel.tellRests(Infinity, this)
  }

  protected override tellFull(): void {
    const { belt, travel, spell } = this
    const { clock } = belt.floor
    for (let each = 0; each < travel.count && travel.froms[each]! < spell.until; each++) {
      clock.now = travel.froms[each]!
      belt.full.change(1)
      if (!(travel.untils[each]! < spell.until)) return
      clock.now = travel.untils[each]!
      belt.full.change(-1)
    }
  }

  override end(): void {
    const { belt, spell, oldest, newest } = this
    const { mask } = spell
    this.travel.end(belt.travel, spell.until)
    belt.items.clear()
    belt.firstEntry = 0
    for (let number = oldest; number < newest; number++) {
      belt.entries[number - oldest] = this.places[number & mask]!
      belt.items.push(spell.items[number & mask]!)
    }
    belt.lastEntry = this.places[(newest - 1) & mask]!
    belt.clearFrom = this.clears[(newest - 1) & mask]!
    belt.wakeAt = Infinity
  }

  override offer(): void {
    super.offer()
    this.lookAcross(this.belt, this.travel)
  }
}
