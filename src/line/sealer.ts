/** Case sealer: a flap place, driven belts that carry cases past the heads, and all that makes the belts stand. */

import { never } from '../engine/clock.js'
import type { Draw } from '../engine/draw.js'
import { Level } from '../engine/tally.js'
import { unset } from '../engine/unset.js'
import type { EquipmentKeys } from '../scenario/schema.js'
import { gapNeeded } from '../trade/headway.js'
import type { CaseIndex } from './cases.js'
import { Dwell } from './dwell.js'
import { effectivenessMeasures, Production } from './effectiveness.js'
import type { Floor } from './floor.js'
import type { Head } from './head.js'
import { Jams } from './jams.js'
import { type Measure, pieceMeasures } from './measure.js'
import { Mechanism } from './mechanism.js'
import { Cause, State } from './states.js'
import { Taping } from './taping.js'
import { hair, Travel } from './travel.js'

type SealerKeys = EquipmentKeys<'sealer'>

const none = -1

export class Sealer extends Mechanism {
  casesLost = 0
  private readonly made: Production
  private readonly taping: Taping
  private readonly travel: Travel
  private readonly bed: number
  private readonly gap: number
  private readonly fold: Draw
  private readonly setting: Draw
  private readonly isSetByCrew: boolean
  private readonly jams: Jams | null
  private readonly dwell: Dwell | null

  // belts: rings over the running number of a case
  private readonly positions: Float64Array
  /** Belt travel from which the next case may enter, m. */
  private clearFrom = unset
  /** When the case in the flap place is folded, s. */
  private foldedAt = never
  /** When the machine has set itself for the next size, s. */
  private setAt = never
  /** Folding that is left while nobody stands there, s. */
  private foldLeft = unset
  private readonly mask: number
  private readonly items: Int32Array
  private readonly entries: Float64Array
  private firstOn = 0
  private nextOn = 0
  /** Running number of the next case to meet each head. */
  private readonly meets: Int32Array
  /** Belt travel at which that case comes to each head and, last, at which the first case comes to the end of the belts. */
  private readonly marks: Float64Array
  private isBlocked = false
  private readonly level = new Level(this.floor.clock)

  // flap place and size
  private flapItem: CaseIndex = none
  /** The machine folds, or somebody who folds stands there. */
  private canFold = true
  private readonly isFoldedByPeople: boolean
  private sizeSet = none

  // stops
  private jamDrawnFor = none

  constructor(floor: Floor, name: string, keys: SealerKeys) {
    super(floor, name)
    this.bed = keys.bed
    this.travel = new Travel(floor.clock, keys['belt-speed'])
    const given = Object.entries(keys.heads).flatMap(([which, head]) => (head ? [{ which, ...head }] : []))
    const timing = given.map(({ cut }) => ({ wipeTravel: cut['wipe-travel'], reset: cut.reset }))
    this.gap = gapNeeded(keys['minimum-gap'], timing, keys['belt-speed'])
    // planned for a case: its headway
    this.made = new Production(floor.lengths.map((length) => (length + this.gap) / keys['belt-speed']))
    this.taping = new Taping(floor, this.label, keys, () => this.unit)
    this.meets = new Int32Array(this.heads.length)
    this.marks = new Float64Array(this.heads.length + 1)
    this.positions = Float64Array.from(this.heads, (head) => head.position)

    this.isFoldedByPeople = keys.flaps['folded-by'] === 'people'
    this.fold = floor.draws(this.label, 'fold', keys.flaps.time)
    this.setting = floor.draws(this.label, 'size setting', keys['size-setting'].time)
    this.isSetByCrew = keys['size-setting'].by === 'crew'
    this.jams = keys.jams ? new Jams(floor, this.label, keys.jams) : null
    const wipe = Math.max(...timing.map((cut) => cut.wipeTravel))
    const spoils = keys['dwell-spoils']
    this.dwell = spoils > 0 ? new Dwell(floor, this.label, spoils, wipe) : null

    // a power of two well above bed over shortest pitch
    const places = 2 ** Math.ceil(Math.log2(Math.ceil(this.bed / Math.min(...floor.lengths)) + 4))
    this.mask = places - 1
    this.items = new Int32Array(places)
    this.entries = new Float64Array(places)
  }

  override empty(): void {
    this.travel.reset()
    this.firstOn = 0
    this.nextOn = 0
    this.meets.fill(0)
    this.marks.fill(never)
    this.clearFrom = 0
    this.isBlocked = false
    this.level.reset(this.floor.pictureFrom, this.floor.end)
    this.flapItem = none
    this.canFold = !this.isFoldedByPeople
    this.foldedAt = never
    this.sizeSet = none
    this.setAt = never
    this.jamDrawnFor = none
    this.dwell?.reset()
    this.taping.reset()
  }

  override countAnew(): void {
    this.level.restart(this.floor.pictureFrom, this.floor.end)
    this.casesLost = 0
    this.made.reset()
    this.taping.countAnew()
  }

  get heads(): readonly Head[] {
    return this.taping.heads
  }

  override held(): number {
    let inside = this.flapItem === none ? 0 : 1
    for (let number = this.firstOn; number < this.nextOn; number++)
      if (this.items[number & this.mask] !== none) inside++
    return inside
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
    if (this.flapItem === none || this.foldedAt > this.floor.clock.now || !this.travel.isRunning) return
    const at = this.travel.now()
    if (this.clearFrom > at + hair) return
    const kind = this.floor.cases.kind[this.flapItem]!
    if (kind !== this.sizeSet && this.sizeSet !== none && !this.isSizeReady()) return
    this.sizeSet = kind
    this.setAt = never
    const entry = Math.max(at, this.clearFrom)
    const place = this.nextOn++ & this.mask
    this.items[place] = this.flapItem
    this.floor.observer?.onBelts(this.name, this.flapItem)
    this.entries[place] = entry
    this.clearFrom = entry + this.floor.lengths[kind]! + this.gap
    this.flapItem = none
    this.foldedAt = never
    this.markLast()
    if (this.unit.owes) this.unit.invite()
  }

  /** Sets the machine for another size: by itself in the headway, or by the crew once the belts are empty. */
  private isSizeReady(): boolean {
    const { now } = this.floor.clock
    if (this.setAt !== never) return this.setAt <= now
    if (this.isSetByCrew) {
      if (this.firstOn < this.nextOn) return false
      this.unit.stop(Cause.size, this.setting.draw())
      return false
    }
    this.setting.next()
    this.setAt = now + this.setting.value
    return this.setAt <= now
  }

  // --- belts ---

  /** Finds the next marks on the belts, as far as the case that has come onto them last is the next. */
  private markLast(): void {
    const number = this.nextOn - 1
    const entry = this.entries[number & this.mask]!
    if (this.firstOn === number) this.marks[this.meets.length] = entry + this.bed
    for (let head = 0; head < this.meets.length; head++)
      if (this.meets[head] === number) this.marks[head] = entry + this.positions[head]!
  }

  /** Passes over places whose case was taken out, and finds the mark at the end of the belts. */
  private markEnd(): void {
    while (this.firstOn < this.nextOn && this.items[this.firstOn & this.mask] === none) this.firstOn++
    this.marks[this.meets.length] =
      this.firstOn < this.nextOn ? this.entries[this.firstOn & this.mask]! + this.bed : never
  }

  private markHead(head: number): void {
    let number = this.meets[head]!
    while (number < this.nextOn && this.items[number & this.mask] === none) number++
    this.meets[head] = number
    this.marks[head] =
      number < this.nextOn ? this.entries[number & this.mask]! + this.positions[head]! : never
  }

  override step(): void {
    if (this.travel.isRunning) {
      const reached = this.travel.now() + hair
      const last = this.meets.length
      for (let head = last - 1; head >= 0; head--)
        if (this.marks[head]! <= reached) {
          this.meet(head)
          if (this.unit.frozen) return
        }
      if (this.marks[last]! <= reached) this.offerFirst()
    }
    this.admit()
  }

  /** A case comes to a head: it may jam at the first one; the blade or the roll may be at its end; or it is taped. */
  private meet(index: number): void {
    const number = this.meets[index]!
    const item = this.items[number & this.mask]!
    const kind = this.floor.cases.kind[item]!
    if (index === 0 && this.jams !== null && this.jamDrawnFor < number) {
      this.jamDrawnFor = number
      if (this.jams.strikes(kind)) {
        this.floor.observer?.jams(this.name, item)
        this.unit.stop(Cause.jam, this.jams.clearing())
        return
      }
    }
    if (!this.taping.meet(index, item)) return
    this.meets[index] = number + 1
    this.markHead(index)
  }

  override putRight(cause: Cause): void {
    this.taping.putRight(cause)
    // a time long past: ready, and nothing that a standstill could push out
    if (cause === Cause.size) this.setAt = 0
    else if (cause === Cause.jam && this.jams!.spoilsCase()) {
      const place = this.meets[0]! & this.mask
      this.made.add(this.floor.cases.kind[this.items[place]!]!, false)
      this.floor.observer?.spoilt(this.name, this.items[place]!)
      this.floor.cases.remove(this.items[place]!)
      this.items[place] = none
      this.casesLost++
      this.level.change(-1)
      this.markEnd()
      for (let head = 0; head < this.meets.length; head++) this.markHead(head)
    } else if (cause === Cause.jam)
      this.floor.observer?.freed(this.name, this.items[this.meets[0]! & this.mask]!)
  }

  private offerFirst(): void {
    const item = this.items[this.firstOn & this.mask]!
    // read before it goes: its number may be used again
    const kind = this.floor.cases.kind[item]!
    const isSealed = this.floor.cases.unsealed[item] === 0
    this.isBlocked = !this.unit.next.offer(item, this.unit)
    if (this.isBlocked) {
      this.stand()
      return
    }
    this.made.add(kind, isSealed)
    this.firstOn++
    this.markEnd()
    this.level.change(-1)
    this.travel.start()
    if (this.firstOn === this.nextOn && this.flapItem === none && !this.unit.frozen) this.taping.idle()
  }

  /** The belts stop; a case that stands under a head may have to be taped again. */
  private stand(): void {
    if (this.dwell !== null) {
      const at = this.travel.now()
      if (this.dwell.isNewStandstill(at)) this.spoilUnderHeads(this.dwell, at)
    }
    this.travel.stop()
  }

  private spoilUnderHeads(dwell: Dwell, at: number): void {
    for (let number = this.firstOn; number < this.nextOn; number++) {
      const place = number & this.mask
      const item = this.items[place]!
      if (item === none) continue
      for (let head = 0; head < this.meets.length; head++) {
        const past = at - this.entries[place]! - this.positions[head]!
        if (this.meets[head]! <= number || !dwell.spoils(this.floor.cases.kind[item]!, past)) continue
        this.floor.cases.unsealed[item] = 1
        this.floor.observer?.stripSpoilt(this.name, this.heads[head]!.name, item)
      }
    }
  }

  override breakBegins(): void {
    if (!this.unit.frozen) this.taping.breakBegins()
  }

  override roomAhead(): void {
    if (this.isBlocked) this.offerFirst()
  }

  override plan(): void {
    const { now } = this.floor.clock
    const { unit } = this
    if (this.isBlocked) {
      unit.plans(never, State.blocked)
      return
    }
    let mark = never
    for (let index = 0; index < this.marks.length; index++) mark = Math.min(mark, this.marks[index]!)
    const due = this.travel.when(mark)
    if (this.setAt !== never && this.setAt > now) {
      unit.plans(Math.min(due, this.setAt), State.sizeSetting)
      return
    }
    const clear = this.travel.when(this.clearFrom)
    if (this.flapItem !== none && (this.canFold || this.foldedAt !== never)) {
      // the case that stands there enters once it is folded and the headway is over
      const enters = this.runsEmpty() ? never : Math.max(clear, this.foldedAt)
      unit.plans(Math.min(due, enters), State.working)
    } else if (clear > now) unit.plans(due, State.working, clear)
    else unit.plans(due, State.waiting)
  }

  /** A fixed-size machine lets no case in until the belts are empty and the size is set. */
  private runsEmpty(): boolean {
    if (!this.isSetByCrew || this.sizeSet === none || this.setAt !== never || this.firstOn === this.nextOn)
      return false
    return this.floor.cases.kind[this.flapItem] !== this.sizeSet
  }

  /** Folding by hand stops while nobody stands there, and goes on with what was left. */
  override manned(isManned: boolean): void {
    if (!this.isFoldedByPeople || isManned === this.canFold) return
    this.canFold = isManned
    if (this.flapItem === none) return
    const at = this.unit.frozen ? this.unit.frozenAt : this.floor.clock.now
    if (isManned) this.foldedAt = at + this.foldLeft
    else {
      this.foldLeft = Math.max(0, this.foldedAt - at)
      if (this.foldLeft > 0) this.foldedAt = never
    }
  }

  override freeze(): void {
    this.stand()
  }

  override thaw(passed: number): void {
    this.isBlocked = false
    this.travel.start()
    // an exit that was refused is offered again at once: its case still stands at the end of the belts
    const since = this.floor.clock.now - passed
    if (this.foldedAt > since) this.foldedAt += passed
    if (this.setAt > since) this.setAt += passed
  }

  override close(): void {
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

  /** Whether a case may leave it without its tape: past an empty roll, or with a strip that dwelt too long under a head. */
  get mayLeaveOpen(): boolean {
    return this.dwell !== null || this.heads.some((head) => head.mayMiss)
  }

  override measures(): Measure[] {
    const measure = pieceMeasures(this.name)
    return [
      measure('held', () => this.level.mean()),
      measure('cases-lost', () => this.casesLost),
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
