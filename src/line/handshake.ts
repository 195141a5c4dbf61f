/** How cases pass from one to the next: who offers, who takes, and who is told of room after a no. */
import type { CaseIndex } from './cases.js'

/** Whoever offers cases to a piece; it is told when there is room after a no. */
export interface Feeder {
  roomAhead(): void
}

/** Whoever takes cases. */
export interface Taker {
  /** Takes the case now, or answers false; then it owes `from` a `roomAhead`. */
  offer(item: CaseIndex, from: Feeder): boolean
}

/** Where a piece that has several ways out may send a case. */
export interface Outlet extends Taker {
  /** Cases inside now. */
  held(): number
  /** `from` no longer waits here: its case has gone elsewhere. */
  withdraw(from: Feeder): void
}
