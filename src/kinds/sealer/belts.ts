/** The driven belts of a sealer: which case is where on them, and how far they must run until the first comes to their end. */
import { never } from '../../engine/clock.js'
import { unset } from '../../engine/unset.js'
import type { Floor } from '../../line/floor.js'
import { gapNeeded } from '../../trade/headway.js'
import { Crossing } from '../crossing.js'
import { travelOf } from '../run-up-travel.js'
import type { Travel } from '../travel.js'
import { FlapPlace, none } from './flap-place.js'
import { cutsOf } from './heads.js'
import type { SealerKeys } from './keys.js'

/** A lower part of `Sealer`, which is the only class that is made of it: one object a machine, for speed. */
export abstract class Belts extends FlapPlace {
  readonly travel: Travel
  readonly bed: number
  /** Rings over the running number of a case: the case, and the belt travel at which it entered, m. */
  readonly mask: number
  readonly items: Int32Array
  readonly entries: Float64Array
  firstOn = 0
  nextOn = 0
  /** Belt travel at which the first case comes to the end of the belts. */
  protected endMark = never
  /** Belt travel from which the next case may enter, m. */
  clearFrom = unset
  /** Kept between cases, m: by the speed of the belts. */
  gap = unset
  private readonly cuts: ReturnType<typeof cutsOf>
  /** The case that left last, while its tail lies on the belts. */
  readonly crossing: Crossing
  /** Speed that is asked of the belts, m/s, and the share of it at which they run. */
  private asked = unset
  private share = unset
  private isHolding = false
  /** What follows takes cases in whole. */
  isBeforePlace = true

  constructor(
    floor: Floor,
    name: string,
    readonly keys: SealerKeys,
  ) {
    super(floor, name, keys)
    this.bed = keys.bed
    this.travel = travelOf(floor.clock, keys['belt-speed'], keys)
    this.crossing = new Crossing(floor, () => this.unit, keys['belt-speed'])
    this.cuts = cutsOf(keys)
    this.gap = gapNeeded(keys['minimum-gap'], this.cuts, keys['belt-speed'])
    // a power of two well above bed over shortest pitch
    const places = 2 ** Math.ceil(Math.log2(Math.ceil(this.bed / floor.cases.sizes.shortest) + 4))
    this.mask = places - 1
    this.items = new Int32Array(places)
    this.entries = new Float64Array(places)
  }

  override empty(): void {
    super.empty()
    this.travel.reset()
    this.gap = gapNeeded(this.keys['minimum-gap'], this.cuts, this.keys['belt-speed'])
    this.clearFrom = 0
    this.firstOn = 0
    this.nextOn = 0
    this.endMark = never
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
    this.crossing.behind = this.endMark - this.travel.now()
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

  /** Passes over places whose case was taken out, and finds the mark at the end of the belts. */
  markEnd(): void {
    while (this.firstOn < this.nextOn && this.items[this.firstOn & this.mask] === none) this.firstOn++
    this.endMark = this.firstOn < this.nextOn ? this.entries[this.firstOn & this.mask]! + this.bed : never
  }
}
