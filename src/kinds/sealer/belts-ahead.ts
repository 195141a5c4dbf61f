/** The belts of a sealer while nothing disturbs it: which case goes onto them when, past heads that are sure to tape, and when it comes to their end. */
import { justAfter } from '../../engine/neighbours.js'
import type { CaseIndex } from '../../line/cases.js'
import type { Equipment } from '../../line/equipment.js'
import { GivingStage } from '../carrying-stage.js'
import type { Spell } from '../spell.js'
import { TravelAhead } from '../travel-ahead.js'
import { none } from './flap-place.js'
import type { Sealer } from './model.js'

/** A lower part of `SealerStage`, which is the only class that is made of it. */
export abstract class BeltsAhead extends GivingStage {
  protected readonly travel: TravelAhead
  /** When each is folded, when its size is set from and until, and when it is admitted to the belts, s. */
  protected readonly folded: Float64Array
  protected readonly setFrom: Float64Array
  protected readonly setUntil: Float64Array
  protected readonly admitted: Float64Array
  /** Belt travel at which each is admitted, m, and the instant at which the belts were clear for it, s. */
  protected readonly places: Float64Array
  protected readonly clears: Float64Array
  /** Belt travel from which the next may be admitted, m. */
  protected clearFrom = 0
  /** By head, the next case of which it has not been asked whether it is sure to pass, or which is not. */
  protected readonly unsure: Int32Array
  /** The first that was not on the belts when the spell began, and the next to be admitted. */
  protected firstOff = 0
  protected nextOn = 0

  constructor(
    spell: Spell,
    unit: Equipment,
    protected readonly sealer: Sealer,
  ) {
    super(spell, unit)
    this.travel = new TravelAhead(sealer.keys['belt-speed'])
    this.folded = spell.ring()
    this.setFrom = spell.ring()
    this.setUntil = spell.ring()
    this.admitted = spell.ring()
    this.places = spell.ring()
    this.clears = spell.ring()
    this.unsure = new Int32Array(sealer.heads.length)
  }

  override isCalm(): boolean {
    const { sealer } = this
    if (sealer.isBlocked || !sealer.travel.isRunning || sealer.setAt !== Infinity || !sealer.canFold)
      return false
    for (let head = 0; head < sealer.marks.length; head++) if (sealer.marks[head] !== Infinity) return false
    return !sealer.crossing.mayHold
  }

  protected override takeUp(): void {
    const { sealer, spell, travel } = this
    const { mask } = spell
    sealer.tellAllSure()
    travel.begin(sealer.travel)
    this.clearFrom = sealer.clearFrom
    this.admitted[(spell.next - 1) & mask] = spell.from
    for (let own = sealer.firstOn; own < sealer.nextOn; own++) {
      const item = sealer.items[own & sealer.mask]!
      if (item !== none) this.places[this.takeUpOne(item) & mask] = sealer.entries[own & sealer.mask]!
    }
    this.firstOff = spell.next
    this.nextOn = spell.next
    for (let head = 0; head < this.unsure.length; head++) {
      this.unsure[head] = spell.next
      sealer.meets[head] = this.first + sealer.metBy(head)
    }
    if (sealer.flapItem !== none) this.folded[this.takeUpOne(sealer.flapItem) & mask] = sealer.foldedAt
  }

  private takeUpOne(item: CaseIndex): number {
    const { spell, sealer } = this
    const number = spell.add(item, sealer.floor.cases.length[item]!)
    this.entered[number & spell.mask] = spell.from
    this.admitted[number & spell.mask] = spell.from
    return number
  }

  override resume(number: number): void {
    if (number < this.firstOff) this.findDue(number & this.spell.mask)
    else this.admit(number)
  }

  override findEntry(number: number): void {
    const { mask } = this.spell
    this.entered[number & mask] = Math.max(this.wanted[number & mask]!, this.admitted[(number - 1) & mask]!)
  }

  override comes(number: number): void {
    const { spell, sealer } = this
    const place = number & spell.mask
    const at = this.entered[place]!
    this.due[place] = Infinity
    this.admitted[place] = Infinity
    if (!(at < spell.until)) return
    sealer.fold.next()
    this.folded[place] = at + sealer.fold.value
    this.admit(number)
  }

  /** The case in the flap place goes onto the belts: once it is folded, they are clear and run, and its size is set. */
  private admit(number: number): void {
    const { spell, sealer, travel } = this
    const place = number & spell.mask
    this.due[place] = Infinity
    this.admitted[place] = Infinity
    this.setFrom[place] = Infinity
    travel.travel = this.clearFrom
    travel.findWhen()
    this.clears[place] = Math.max(spell.from, travel.at)
    travel.at = Math.max(this.clears[place]!, this.folded[place]!)
    travel.findRunning()
    if (!(travel.at < spell.until)) return
    const item = spell.items[place]!
    const kind = sealer.floor.cases.kind[item]!
    if (sealer.sizeSet !== none && sealer.setting.isForOther(sealer.sizeSet, kind)) {
      if (sealer.isSetByCrew) {
        // it may have come at this instant: then it stands there, and events begin with what the machine asks for
        spell.until = justAfter(travel.at)
        return
      }
      sealer.setting.next(sealer.sizeSet, item)
      this.setFrom[place] = travel.at
      travel.at += sealer.setting.value
      this.setUntil[place] = travel.at
      travel.findRunning()
      if (!(travel.at < spell.until)) return
    }
    sealer.sizeSet = kind
    sealer.setting.isFor(item)
    this.admitted[place] = travel.at
    travel.findTravel()
    this.places[place] = Math.max(this.clearFrom, travel.travel)
    this.clearFrom = this.places[place]! + spell.lengths[place]! + sealer.gap
    this.nextOn = number + 1
    this.findDue(place)
    this.ask(number, item)
  }

  private findDue(place: number): void {
    const { travel } = this
    travel.travel = this.places[place]! + this.sealer.bed
    travel.findWhen()
    this.due[place] = travel.at
  }

  /** The spell ends where the case comes to a head that it is not sure to pass. Asked in the order of `Passing`. */
  private ask(number: number, item: CaseIndex): void {
    const { sealer, spell, unsure, travel } = this
    for (let head = 0; head < unsure.length; head++) {
      if (unsure[head] !== number || (head > 0 && unsure[0] === number)) continue
      if (sealer.isSure(head, item)) unsure[head] = number + 1
      else {
        travel.travel = this.places[number & spell.mask]! + sealer.positions[head]!
        travel.findMet()
        spell.until = Math.min(spell.until, travel.at)
      }
    }
  }

  override leave(number: number): void {
    this.standFor(number, this.travel)
  }
}
