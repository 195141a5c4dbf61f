/** The driven belts of a sealer: which case is where on them, and how far they must run until the next one comes to a head or to their end. */
import { never } from '../../engine/clock.js'
import { unset } from '../../engine/unset.js'
import type { Floor } from '../../line/floor.js'
import { gapNeeded } from '../../trade/headway.js'
import { Crossing } from '../crossing.js'
import { travelOf } from '../run-up-travel.js'
import type { Travel } from '../travel.js'
import { Dwell } from './dwell.js'
import { FlapPlace, none } from './flap-place.js'
import { cutsOf, headsOf } from './heads.js'
import type { SealerKeys } from './keys.js'

/** A lower part of `Sealer`, which is the only class that is made of it: one object a machine, for speed. */
export abstract class Belts extends FlapPlace {
  protected readonly travel: Travel
  private readonly bed: number
  /** Of the heads, first head first, from the start of the belts, m. */
  protected readonly positions: Float64Array
  /** Rings over the running number of a case: the case, and the belt travel at which it entered, m. */
  protected readonly mask: number
  protected readonly items: Int32Array
  protected readonly entries: Float64Array
  protected firstOn = 0
  protected nextOn = 0
  /** Belt travel from which the next case may enter, m. */
  protected clearFrom = unset
  /** Kept between cases, m: by the speed of the belts. */
  protected gap = unset
  private readonly cuts: ReturnType<typeof cutsOf>
  /** Running number of the next case to meet each head. */
  protected readonly meets: Int32Array
  /** Belt travel at which that case comes to each head and, last, at which the first case comes to the end of the belts. */
  protected readonly marks: Float64Array
  protected readonly dwell: Dwell | null
  /** The case that left last, while its tail lies on the belts. */
  protected readonly crossing: Crossing
  /** Speed that is asked of the belts, m/s, and the share of it at which they run. */
  private asked = unset
  private share = unset
  private isHolding = false
  /** What follows takes cases in whole. */
  protected isBeforePlace = true

  constructor(
    floor: Floor,
    name: string,
    protected readonly keys: SealerKeys,
  ) {
    super(floor, name, keys)
    this.bed = keys.bed
    this.travel = travelOf(floor.clock, keys['belt-speed'], keys)
    this.crossing = new Crossing(floor, () => this.unit, keys['belt-speed'])
    this.cuts = cutsOf(keys)
    this.gap = gapNeeded(keys['minimum-gap'], this.cuts, keys['belt-speed'])
    this.positions = Float64Array.from(headsOf(keys), ([, { position }]) => position).sort()
    this.meets = new Int32Array(this.positions.length)
    this.marks = new Float64Array(this.positions.length + 1)
    // a power of two well above bed over shortest pitch
    const places = 2 ** Math.ceil(Math.log2(Math.ceil(this.bed / floor.cases.sizes.shortest) + 4))
    this.mask = places - 1
    this.items = new Int32Array(places)
    this.entries = new Float64Array(places)
    const wipe = Math.max(...cutsOf(keys).map((cut) => cut.wipeTravel))
    const spoils = keys['dwell-spoils']
    this.dwell = spoils > 0 ? new Dwell(floor, this.label, spoils, wipe) : null
  }

  override empty(): void {
    super.empty()
    this.travel.reset()
    this.gap = gapNeeded(this.keys['minimum-gap'], this.cuts, this.keys['belt-speed'])
    this.clearFrom = 0
    this.firstOn = 0
    this.nextOn = 0
    this.meets.fill(0)
    this.marks.fill(never)
    this.dwell?.reset()
    this.crossing.reset()
    this.asked = this.keys['belt-speed']
    this.share = 1
    this.isHolding = false
    this.isBeforePlace = this.unit.next.takesWhole
  }

  override get carries(): boolean {
    return true
  }

  override get pace(): number {
    return this.travel.isRunning ? this.travel.speed : 0
  }

  override get standsForTail(): boolean {
    return this.crossing.stands
  }

  /** The gap before the next case follows the speed; those on the belts keep theirs. */
  override runsAt(speed: number): void {
    this.asked = speed
    this.goAt(speed * this.share)
  }

  override worksAt(share: number): void {
    this.share = share
    this.goAt(this.asked * share)
  }

  private goAt(speed: number): void {
    const gap = gapNeeded(this.keys['minimum-gap'], this.cuts, speed)
    if (this.nextOn > 0) this.clearFrom += gap - this.gap
    this.gap = gap
    this.crossing.speed = speed
    this.travel.runsAt(speed, this.crossing)
    if (!this.unit.frozen) this.tailMoves()
    this.unit.tellBehind()
  }

  override heedsTail(): boolean {
    return this.crossing.isOn
  }

  /** Looks how the case goes on whose tail is on the belts. */
  protected lookAcross(): void {
    this.crossing.behind = this.marks[this.meets.length]! - this.travel.now()
    this.crossing.look()
    this.travel.keepTo(this.crossing)
  }

  /** Whether a tail is still between the belts; if so, they act when it has crossed. */
  protected holdsTail(): boolean {
    this.crossing.isAwaited = true
    this.lookAcross()
    return this.crossing.isOn
  }

  /** The belts stop, and hold a case whose tail is between them, or they run again and let it go. */
  protected holdTail(isHeld: boolean): void {
    if (isHeld) this.lookAcross()
    if (isHeld ? !this.crossing.isOn : !this.isHolding) return
    this.isHolding = isHeld
    this.unit.next.hold(isHeld, this.unit)
  }

  /** Cases on the belts. */
  protected riding(): number {
    let riding = 0
    for (let number = this.firstOn; number < this.nextOn; number++)
      if (this.items[number & this.mask] !== none) riding++
    return riding
  }

  /** First head first, in the direction of travel. */
  abstract get heads(): readonly { name: string }[]

  protected takeOut(place: number): void {
    this.items[place] = none
    this.markEnd()
    for (let head = 0; head < this.meets.length; head++) this.markHead(head)
  }

  /** Finds the next marks on the belts, as far as the case that has come onto them last is the next. */
  protected markLast(): void {
    const number = this.nextOn - 1
    const entry = this.entries[number & this.mask]!
    if (this.firstOn === number) this.marks[this.meets.length] = entry + this.bed
    for (let head = 0; head < this.meets.length; head++)
      if (this.meets[head] === number) this.marks[head] = entry + this.positions[head]!
  }

  /** Passes over places whose case was taken out, and finds the mark at the end of the belts. */
  protected markEnd(): void {
    while (this.firstOn < this.nextOn && this.items[this.firstOn & this.mask] === none) this.firstOn++
    this.marks[this.meets.length] =
      this.firstOn < this.nextOn ? this.entries[this.firstOn & this.mask]! + this.bed : never
  }

  protected markHead(head: number): void {
    let number = this.meets[head]!
    while (number < this.nextOn && this.items[number & this.mask] === none) number++
    this.meets[head] = number
    this.marks[head] =
      number < this.nextOn ? this.entries[number & this.mask]! + this.positions[head]! : never
  }

  /** The belts stop; a case that stands under a head may have to be taped again. */
  protected stand(): void {
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
        if (this.meets[head]! <= number || !dwell.spoils(item, past)) continue
        this.floor.cases.unsealed[item] = 1
        this.floor.observer?.stripSpoilt(this.name, this.heads[head]!.name, item)
      }
    }
  }
}
