/** Jams of one piece: which case jams and how, and whether it is spoilt. */

import { type JamsKeys, jamsOf } from '../scenario/jams.js'
import type { CaseIndex } from './cases.js'
import type { Floor } from './floor.js'
import { JamKind } from './jam-kind.js'
import { Cause } from './states.js'
import type { Unit } from './unit.js'

/** A case whose fate has not been drawn. */
export const undrawn = -1

export class Jams {
  readonly kinds: readonly JamKind[]
  /** What the case where cases jam has still before it, a bit for each kind of jam; or `undrawn`. */
  private left = undrawn
  /** The jam that is being cleared. */
  private current: JamKind

  constructor(
    private readonly floor: Floor,
    owner: string,
    keys: JamsKeys,
  ) {
    this.kinds = jamsOf(keys).map(({ name, keys: each }) => new JamKind(floor, owner, name, each))
    this.current = this.kinds[0]!
  }

  /** Those that have names, and are told apart. */
  get named(): readonly JamKind[] {
    return this.kinds.filter(({ name }) => name !== null)
  }

  /** Draws how a case of this kind will jam: a bit for each kind of jam, 0 for not at all. Each draws one number, whatever the others do. */
  fateOf(kind: number): number {
    let fate = 0
    for (let index = 0; index < this.kinds.length; index++)
      if (this.kinds[index]!.strikes(kind)) fate |= 1 << index
    return fate
  }

  /** The piece stands for the first jam of this fate, which is not 0; what is left of it. */
  stop(unit: Unit, item: CaseIndex, fate: number): number {
    const kind = this.kinds[31 - Math.clz32(fate & -fate)]!
    this.current = kind
    this.floor.observer?.jams(unit.name, item, kind.name)
    unit.stop(Cause.jam, kind.clearing(), kind)
    return fate & (fate - 1)
  }

  /** Whether the case where cases jam does so now, for the first time or once more: then the piece stands. */
  strikes(unit: Unit, item: CaseIndex): boolean {
    if (this.spares(item)) return false
    this.left = this.stop(unit, item, this.left)
    return true
  }

  /** Whether the case that comes there next will not jam. */
  spares(item: CaseIndex): boolean {
    if (this.left === undrawn) this.left = this.fateOf(this.floor.cases.kind[item]!)
    return this.left === 0
  }

  /** The case is past the place where cases jam. */
  passed(): void {
    this.left = undrawn
  }

  /** The jam is cleared: whether its case is spoilt, and has left the line. */
  spoils(piece: string, item: CaseIndex): boolean {
    if (!this.current.spoilsCase()) {
      this.floor.observer?.freed(piece, item)
      return false
    }
    this.floor.observer?.spoilt(piece, item)
    this.floor.cases.remove(item)
    this.current.casesLost++
    this.passed()
    return true
  }

  /** Whether a case can be spoilt at all. */
  get maySpoil(): boolean {
    return this.kinds.some((kind) => kind.maySpoil)
  }

  /** Cases spoilt. */
  get casesLost(): number {
    return this.kinds.reduce((sum, kind) => sum + kind.casesLost, 0)
  }
}
