/** Cases on the belts of a sealer meet its heads: which comes to which next, and which of them can be told later, since nothing can come of it. */
import { never } from '../../engine/clock.js'
import { unset } from '../../engine/unset.js'
import type { CaseIndex } from '../../line/cases.js'
import type { Floor } from '../../line/floor.js'
import { hair } from '../travel.js'
import { Belts } from './belts.js'
import { Dwell } from './dwell.js'
import { none } from './flap-place.js'
import type { Head } from './head.js'
import { cutsOf } from './heads.js'
import type { SealerKeys } from './keys.js'
import { Taping } from './taping.js'

/**
 * A case that is sure to pass a head (it does not jam there, and roll and blade last) is no event: that it has is told when something else happens
 * to the machine, before anybody can ask for it. Whether a case jams or a strip breaks is drawn ahead then, by the same numbers. To whoever
 * looks on it is told at its instant.
 *
 * A lower part of `Sealer`, as `Belts` is.
 */
export abstract class Passing extends Belts {
  readonly taping: Taping
  /** Of the heads, first head first, from the start of the belts, m. */
  readonly positions: Float64Array
  /** Running number of the next case to meet each head, as far as that has been told; and of the next of which it is not sure that it passes. */
  readonly meets: Int32Array
  readonly unsure: Int32Array
  /** Belt travel at which that one comes to each head. */
  readonly marks: Float64Array
  protected readonly dwell: Dwell | null
  /** Up to this travel cases have come to heads. */
  private reached = unset

  constructor(floor: Floor, name: string, keys: SealerKeys) {
    super(floor, name, keys)
    this.taping = new Taping(floor, this.label, keys, () => this.unit)
    this.positions = Float64Array.from(this.heads, ({ position }) => position)
    this.meets = new Int32Array(this.positions.length)
    this.unsure = new Int32Array(this.positions.length)
    this.marks = new Float64Array(this.positions.length)
    const wipe = Math.max(...cutsOf(keys).map((cut) => cut.wipeTravel))
    const spoils = keys['dwell-spoils']
    this.dwell = spoils > 0 ? new Dwell(floor, this.label, spoils, wipe) : null
  }

  override empty(): void {
    super.empty()
    this.meets.fill(0)
    this.unsure.fill(0)
    this.marks.fill(never)
    this.dwell?.reset()
    this.taping.reset()
  }

  /** First head first, in the direction of travel. */
  get heads(): readonly Head[] {
    return this.taping.heads
  }

  /** Cases that have come to the heads by now meet them; false where the machine stands for one then. */
  protected allPass(): boolean {
    for (let head = this.meets.length - 1; head >= 0; head--) {
      this.reached = this.travel.now() + hair
      this.tellSure(head)
      if (this.hasCome(this.marks[head]!) && !this.passes(head)) return false
    }
    return true
  }

  /** Whether the belts have come to a mark by now: at the instant at which they do, to the last digit. */
  protected hasCome(mark: number): boolean {
    // far away without a division: almost always
    return mark <= this.reached && this.travel.when(mark) <= this.floor.clock.now
  }

  /** A case comes to a head of which it was not sure that it passes: whether the machine still runs after that. */
  private passes(head: number): boolean {
    // what came to the heads before it at earlier instants
    this.reached -= 2 * hair
    for (let before = 0; before < head; before++) this.tellSure(before)
    this.reached += 2 * hair
    this.meet(head)
    return !this.unit.frozen
  }

  /** A case comes to a head: it may jam at the first one; the blade or the roll may be at its end; or it is taped. */
  private meet(index: number): void {
    const number = this.meets[index]!
    const item = this.items[number & this.mask]!
    if (index === 0 && this.jamsWith(item)) return
    if (!this.taping.meet(index, item)) return
    if (index === 0) this.jams?.passed()
    this.meets[index] = number + 1
    this.markHead(index)
  }

  protected takeOut(place: number): void {
    this.items[place] = none
    this.markEnd()
    for (let head = 0; head < this.meets.length; head++) this.markHead(head)
  }

  /** Finds the next marks on the belts, as far as the case that has come onto them last is the next. */
  protected markLast(): void {
    const number = this.nextOn - 1
    if (this.firstOn === number) this.markEnd()
    for (let head = 0; head < this.meets.length; head++)
      if (this.unsure[head] === number) this.markUnsure(head)
  }

  /** The next case comes to a head: the next one that is still there. */
  private markHead(head: number): void {
    let number = this.meets[head]!
    while (number < this.nextOn && this.items[number & this.mask] === none) number++
    this.meets[head] = number
    this.unsure[head] = Math.max(number, this.unsure[head]!)
    this.markUnsure(head)
    if (head === 0) for (let later = 1; later < this.meets.length; later++) this.markUnsure(later)
  }

  /**
   * Finds the next case of which it is not sure that it passes a head. Only that is an event: the others are told when something else
   * happens, before anybody can ask. At the first head a case may be taken out, so the later ones wait until it is sure to pass that.
   */
  markUnsure(head: number): void {
    const end = head === 0 ? this.nextOn : this.unsure[0]!
    let number = this.unsure[head]!
    while (number < end && this.isSure(head, this.items[number & this.mask]!)) number++
    this.unsure[head] = number
    this.marks[head] =
      number < this.nextOn ? this.entries[number & this.mask]! + this.positions[head]! : never
  }

  /** Whether a case passes a head for sure: asked once of each, in the order in which they come; `none` for one that was taken out. */
  isSure(head: number, item: CaseIndex): boolean {
    if (item === none) return true
    if (head === 0 && this.jams?.spares(item) === false) return false
    if (!this.taping.foresees(head, item)) return false
    if (head === 0) this.jams?.passed()
    return true
  }

  /** Tells the cases that were sure to pass a head and have by the travel `reached`. */
  private tellSure(head: number): void {
    const end = this.unsure[head]!
    let number = this.meets[head]!
    for (; number < end; number++) {
      const place = number & this.mask
      if (this.items[place] === none) continue
      if (this.entries[place]! + this.positions[head]! > this.reached) break
      this.taping.passed(head, this.items[place]!)
    }
    this.meets[head] = number
  }

  /** Cases on the belts that have met a head, as far as that has been told. */
  metBy(head: number): number {
    let met = 0
    for (let number = this.firstOn; number < this.meets[head]!; number++)
      if (this.items[number & this.mask] !== none) met++
    return met
  }

  /** Belt travel at which the next that is sure comes to a head: where somebody looks on, it is told then. */
  protected nextSure(): number {
    let first = never
    for (let head = 0; head < this.meets.length; head++) {
      let number = this.meets[head]!
      while (number < this.unsure[head]! && this.items[number & this.mask] === none) number++
      if (number < this.unsure[head]!)
        first = Math.min(first, this.entries[number & this.mask]! + this.positions[head]!)
    }
    return first
  }

  /** The same at all heads, as it is now. Where the machine stands for one head, what comes to another at this instant comes after that. */
  tellAllSure(): void {
    this.reached = this.travel.now() + (this.unit.frozen ? -hair : hair)
    for (let head = 0; head < this.meets.length; head++) this.tellSure(head)
  }

  /** The belts stop; a case that stands under a head may have to be taped again. */
  protected stand(): void {
    if (this.dwell !== null) {
      // it spoils the strips of those that have come
      this.tellAllSure()
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
