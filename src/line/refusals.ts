/** Those whom a piece has told no and owes a word when there is room. */
import type { Feeder } from './handshake.js'

export class Refusals {
  /** In the order in which they came: the first `owed` places; the rest are left over. */
  private readonly feeders: Feeder[] = []
  owed = 0

  note(from: Feeder): void {
    if (!this.includes(from)) this.feeders[this.owed++] = from
  }

  forget(from: Feeder): void {
    const index = this.placeOf(from)
    if (index >= 0) this.take(index)
  }

  includes(from: Feeder): boolean {
    return this.placeOf(from) >= 0
  }

  /** There is room: they offer again, `first` before all others, then first come first served. */
  invite(first: Feeder | null): void {
    let left = this.owed
    const at = first === null ? -1 : this.placeOf(first)
    if (at > 0) {
      left--
      this.take(at).roomAhead()
    }
    for (; left > 0 && this.owed > 0; left--) this.take(0).roomAhead()
  }

  /** Its place, or -1. */
  private placeOf(from: Feeder): number {
    for (let index = 0; index < this.owed; index++) if (this.feeders[index] === from) return index
    return -1
  }

  /** Takes one out; by hand, for `splice` would allocate, and a length that is set is slow. */
  private take(index: number): Feeder {
    const { feeders } = this
    const feeder = feeders[index]!
    this.owed--
    for (let at = index; at < this.owed; at++) feeders[at] = feeders[at + 1]!
    return feeder
  }
}
