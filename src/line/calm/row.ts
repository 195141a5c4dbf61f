/** Cases on their way through a row of pieces while nothing disturbs it: where each is when, worked out case by case. */
import type { CaseIndex } from '../cases.js'

/**
 * Times of the cases in a row, in rings over a running number that counts them in the order in which they go: first in, first out.
 * What a case does never hangs on those behind it, so whoever works a case knows all that those ahead of it did and will do.
 */
export class Row {
  readonly mask: number
  /** The case, and its length, m. */
  readonly items: Int32Array
  readonly lengths: Float64Array
  /** The spell lasts from here, s, and what is told of it lies before `until`: an earlier end may be found while it is worked out. */
  from = 0
  until = Infinity
  /** Running number of the next case that comes to the row. */
  next = 0

  /** `most`: cases that may be told apart at once. */
  constructor(most: number) {
    const places = 2 ** Math.ceil(Math.log2(most))
    this.mask = places - 1
    this.items = new Int32Array(places)
    this.lengths = new Float64Array(places)
  }

  /** A case comes: its running number. */
  bring(item: CaseIndex, length: number): number {
    const number = this.next++
    this.items[number & this.mask] = item
    this.lengths[number & this.mask] = length
    return number
  }
}
