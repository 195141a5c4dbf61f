/** The flap place before the belts of a sealer: one case stands there while its flaps are folded, by the machine or by people. */
import { never } from '../../engine/clock.js'
import type { Draw } from '../../engine/draw.js'
import { unset } from '../../engine/unset.js'
import type { CaseIndex } from '../../line/cases.js'
import type { Floor } from '../../line/floor.js'
import { Mechanism } from '../../line/mechanism.js'
import type { SealerKeys } from './keys.js'

/** No case, or a place whose case was taken out. */
export const none = -1

/** A lower part of `Sealer`, which is the only class that is made of it: one object a machine, for speed. */
export abstract class FlapPlace extends Mechanism {
  flapItem: CaseIndex = none
  /** When the case in the flap place is folded, s. */
  foldedAt = never
  /** Folding that is left while nobody stands there, s. */
  protected foldLeft = unset
  /** The machine folds, or somebody who folds stands there. */
  canFold = true
  readonly fold: Draw
  private readonly isFoldedByPeople: boolean

  constructor(floor: Floor, name: string, { flaps, jams }: SealerKeys) {
    super(floor, name, jams)
    this.fold = floor.draws(this.label, 'fold', flaps.time)
    this.isFoldedByPeople = flaps['folded-by'] === 'people'
  }

  override empty(): void {
    this.flapItem = none
    this.foldedAt = never
    this.canFold = !this.isFoldedByPeople
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
}
