/** The flap place before the belts: one case stands there while its flaps are folded, by the machine or by people. */
import { type Clock, never } from '../../engine/clock.js'
import type { Draw } from '../../engine/draw.js'
import { unset } from '../../engine/unset.js'
import type { CaseIndex } from '../../line/cases.js'
import type { Unit } from '../../line/unit.js'
import { none } from './belts.js'

export class FlapPlace {
  /** The case that stands there, or none. */
  item: CaseIndex = none
  /** When it is folded, s. */
  foldedAt = never
  /** Folding that is left while nobody stands there, s. */
  private foldLeft = unset
  /** The machine folds, or somebody who folds stands there. */
  private canFold = true

  constructor(
    private readonly clock: Clock,
    private readonly fold: Draw,
    private readonly isFoldedByPeople: boolean,
  ) {}

  reset(): void {
    this.canFold = !this.isFoldedByPeople
    this.clear()
  }

  clear(): void {
    this.item = none
    this.foldedAt = never
  }

  put(item: CaseIndex): void {
    this.item = item
    this.fold.next()
    this.foldLeft = this.fold.value
    this.foldedAt = this.canFold ? this.clock.now + this.fold.value : never
  }

  /** A case stands there and is folded, or will be at a known time. */
  get isAtWork(): boolean {
    return this.item !== none && (this.canFold || this.foldedAt !== never)
  }

  /** Folding by hand stops while nobody stands there, and goes on with what was left. */
  manned(isManned: boolean, unit: Unit): void {
    if (!this.isFoldedByPeople || isManned === this.canFold) return
    this.canFold = isManned
    if (this.item === none) return
    const at = unit.frozen ? unit.frozenAt : this.clock.now
    if (isManned) this.foldedAt = at + this.foldLeft
    else {
      this.foldLeft = Math.max(0, this.foldedAt - at)
      if (this.foldLeft > 0) this.foldedAt = never
    }
  }

  /** It has stood still from `since` for `passed` seconds. */
  thaw(since: number, passed: number): void {
    if (this.foldedAt > since) this.foldedAt += passed
  }
}
