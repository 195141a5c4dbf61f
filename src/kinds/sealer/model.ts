/** Case sealer: a flap place, driven belts that carry cases past the heads, and all that makes the belts stand. */

import { never } from '../../engine/clock.js'
import { Level } from '../../engine/tally.js'
import type { CaseIndex } from '../../line/cases.js'
import { effectivenessMeasures, Production } from '../../line/effectiveness.js'
import type { Floor } from '../../line/floor.js'
import { type Measure, pieceMeasures } from '../../line/measure.js'
import { Cause, State } from '../../line/states.js'
import type { Taper } from '../../line/taper.js'
import { none } from './flap-place.js'
import type { SealerKeys } from './keys.js'
import { Passing } from './passing.js'
import { SizeSetting } from './size-setting.js'

export class Sealer extends Passing implements Taper {
  readonly made: Production
  readonly setting: SizeSetting
  readonly isSetByCrew: boolean
  private readonly changesWhenIdle: boolean

  /** When the machine has set itself for the next size, s. */
  setAt = never
  isBlocked = false
  readonly level = new Level(this.floor.clock)
  sizeSet = none
  /** Where somebody looks on: when something happens next but what is told alone, s. */
  private dueAt = never

  constructor(floor: Floor, name: string, keys: SealerKeys) {
    super(floor, name, keys)
    this.made = new Production(this.gap, keys['belt-speed'])
    this.changesWhenIdle = this.taping.changesWhenIdle
    this.setting = new SizeSetting(floor, this.label, keys['size-setting'])
    this.isSetByCrew = keys['size-setting'].by === 'crew'
  }

  /** What its stage knows: standing under a head spoils nothing, it waits for no idle time, and it starts at once. */
  get isPlain(): boolean {
    return this.dwell === null && !this.changesWhenIdle && this.keys.acceleration === undefined
  }

  override empty(): void {
    super.empty()
    this.isBlocked = false
    this.level.reset(this.floor.pictureFrom, this.floor.end)
    this.sizeSet = none
    this.setAt = never
  }

  override countAnew(): void {
    this.tellAllSure()
    this.level.restart(this.floor.pictureFrom, this.floor.end)
    this.made.reset()
    this.taping.countAnew()
  }

  override held(): number {
    return this.riding() + (this.flapItem === none ? 0 : 1)
  }

  // --- flap place ---

  override take(item: CaseIndex): boolean {
    if (this.unit.frozen || this.flapItem !== none) return false
    this.flapItem = item
    this.fold.next()
    this.foldLeft = this.fold.value
    this.foldedAt = this.canFold ? this.floor.clock.now + this.fold.value : never
    this.level.change(1)
    return true
  }

  /** Moves the folded case onto the belts when headway and size allow it. */
  private admit(): void {
    const { now } = this.floor.clock
    if (this.flapItem === none || this.foldedAt > now || !this.travel.isRunning) return
    if (this.travel.when(this.clearFrom) > now) return
    const item = this.flapItem
    const kind = this.floor.cases.kind[item]!
    const isOtherSize = this.setting.isForOther(this.sizeSet, kind)
    if (isOtherSize && this.sizeSet !== none && !this.isSizeReady(item)) return
    this.sizeSet = kind
    this.setting.isFor(item)
    this.setAt = never
    const entry = Math.max(this.travel.now(), this.clearFrom)
    const place = this.nextOn++ & this.mask
    this.items[place] = item
    this.floor.observer?.onBelts(this.name, item)
    this.entries[place] = entry
    this.clearFrom = entry + this.floor.cases.length[item]! + this.gap
    this.flapItem = none
    this.foldedAt = never
    this.markLast()
    if (this.crossing.isSlow) this.tailMoves()
    if (this.unit.owes) this.unit.invite()
  }

  /** Sets the machine for another size: by itself in the headway, or by the crew once the belts are empty. */
  private isSizeReady(item: CaseIndex): boolean {
    const { now } = this.floor.clock
    if (this.setAt !== never) return this.setAt <= now
    if (this.isSetByCrew) {
      if (this.firstOn < this.nextOn || this.holdsTail()) return false
      this.setting.next(this.sizeSet, item)
      this.unit.stop(Cause.size, this.setting.value)
      return false
    }
    this.setting.next(this.sizeSet, item)
    this.setAt = now + this.setting.value
    return this.setAt <= now
  }

  // --- belts ---

  override step(): void {
    if (this.floor.observer !== null && this.onlyTells()) return
    if (this.crossing.nextAt <= this.floor.clock.now) this.tailMoves()
    if (this.travel.isRunning) {
      if (!this.allPass()) return
      if (this.hasCome(this.endMark)) this.offerFirst()
    }
    if (this.changesWhenIdle) this.changeWhenIdle()
    this.admit()
  }

  /** Somebody looks on: nothing happens but that a case passes a head that was sure to. */
  private onlyTells(): boolean {
    if (this.dueAt <= this.floor.clock.now) return false
    this.tellAllSure()
    return true
  }

  override putRight(cause: Cause): void {
    this.taping.putRight(cause)
    // a time long past: ready, and nothing that a standstill could push out
    if (cause === Cause.size) this.setAt = 0
    if (cause === Cause.jam) this.cleared(this.meets[0]! & this.mask)
  }

  /** The case at this place jammed, and goes on or is taken out. */
  private cleared(place: number): void {
    const item = this.items[place]!
    const length = this.floor.cases.length[item]!
    if (!this.jams!.spoils(this.name, item)) return
    this.made.length = length
    this.made.add(false)
    this.takeOut(place)
    this.level.change(-1)
  }

  private offerFirst(): void {
    const item = this.items[this.firstOn & this.mask]!
    // read before it goes: its number may be used again
    const length = this.floor.cases.length[item]!
    const isSealed = this.floor.cases.unsealed[item] === 0
    this.isBlocked = !this.unit.next.offer(item, this.unit)
    if (this.isBlocked) {
      this.stand()
      return
    }
    this.made.length = length
    this.made.add(isSealed)
    this.firstOn++
    this.markEnd()
    this.level.change(-1)
    if (this.isBeforePlace) this.travel.start()
    else {
      this.crossing.length = length
      this.crossing.begin()
      this.tailMoves()
    }
    if (this.changesWhenIdle) this.changeWhenIdle()
  }

  /** The belts run, unless the case at their end cannot leave or the one stands that has just left. */
  private runOrStand(): void {
    if (!this.isBlocked && !this.crossing.stands) this.travel.start()
    else if (this.travel.isRunning) this.stand()
  }

  override tailMoves(): void {
    this.lookAcross()
    this.runOrStand()
  }

  /** No case is in the machine any more: rolls that are low are changed where the scenario has it so. */
  private changeWhenIdle(): void {
    if (this.firstOn < this.nextOn || this.flapItem !== none || this.unit.frozen) return
    if (this.taping.isLow && !this.holdsTail()) this.taping.idle()
  }

  override breakBegins(): void {
    if (this.unit.frozen) return
    this.tellAllSure()
    this.taping.breakBegins()
  }

  override roomAhead(): void {
    if (this.isBlocked) this.offerFirst()
  }

  override plan(): void {
    if (this.isBlocked || this.crossing.stands) this.unit.plans(this.crossing.nextAt, State.blocked, never)
    else this.planWork()
    if (this.floor.observer !== null) this.planToTell()
  }

  private planWork(): void {
    const { now } = this.floor.clock
    let mark = this.endMark
    for (let index = 0; index < this.marks.length; index++) mark = Math.min(mark, this.marks[index]!)
    let due = Math.min(this.travel.when(mark), this.crossing.nextAt)
    let state: State = State.working
    let lapse = never
    const clear = this.travel.when(this.clearFrom)
    if (this.setAt !== never && this.setAt > now) {
      due = Math.min(due, this.setAt)
      state = State.sizeSetting
    } else if (this.flapItem !== none && (this.canFold || this.foldedAt !== never)) {
      // the case that stands there enters once it is folded and the headway is over
      if (!this.runsEmpty()) due = Math.min(due, Math.max(clear, this.foldedAt))
    } else if (clear > now) lapse = clear
    else state = State.waiting
    this.unit.plans(due, state, lapse)
  }

  /** Somebody looks on, and is told what comes to a head at its instant. */
  private planToTell(): void {
    this.dueAt = this.unit.due
    this.unit.actsBy(this.travel.when(this.nextSure()))
  }

  /** A fixed-size machine lets no case in until the belts are empty, of tails too, and the size is set. */
  private runsEmpty(): boolean {
    if (!this.isSetByCrew || this.sizeSet === none || this.setAt !== never) return false
    if (this.firstOn === this.nextOn && !this.crossing.isWaitedOut) return false
    return this.floor.cases.kind[this.flapItem] !== this.sizeSet
  }

  override freeze(): void {
    this.stand()
    this.holdTail(true)
    this.crossing.forget()
  }

  override thaw(passed: number): void {
    this.isBlocked = false
    this.holdTail(false)
    this.tailMoves()
    // an exit that was refused is offered again at once: its case still stands at the end of the belts
    const since = this.floor.clock.now - passed
    if (this.foldedAt > since) this.foldedAt += passed
    if (this.setAt > since) this.setAt += passed
  }

  override close(): void {
    this.tellAllSure()
    this.level.settle()
  }

  override mayStandFor(): Cause[] {
    const may: Cause[] = [Cause.tape]
    if (this.taping.mayBreakTape) may.push(Cause.tapeBreak)
    if (this.jams) may.push(Cause.jam)
    if (this.taping.hasBlade) may.push(Cause.blade)
    if (this.isSetByCrew) may.push(Cause.size)
    return may
  }

  override taper(): Sealer {
    return this
  }

  get mayLeaveOpen(): boolean {
    return this.dwell !== null || this.heads.some((head) => head.mayMiss)
  }

  override measures(): Measure[] {
    const measure = pieceMeasures(this.name)
    return [
      measure('held', () => this.level.mean()),
      measure('cases-lost', () => this.jams?.casesLost ?? 0),
      ...this.heads.flatMap((head) => head.measures(this.name)),
      ...effectivenessMeasures(
        this.unit,
        this.made,
        this.floor,
        this.mayLeaveOpen || this.jams?.maySpoil === true,
      ),
    ]
  }
}
