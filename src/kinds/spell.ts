/** A spell in which nothing disturbs a row of pieces: from when to when, and which cases are on their way in it. */
import type { CaseIndex } from '../line/cases.js'

/** Numbers before the first case of a spell, to which pieces may look back. */
export const before = 256

/**
 * Cases have running numbers in the order in which they go. What is known of them is kept in rings over those numbers:
 * place = number & mask. Before a spell has been told, its end may still come earlier: never earlier than what has been drawn for it.
 */
export class Spell {
  readonly mask: number
  /** The case, and its length, m. */
  readonly items: Int32Array
  readonly lengths: Float64Array
  /** When it began, and the instant before which it ends, s. */
  from = 0
  until = Infinity
  /** Running number of the case that comes next. */
  next = before

  /** `most`: cases that it may have to do with. */
  constructor(most: number) {
    const places = 2 ** Math.ceil(Math.log2(most))
    this.mask = places - 1
    this.items = new Int32Array(places)
    this.lengths = new Float64Array(places)
  }

  /** Another case is on its way, of this length, m: its number. */
  add(item: CaseIndex, length: number): number {
    const number = this.next++
    this.items[number & this.mask] = item
    this.lengths[number & this.mask] = length
    return number
  }

  /** A ring of times or lengths. */
  ring(): Float64Array {
    return new Float64Array(this.mask + 1)
  }
}
