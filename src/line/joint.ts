/** The joints of a piece of equipment: what it says of a case that lies half on it, to the piece that still holds the tail. */
import { Door } from './door.js'
import type { Feeder } from './handshake.js'
import type { Mechanism } from './mechanism.js'
import type { Watcher } from './sensing.js'
import type { Tail } from './tail.js'

/** A lower part of `Equipment`, which is the only class that is made of it. */
export abstract class Joint extends Door implements Feeder {
  /** Who passed on the case that came last. */
  protected lastFrom: Feeder | null = null
  isCarriedTo = false
  /** As its mechanism says: read for each case. */
  carries = false
  takesWhole = true
  /** Who looks at it by sensors. */
  readonly watchers: Watcher[] = []
  private isTelling = false
  /** It is answering: in a circle of pieces it would ask itself. */
  private isAsked = false

  abstract readonly mechanism: Mechanism
  abstract readonly frozen: boolean
  abstract readonly frozenAt: number
  abstract roomAhead(): void
  /** Brings state and pending time up to date after a change inside. */
  protected abstract refresh(): void

  // --- asked by the piece behind ---

  follow(tail: Tail, from: Feeder): void {
    // where somebody else's case has come since, that of `from` has long gone in
    if (this.lastFrom !== from) {
      tail.through()
      return
    }
    if (this.isAsked) {
      tail.gone = 0
      tail.stands()
      return
    }
    this.isAsked = true
    this.mechanism.follow(tail)
    this.isAsked = false
    if (this.frozen && tail.reachAt > this.frozenAt) tail.stands()
  }

  hold(isHeld: boolean, from: Feeder): void {
    if (this.lastFrom !== from) return
    this.mechanism.hold(isHeld)
    this.refresh()
  }

  isShut(): boolean {
    if (this.frozen || this.isAsked) return true
    this.isAsked = true
    const isShut = this.mechanism.isShut()
    this.isAsked = false
    return isShut
  }

  addRoom(tail: Tail): void {
    if (this.frozen || this.isAsked) return
    this.isAsked = true
    this.mechanism.addRoom(tail)
    this.isAsked = false
  }

  // --- told by the piece ahead ---

  tailMoves(): void {
    if (this.frozen || !this.mechanism.heedsTail()) {
      // what lies half ahead may be drawn off all the same
      this.tellWatchers()
      return
    }
    this.mechanism.tailMoves()
    this.refresh()
  }

  /** Tells the piece behind that the case that came last goes on otherwise; once at a time, for cases may go in a circle. */
  tellBehind(): void {
    if (this.isTelling || this.lastFrom === null) return
    this.isTelling = true
    this.lastFrom.tailMoves()
    this.isTelling = false
  }

  /** Something has changed on it that a sensor may see. */
  protected tellWatchers(): void {
    for (let index = 0; index < this.watchers.length; index++) this.watchers[index]!.look()
  }

  /** `from` waits for the case that it passed on here and whose tail it holds. */
  holdsUp(from: Joint): boolean {
    return this.lastFrom === from && from.mechanism.standsForTail
  }
}
