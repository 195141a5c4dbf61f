/** A sealer while nothing disturbs it: what is counted of a spell, and where its end finds it. */
import { State } from '../../line/states.js'
import { BeltsAhead } from './belts-ahead.js'
import { none } from './flap-place.js'

export class SealerStage extends BeltsAhead {
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
    if (sealer.firstOn < sealer.nextOn && this.due[oldest & spell.mask]! < spell.until) {
      // it has passed the heads, which is told before it is offered again
      sealer.tellAllSure()
      sealer.isBlocked = !unit.next.offer(spell.items[oldest & spell.mask]!, unit)
    }
    this.lookAcross(sealer, this.travel)
  }
}
