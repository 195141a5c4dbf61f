/** The door of a piece of equipment: those whom it has told no, and owes a word when there is room. */
import type { Feeder, Outlet, Taker } from './handshake.js'
import { Tallied } from './tallied.js'

/** A lower part of `Equipment`, which is the only class that is made of it. */
export abstract class Door extends Tallied {
  next!: Taker
  ways: readonly Outlet[] = []
  /** The feeder that is invited before all others; null where those go first who came first. */
  rightOfWay: Feeder | null = null
  /** Who was told no, in the order in which they came: the first `owed` places; the rest are left over. */
  protected readonly refused: Feeder[] = []
  protected owed = 0
  /** Cases taken in this simulation. */
  taken = 0

  protected forget(from: Feeder): void {
    const index = this.placeOf(from)
    if (index >= 0) this.takeRefused(index)
  }

  /** Its place among those who were told no, or -1. */
  placeOf(from: Feeder): number {
    for (let index = 0; index < this.owed; index++) if (this.refused[index] === from) return index
    return -1
  }

  /** Takes one out of those who were told no; by hand, for `splice` would allocate, and a length that is set is slow. */
  private takeRefused(index: number): Feeder {
    const { refused } = this
    const feeder = refused[index]!
    this.owed--
    for (let at = index; at < this.owed; at++) refused[at] = refused[at + 1]!
    return feeder
  }

  withdraw(from: Feeder): void {
    if (this.owed > 0) this.forget(from)
  }

  get owes(): boolean {
    return this.owed > 0
  }

  /** Who has right of way first, then first come first served: who is told no again keeps its place, before whoever has just been served. */
  invite(): void {
    let left = this.owed
    const first = this.rightOfWay === null ? -1 : this.placeOf(this.rightOfWay)
    if (first > 0) {
      left--
      this.takeRefused(first).roomAhead()
    }
    let at = 0
    for (; left > 0 && at < this.owed; left--) {
      const { taken, refused } = this
      const feeder = this.takeRefused(at)
      feeder.roomAhead()
      if (this.taken !== taken || this.owed === at || refused[this.owed - 1] !== feeder) continue
      for (let place = this.owed - 1; place > at; place--) refused[place] = refused[place - 1]!
      refused[at++] = feeder
    }
  }

  /** `from` was told no here and waits to be told of room. */
  hasRefused(from: Feeder): boolean {
    return this.placeOf(from) >= 0
  }
}
