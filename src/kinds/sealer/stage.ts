/** A sealer while nothing disturbs it: from the flap place onto the belts, past heads that are sure to tape, and off. */
import { justAfter } from '../../engine/neighbours.js'
import type { CaseIndex } from '../../line/cases.js'
import type { Equipment } from '../../line/equipment.js'
import { State } from '../../line/states.js'
import type { Spell } from '../spell.js'
import { Stage } from '../stage.js'
import { TravelAhead } from '../travel-ahead.js'
import { none } from './flap-place.js'
import type { Sealer } from './model.js'

export class SealerStage extends Stage {
  /** What follows: a case that goes there may stand across the joint. */
  next: Stage | null = null
  private readonly travel: TravelAhead
  private readonly speed: number
  /** When each is folded, when its size is set from and until, and when it is admitted to the belts, s. */
  private readonly folded: Float64Array
  private readonly setFrom: Float64Array
  private readonly setUntil: Float64Array
  private readonly admitted: Float64Array
  /** Belt travel at which each is admitted, m, and the instant at which the belts were clear for it, s. */
  private readonly places: Float64Array
  private readonly clears: Float64Array
  /** Belt travel from which the next may be admitted, m. */
  private clearFrom = 0
  /** By head, the next case of which it has not been asked whether it is sure to pass, or which is not. */
  private readonly unsure: Int32Array
  /** The first that was not on the belts when the spell began, and the next to be admitted. */
  private firstOff = 0
  private nextOn = 0

  constructor(
    spell: Spell,
    unit: Equipment,
    private readonly sealer: Sealer,
  ) {
    super(spell, unit)
    this.speed = sealer.keys['belt-speed']
    this.travel = new TravelAhead(this.speed)
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
    return !sealer.crossing.isOn || sealer.crossing.endAt < sealer.floor.clock.now
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
    const place = number & this.spell.mask
    const from = this.due[place]!
    const until = this.gone[place]!
    if (until > from) this.travel.stand(from, until, true)
    if (until < this.spell.until) this.next?.standAcross(number, this.travel)
  }

  // --- what is counted ---

  override tell(): void {
    const { spell, sealer, entered, gone } = this
    const { mask, from, until, next } = spell
    let { newest, oldest } = this
    while (newest < next && entered[newest & mask]! < until) newest++
    let held = 0
    for (let number = oldest; number < newest; number++) {
      const at = gone[number & mask]!
      if (at < until) oldest++
      held += Math.min(at, until) - Math.max(entered[number & mask]!, from)
    }
    sealer.floor.clock.now = from
    sealer.level.settle()
    sealer.level.tellArea(held, newest - oldest, until)
    this.oldest = oldest
    this.newest = newest
    this.tellMade()
    this.tellStates()
  }

  private tellMade(): void {
    const { spell, sealer, first, oldest } = this
    const { mask, items, lengths } = spell
    const { made, meets } = sealer
    for (let head = 0; head < meets.length; head++)
      for (; meets[head]! < oldest; meets[head]!++) sealer.taping.passed(head, items[meets[head]! & mask]!)
    for (let number = first; number < oldest; number++) {
      made.length = lengths[number & mask]!
      made.add(sealer.floor.cases.unsealed[items[number & mask]!] === 0)
    }
  }

  private tellStates(): void {
    const { spell, entered, clears, setFrom, setUntil, travel } = this
    const { mask, until } = spell
    let waiting = 0
    let setting = 0
    travel.over = 0
    for (let number = this.firstOff; number < this.newest; number++) {
      const place = number & mask
      if (entered[place]! > clears[place]!) waiting += travel.running(clears[place]!, entered[place]!)
      if (setFrom[place]! < until)
        setting += travel.running(setFrom[place]!, Math.min(until, setUntil[place]!))
    }
    const idle = this.idleFrom
    if (idle < until) waiting += travel.running(idle, until)
    this.waiting = waiting
    this.blocked = travel.standing(until)
    this.other = setting
    this.unit.stateTimes[State.sizeSetting]! += setting
  }

  /** Since when no case has been in the flap place and the belts have been clear, at the end of the spell, s; or never. */
  private get idleFrom(): number {
    if (this.newest !== this.nextOn) return Infinity
    this.travel.travel = this.clearFrom
    this.travel.findWhen()
    return Math.max(this.spell.from, this.travel.at)
  }

  protected override rests(): void {
    const { spell, entered, clears, setFrom, setUntil, travel } = this
    travel.over = 0
    for (let number = this.firstOff; number < this.newest; number++) {
      const place = number & spell.mask
      travel.tellRests(clears[place]!, this)
      this.rest(clears[place]!, entered[place]!)
      if (setFrom[place] === Infinity) continue
      travel.tellRests(setFrom[place]!, this)
      this.rest(setFrom[place]!, setUntil[place]!)
    }
    const idle = this.idleFrom
    travel.tellRests(idle, this)
    this.rest(idle, Infinity)
    travel.tellRests(Infinity, this)
  }

  // --- the end of the spell ---

  override end(): void {
    const { sealer, spell, travel, oldest } = this
    const { mask, until } = spell
    travel.end(sealer.travel, until)
    sealer.clearFrom = this.clearFrom
    sealer.firstOn = oldest
    let number = oldest
    for (; number < this.newest && this.admitted[number & mask]! < until; number++) {
      sealer.items[number & sealer.mask] = spell.items[number & mask]!
      sealer.entries[number & sealer.mask] = this.places[number & mask]!
    }
    sealer.nextOn = number
    const place = number & mask
    const isInFlap = number < this.newest
    sealer.flapItem = isInFlap ? spell.items[place]! : none
    sealer.foldedAt = isInFlap ? this.folded[place]! : Infinity
    sealer.setAt = isInFlap && this.setFrom[place]! < until ? this.setUntil[place]! : Infinity
    for (let head = 0; head < this.unsure.length; head++) {
      sealer.unsure[head] = this.unsure[head]!
      sealer.meets[head] = Math.max(oldest, sealer.meets[head]!)
    }
    sealer.markEnd()
    for (let head = 0; head < this.unsure.length; head++) sealer.markUnsure(head)
  }

  override offer(): void {
    const { sealer, spell, oldest, unit } = this
    if (sealer.firstOn < sealer.nextOn && this.due[oldest & spell.mask]! < spell.until)
      sealer.isBlocked = !unit.next.offer(spell.items[oldest & spell.mask]!, unit)
    if (!sealer.isBeforePlace && oldest > this.first) this.look()
  }

  /** At the case that left last, when the machine would have last: near the place where it will stand it would be taken to stand. */
  private look(): void {
    const { sealer, spell, oldest, next } = this
    const { clock } = sealer.floor
    const { now } = clock
    clock.now = Math.max(this.leftLast, next!.leftLast, this.travel.lastTurn(spell.until))
    sealer.crossing.length = spell.lengths[(oldest - 1) & spell.mask]!
    sealer.crossing.begin()
    sealer.tailMoves()
    clock.now = now
  }
}
