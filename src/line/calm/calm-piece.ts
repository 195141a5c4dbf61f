/** A piece of a row while nothing disturbs it. */
import type { Equipment } from '../equipment.js'
import type { Row } from './row.js'

/**
 * Times, s, of the cases in a piece, in rings over their running numbers: never is a time that lies beyond the spell, of which nothing
 * more is known. Numbers that a call would take or give back are in fields: they would be allocated.
 */
export abstract class CalmPiece {
  /** When each came here, was ready to leave, and left. */
  readonly entered: Float64Array
  readonly due: Float64Array
  readonly left: Float64Array
  /** When each wants to come here: `due` of the piece before, or when it arrived. */
  wanted: Float64Array
  /** Running number of the oldest case inside, when the spell began. */
  protected first = 0
  /** Of the next case whose coming is to be told. */
  protected told = 0
  /** Seconds of the spell in which it waited, and was blocked. */
  waiting = 0
  blocked = 0
  /** And in which it was in another state than these and working, which it tells by itself. */
  other = 0

  constructor(
    protected readonly row: Row,
    protected readonly unit: Equipment,
  ) {
    const places = row.mask + 1
    this.entered = new Float64Array(places)
    this.due = new Float64Array(places)
    this.left = new Float64Array(places)
    this.wanted = this.due
  }

  /** Nothing in it is unusual now. */
  abstract isCalm(): boolean
  /** Takes up the cases inside, the oldest first, by `row.bring`. */
  abstract begin(): void
  /** Case `number` is inside since before the spell: finds when it is due. */
  abstract resume(number: number): void
  /** The case wants to come: finds when it does and when it is due, as far as that is before the end of the spell. */
  abstract enter(number: number): void
  /** It is known when the case leaves. */
  leaves(_number: number): void {}
  /** Tells all that happened before the end of the spell. */
  abstract tell(): void
  /** Puts the cases inside where they are at its end. */
  abstract end(): void
  /** All pieces have been put so. */
  ended(): void {}
}
