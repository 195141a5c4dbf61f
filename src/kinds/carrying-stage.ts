/** A piece of a row onto which cases go before they have left the one behind: what that asks of it, while nothing disturbs them. */
import { unset } from '../engine/unset.js'
import { Stage } from './stage.js'
import type { TravelAhead } from './travel-ahead.js'

/** The answers of `line/tail`, ahead of the clock: whoever asks does so of a case all of whose times are known. */
export abstract class CarryingStage extends Stage {
  /** The piece that follows, where that is such a one as well. */
  next: CarryingStage | null = null
  /** How far along here, m, and when, s: what is asked, for a number that a call takes may be allocated. */
  way = unset
  at = unset
  /** When a case is as far as that, s. */
  arrival = unset
  /** Of that instant: room on here, m, and when those before it hear of more, s. */
  roomThen = unset
  toldAt = unset

  /** When something last moved on here or on what follows, by which tails may move, s. */
  get movedLast(): number {
    return this.next === null ? this.leftLast : Math.max(this.leftLast, this.next.movedLast)
  }

  /** Finds when a case that has come here is as far as `way`: `arrival`. */
  abstract findArrival(number: number): void
  /** Whether the exit is shut at the instant `at`, `last` being the one that came last; if so, finds what room there is then and when more is told of. */
  abstract isShutThen(last: number): boolean
  /** Puts down for how long the belts of the stage before stand, because the case that goes from there stands across the joint. */
  abstract standAcross(number: number, behind: TravelAhead): void
}
