/** How cases pass from one to the next: who offers, who takes, and who is told of room after a no. */
import type { CaseIndex } from './cases.js'
import type { Tail } from './tail.js'

/** Whoever offers cases to a piece; it is told when there is room after a no. */
export interface Feeder {
  /** Cases lie on it while they pass, so that one may stand half on it; false where they are put on from a place. */
  readonly carries: boolean
  roomAhead(): void
  /** The case that it passed on last goes on otherwise than was said by `follow`. */
  tailMoves(): void
}

/** Whoever takes cases. */
export interface Taker {
  /** Takes the case now, or answers false; then it owes `from` a `roomAhead`. */
  offer(item: CaseIndex, from: Feeder): boolean
  /** Says how the case goes on that `from` passed on last. */
  follow(tail: Tail, from: Feeder): void
  /** `from` holds that case by its tail from now, or lets it go. */
  hold(isHeld: boolean, from: Feeder): void
  /** It takes cases in whole, as a place does; else they may stand half on it. */
  readonly takesWhole: boolean
  /** Cases that lie on it cannot leave now. */
  isShut(): boolean
  /** Adds to `tail.room` the length that is left from here on to the exit that is shut. */
  addRoom(tail: Tail): void
}

/** Where a piece that has several ways out may send a case. */
export interface Outlet extends Taker {
  /** Cases inside now. */
  held(): number
  /** `from` no longer waits here: its case has gone elsewhere. */
  withdraw(from: Feeder): void
}
