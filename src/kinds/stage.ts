/** A piece of a row while nothing disturbs it: its cases come and go by a recursion, one after the other. */
import type { Did } from '../line/did.js'
import type { Equipment } from '../line/equipment.js'
import type { Spell } from './spell.js'

/**
 * What a case does never hangs on those behind it. So whoever works out a case knows all that those ahead of it did and will do, and finds
 * its times from theirs, as far as the end of the spell; a time beyond that is `never`, or any that is not before it.
 *
 * Numbers stand in rings and fields: one that a call takes or gives back may be allocated.
 */
export abstract class Stage implements Did {
  /** When each case came, was ready to leave, and left, s; and when it wants to come: when it is ready in the stage before. */
  readonly entered: Float64Array
  readonly due: Float64Array
  readonly gone: Float64Array
  wanted: Float64Array
  waiting = 0
  blocked = 0
  other = 0
  left = 0
  worksSince = 0
  /** Number of the first that was inside when the spell began, and of the first that was not. */
  protected first = 0
  protected inside = 0
  /** The same of what has been told: inside are those from `oldest` to before `newest`. */
  protected oldest = 0
  protected newest = 0

  constructor(
    protected readonly spell: Spell,
    protected readonly unit: Equipment,
  ) {
    this.entered = spell.ring()
    this.due = spell.ring()
    this.gone = spell.ring()
    this.wanted = this.due
  }

  /** Nothing unusual is under way inside, which only events know. */
  abstract isCalm(): boolean

  /** A spell begins: takes up the cases inside, the oldest first. */
  begin(): void {
    const { spell } = this
    this.first = spell.next
    this.oldest = spell.next
    const last = (spell.next - 1) & spell.mask
    this.entered[last] = -Infinity
    this.gone[last] = -Infinity
    this.takeUp()
    this.inside = spell.next
    this.newest = spell.next
  }

  /** When one left last before the end of the spell, s; of none in it a time before. */
  get leftLast(): number {
    return this.gone[(this.oldest - 1) & this.spell.mask]!
  }

  /** Adds the cases inside to the spell, the oldest first. */
  protected abstract takeUp(): void
  /** Finds when a case is ready to leave that was inside as the spell began. */
  abstract resume(number: number): void
  /** Finds when a case can come that wants to, if it is the next: `entered`. Nothing else changes. */
  abstract findEntry(number: number): void
  /** It comes then: finds when it is ready to leave. */
  abstract comes(number: number): void
  /** It has been found when the case goes. */
  leave(_number: number): void {}
  /** Counts what happened in the spell. */
  abstract tell(): void
  /** Puts the cases inside where they are at its end, as events know them. */
  abstract end(): void
  /** Cases that cannot go on wait from now to be told of room: all stages have been put right. */
  abstract offer(): void

  // --- running time ---

  /** Times at work one by one, where a breakdown hangs on them: in another order of sums it would come another rounding later. */
  tellWork(): void {
    if (!this.unit.countsRunning) return
    this.left = this.unit.runningLeft
    this.worksSince = this.unit.worksFrom
    this.rests()
  }

  /** Tells `rest` of all times at which it does not work, in the order in which they begin. */
  protected abstract rests(): void

  /** It does not work from `from` to `until`, s. */
  rest(from: number, until: number): void {
    if (!(until > from) || !(from < this.spell.until)) return
    if (from > this.worksSince) this.left -= from - this.worksSince
    this.worksSince = Math.max(this.worksSince, until)
  }
}
