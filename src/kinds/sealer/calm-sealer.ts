/** A sealer while nothing disturbs it: from the flap place onto the belts, past heads that surely give their strip, and off. */
import { CalmPiece } from '../../line/calm/calm-piece.js'
import type { Row } from '../../line/calm/row.js'
import type { Equipment } from '../../line/equipment.js'
import { State } from '../../line/states.js'
import type { CalmAccumulating } from '../conveyor/calm-accumulating.js'
import { CalmBelt } from '../conveyor/calm-belt.js'
import { hair } from '../travel.js'
import { none } from './flap-place.js'
import type { Sealer } from './model.js'

/** Standstills that are remembered. */
const most = 4096

export class CalmSealer extends CalmPiece {
  /** When each is folded, begins to be waited for with its size, and is on the belts, s; belt travel there, m. */
  private readonly folded: Float64Array
  private readonly sizeFrom: Float64Array
  private readonly sizeUntil: Float64Array
  private readonly admitted: Float64Array
  private readonly places: Float64Array
  /** When the belts are clear behind each, s. */
  private readonly clear: Float64Array
  /** Standstills of the belts: from, until, s; and by standstill their travel, m, at the instant since which they ran before it, s. */
  private readonly standsFrom = new Float64Array(most)
  private readonly standsUntil = new Float64Array(most)
  /** 1 for one because the case at their end could not leave, 0 for one because a case stood across it. */
  private readonly isOwn = new Uint8Array(most)
  private readonly ats = new Float64Array(most)
  private readonly sinces = new Float64Array(most)
  private stands = 0
  /** Standstills that are over when the last case is admitted. */
  private over = 0
  /** Belt travel from which the next may be admitted, m. */
  private clearFrom = 0
  /** By head, the next case of which it has not been asked, or was not sure, that it passes. */
  private readonly asked: Int32Array
  /** The next to be put on the belts. */
  private nextOn = 0
  private setting = 0
  /** Numbers from which cases left, and came onto the belts, in this spell. */
  private began = 0
  private firstAdmitted = 0
  /** The conveyor that follows, onto which cases go with their tails on the belts. */
  follower: CalmBelt | CalmAccumulating | null = null
  isBeforePlace = true

  constructor(
    row: Row,
    unit: Equipment,
    private readonly sealer: Sealer,
  ) {
    super(row, unit)
    const places = row.mask + 1
    this.folded = new Float64Array(places)
    this.sizeFrom = new Float64Array(places)
    this.sizeUntil = new Float64Array(places)
    this.admitted = new Float64Array(places)
    this.places = new Float64Array(places)
    this.clear = new Float64Array(places)
    this.asked = new Int32Array(sealer.heads.length)
  }

  override isCalm(): boolean {
    const { sealer } = this
    if (sealer.isBlocked || !sealer.travel.isRunning || sealer.setAt !== Infinity || !sealer.canFold) return false
    for (let head = 0; head < sealer.marks.length; head++) if (sealer.marks[head] !== Infinity) return false
    if (sealer.crossing.isOn && !(sealer.crossing.endAt < sealer.floor.clock.now)) return false
    return true
  }

  override begin(): void {
    const { sealer, row } = this
    const { mask } = row
    sealer.tellAllSure()
    this.first = row.next
    this.ats[0] = sealer.travel.at
    this.sinces[0] = sealer.travel.since
    this.stands = 0
    this.over = 0
    this.isOwn[0] = 0
    this.standsFrom[0] = Infinity
    this.standsUntil[0] = Infinity
    this.clearFrom = sealer.clearFrom
    // holes are left out: those inside are numbered anew
    let on = row.next
    for (let own = sealer.firstOn; own < sealer.nextOn; own++) {
      const item = sealer.items[own & sealer.mask]!
      if (item === none) continue
      const number = row.bring(item, sealer.floor.cases.length[item]!)
      this.entered[number & mask] = row.from
      this.admitted[number & mask] = row.from
      this.places[number & mask] = sealer.entries[own & sealer.mask]!
    }
    this.nextOn = row.next
    this.firstAdmitted = row.next
    // those that were told at a head: their numbers
    for (let head = 0; head < this.asked.length; head++) {
      let met = on
      for (let own = sealer.firstOn; own < sealer.meets[head]!; own++) if (sealer.items[own & sealer.mask] !== none) met++
      sealer.meets[head] = met
      this.asked[head] = row.next
    }
    if (sealer.flapItem !== none) {
      const number = row.bring(sealer.flapItem, sealer.floor.cases.length[sealer.flapItem]!)
      this.entered[number & mask] = row.from
      this.folded[number & mask] = sealer.foldedAt
    }
    this.told = row.next
    this.began = this.first
    this.admitted[(this.first - 1) & mask] = row.from
    this.entered[(this.first - 1) & mask] = row.from
  }

  override resume(number: number): void {
    if (number < this.nextOn) this.findDue(number)
    else this.admit(number)
  }

  override enter(number: number): void {
    const { row, sealer } = this
    const place = number & row.mask
    const at = Math.max(this.wanted[place]!, this.admitted[(number - 1) & row.mask]!)
    this.entered[place] = at
    this.due[place] = Infinity
    this.admitted[place] = Infinity
    if (!(at < row.until)) return
    sealer.fold.next()
    this.folded[place] = at + sealer.fold.value
    this.admit(number)
  }

  /** When the belts have come to this travel, if no case ahead is yet unworked; from standstill `over` on. */
  private admit(number: number): void {
    const { row, sealer, standsFrom, standsUntil } = this
    const place = number & row.mask
    const speed = sealer.keys['belt-speed']
    const item = row.items[place]!
    this.due[place] = Infinity
    this.admitted[place] = Infinity
    this.sizeFrom[place] = Infinity
    this.sizeUntil[place] = Infinity
    let over = this.over
    let clear = this.sinces[over]! + (this.clearFrom - this.ats[over]!) / speed
    while (over < this.stands && standsFrom[over]! <= clear) {
      over++
      clear = Math.max(this.sinces[over]!, this.sinces[over]! + (this.clearFrom - this.ats[over]!) / speed)
    }
    let at = Math.max(row.from, clear)
    this.clear[place] = at
    if (this.folded[place]! > at) at = this.folded[place]!
    while (over < this.stands && standsFrom[over]! <= at) at = Math.max(at, standsUntil[over++]!)
    if (!(at < row.until)) {
      this.over = over
      return
    }
    const kind = sealer.floor.cases.kind[item]!
    if (sealer.sizeSet !== none && sealer.setting.isForOther(sealer.sizeSet, kind)) {
      if (sealer.isSetByCrew) {
        row.until = at
        this.over = over
        return
      }
      sealer.setting.next(sealer.sizeSet, item)
      this.sizeFrom[place] = at
      at += sealer.setting.value
      this.sizeUntil[place] = at
      while (over < this.stands && standsFrom[over]! <= at) at = Math.max(at, standsUntil[over++]!)
    }
    this.over = over
    if (!(at < row.until)) return
    sealer.sizeSet = kind
    sealer.setting.isFor(item)
    this.admitted[place] = at
    this.places[place] = Math.max(this.clearFrom, this.ats[over]! + speed * (at - this.sinces[over]!))
    this.clearFrom = this.places[place]! + row.lengths[place]! + sealer.gap
    this.nextOn = number + 1
    this.findDue(number)
    this.ask(number, item)
  }

  private findDue(number: number): void {
    this.due[number & this.row.mask] = this.when(this.places[number & this.row.mask]! + this.sealer.bed)
  }

  private when(travel: number): number {
    const speed = this.sealer.keys['belt-speed']
    let { over } = this
    let at = this.sinces[over]! + (travel - this.ats[over]!) / speed
    while (over < this.stands && this.standsFrom[over]! <= at) {
      over++
      at = Math.max(this.sinces[over]!, this.sinces[over]! + (travel - this.ats[over]!) / speed)
    }
    return at
  }

  /** The same of a head: where the belts stop at that instant because the case at their end cannot leave, the head is first. */
  private meets(travel: number): number {
    const speed = this.sealer.keys['belt-speed']
    let { over } = this
    let at = this.sinces[over]! + (travel - this.ats[over]!) / speed
    while (
      over < this.stands &&
      (this.isOwn[over] === 1 ? this.standsFrom[over]! < at : this.standsFrom[over]! <= at)
    ) {
      over++
      at = Math.max(this.sinces[over]!, this.sinces[over]! + (travel - this.ats[over]!) / speed)
    }
    return at
  }

  /** Whether it passes the heads for sure: if not, the spell ends where it comes there. */
  private ask(number: number, item: number): void {
    const { sealer, asked } = this
    for (let head = 0; head < asked.length; head++) {
      if (asked[head] !== number) continue
      if (head > 0 && asked[0] === number) continue
      if (sealer.isSure(head, item)) asked[head] = number + 1
      else {
        const at = this.meets(this.places[number & this.row.mask]! + sealer.positions[head]!)
        if (at < this.row.until) this.row.until = at
      }
    }
  }

  override leaves(number: number): void {
    const { mask } = this.row
    const place = number & mask
    const left = this.left[place]!
    if (left > this.due[place]!) {
      this.isOwn[this.stands] = 1
      this.stand(this.due[place]!, left)
    }
    if (!(left < this.row.until)) return
    if (this.follower instanceof CalmBelt) this.crossToBelt(number, this.follower)
    else if (this.follower !== null) this.crossToQueue(number, this.follower)
  }

  /** While the belt ahead stands the tail holds the belts. */
  private crossToBelt(number: number, belt: CalmBelt): void {
    const { mask } = this.row
    const place = number & mask
    for (let ahead = belt.gone + 1; ahead < number; ahead++) {
      const from = belt.due[ahead & mask]!
      const gone = belt.ats[ahead & mask]! + belt.speed * (from - belt.sinces[ahead & mask]!) - belt.places[place]!
      if (!(gone < this.row.lengths[place]! - hair)) break
      if (!(belt.left[ahead & mask]! > from)) continue
      this.isOwn[this.stands] = from === this.due[place]! ? 1 : 0
      this.stand(from, belt.left[ahead & mask]!)
    }
  }

  /** While the case stands across the joint, behind those that have closed up ahead, it holds the belts. */
  private crossToQueue(number: number, queue: CalmAccumulating): void {
    const { mask } = this.row
    const place = number & mask
    const { pitchBefore, left, speed, length } = queue
    const entered = queue.entered[place]!
    const before = pitchBefore[place]!
    const target = this.row.lengths[place]!
    let gone = 0
    let since = entered
    for (let ahead = queue.gone + 1; ahead < number; ahead++) {
      // where it stands until this one has left
      const reach = target - (before - pitchBefore[ahead & mask]! + target - length)
      if (!(reach <= target - hair)) break
      const beyond = before + reach - length - pitchBefore[(ahead - 1) & mask]!
      let from = since
      if (reach > gone + hair) {
        from = Math.max(from, entered + reach / speed)
        if (beyond > 0) from = Math.max(from, left[(ahead - 1) & mask]! + beyond / speed)
      }
      const until = left[ahead & mask]!
      if (until > from) {
        this.isOwn[this.stands] = from === this.due[place]! ? 1 : 0
        this.stand(from, until)
      }
      gone = reach
      since = Math.max(from, until)
    }
  }

  private stand(from: number, until: number): void {
    const { stands } = this
    this.standsFrom[stands] = from
    this.standsUntil[stands] = until
    this.ats[stands + 1] = this.ats[stands]! + this.sealer.keys['belt-speed'] * (from - this.sinces[stands]!)
    this.sinces[stands + 1] = until
    this.stands = stands + 1
    this.isOwn[stands + 1] = 0
    this.standsFrom[stands + 1] = Infinity
  }

  override tell(): void {
    const { row, sealer } = this
    const { mask, until } = row
    const { level } = sealer
    level.up = this.told
    level.down = this.first
    level.tell(this.entered, this.left, mask, row.next, until)
    this.told = level.up
    for (let head = 0; head < this.asked.length; head++) {
      for (let number = Math.max(this.first, sealer.meets[head]!); number < level.down; number++)
        sealer.taping.passed(head, row.items[number & mask]!)
      sealer.meets[head] = Math.max(level.down, sealer.meets[head]!)
    }
    for (let number = this.first; number < level.down; number++) {
      sealer.made.length = row.lengths[number & mask]!
      sealer.made.add(sealer.floor.cases.unsealed[row.items[number & mask]!] === 0)
    }
    this.first = level.down
    this.tellStates()
  }

  private tellStates(): void {
    const { row, entered, clear, sizeFrom, told } = this
    const { mask, until } = row
    let blocked = 0
    for (let each = 0; each < this.stands && this.standsFrom[each]! < until; each++)
      blocked += Math.min(until, this.standsUntil[each]!) - this.standsFrom[each]!
    let waiting = 0
    let setting = 0
    this.over = 0
    let number = this.firstAdmitted
    for (; number < told; number++) {
      const place = number & mask
      if (entered[place]! > clear[place]!) waiting += this.running(clear[place]!, entered[place]!)
      if (sizeFrom[place]! < until) setting += this.running(sizeFrom[place]!, Math.min(until, this.sizeUntil[place]!))
    }
    if (number === this.nextOn) {
      const clear = Math.max(row.from, this.when(this.clearFrom))
      if (clear < until) waiting += this.running(clear, until)
    }
    this.waiting = waiting
    this.blocked = blocked
    this.setting = setting
  }

  /** Time from `from` to `until` in which the belts ran: asked in the order of time. */
  private running(from: number, until: number): number {
    const { standsFrom, standsUntil, stands } = this
    while (this.over < stands && standsUntil[this.over]! <= from) this.over++
    let sum = until - from
    for (let each = this.over; each < stands && standsFrom[each]! < until; each++)
      sum -= Math.min(until, standsUntil[each]!) - Math.max(from, standsFrom[each]!)
    return sum
  }

  protected override rests(): void {
    const { row, entered, clear, sizeFrom } = this
    const { mask } = row
    this.over = 0
    let number = this.firstAdmitted
    for (; number < this.told; number++) {
      const place = number & mask
      this.restBefore(clear[place]!)
      this.rest(clear[place]!, entered[place]!)
      if (sizeFrom[place]! === Infinity) continue
      this.restBefore(sizeFrom[place]!)
      this.rest(sizeFrom[place]!, this.sizeUntil[place]!)
    }
    if (number === this.nextOn) {
      const clearAt = Math.max(row.from, this.when(this.clearFrom))
      this.restBefore(clearAt)
      this.rest(clearAt, Infinity)
    }
    this.restBefore(Infinity)
  }

  /** Standstills that begin before the instant, and have not been told. */
  private restBefore(at: number): void {
    for (; this.over < this.stands && this.standsFrom[this.over]! < at; this.over++)
      this.rest(this.standsFrom[this.over]!, this.standsUntil[this.over]!)
  }

  override end(): void {
    const { row, sealer } = this
    const { mask, until } = row
    this.unit.stateTimes[State.sizeSetting]! += this.setting
    this.other = this.setting
    let over = 0
    while (over < this.stands && this.standsUntil[over]! <= until) over++
    sealer.travel.at = this.ats[over]!
    sealer.travel.since = this.sinces[over]!
    if (over < this.stands && this.standsFrom[over]! < until) {
      sealer.travel.at = this.ats[over + 1]!
      sealer.travel.since = Infinity
      sealer.travel.isRunning = false
    }
    sealer.clearFrom = this.clearFrom
    sealer.firstOn = this.first
    let number = this.first
    for (; number < this.told && this.admitted[number & mask]! < until; number++) {
      sealer.items[number & sealer.mask] = row.items[number & mask]!
      sealer.entries[number & sealer.mask] = this.places[number & mask]!
    }
    sealer.nextOn = number
    sealer.flapItem = none
    sealer.foldedAt = Infinity
    sealer.setAt = Infinity
    if (number < this.told) {
      sealer.flapItem = row.items[number & mask]!
      sealer.foldedAt = this.folded[number & mask]!
      if (this.sizeFrom[number & mask]! < until) sealer.setAt = this.sizeUntil[number & mask]!
    }
    for (let head = 0; head < this.asked.length; head++) {
      sealer.unsure[head] = this.asked[head]!
      if (sealer.meets[head]! < sealer.firstOn) sealer.meets[head] = sealer.firstOn
    }
    sealer.markEnd()
    for (let head = 0; head < this.asked.length; head++) sealer.markUnsure(head)
    const last = this.first - 1
    if (!this.isBeforePlace && last >= this.began) {
      sealer.crossing.length = row.lengths[last & mask]!
      sealer.crossing.begin()
    }
  }
  /** After all pieces have been put right. */
  override ended(): void {
    const { sealer, row } = this
    if (sealer.firstOn < sealer.nextOn && this.due[this.first & row.mask]! < row.until)
      sealer.isBlocked = !this.unit.next.offer(row.items[this.first & row.mask]!, this.unit)
    if (!this.isBeforePlace) sealer.tailMoves()
  }
}
