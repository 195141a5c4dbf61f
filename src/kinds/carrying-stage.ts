/** Pieces of a row between which a case lies on both: what the one behind does and what it asks of the one ahead, while nothing disturbs them. */
import { unset } from '../engine/unset.js'
import type { Floor } from '../line/floor.js'
import type { Crossing } from './crossing.js'
import { Stage } from './stage.js'
import type { TravelAhead } from './travel-ahead.js'

/** Belts that stand while they hold the tail of a case that stands. */
interface Belts {
  readonly floor: Floor
  readonly crossing: Crossing
  tailMoves(): void
}

/** From which a case may go on before it has left. */
export abstract class GivingStage extends Stage {
  /** The piece that follows, where a case that goes there may stand across the joint. */
  next: CarryingStage | null = null

  /** When something last moved on here or on what follows, by which tails may move, s. */
  get movedLast(): number {
    return this.next === null ? this.leftLast : Math.max(this.leftLast, this.next.movedLast)
  }

  /** Belts stand until the case at their end goes, and while it stands across the joint. */
  protected standFor(number: number, travel: TravelAhead): void {
    const place = number & this.spell.mask
    const from = this.due[place]!
    const until = this.gone[place]!
    if (until > from) travel.stand(from, until, true)
    if (until < this.spell.until) this.next?.standAcross(number, travel)
  }

  /** Looks at the case that left last, when the belts would have last: near the place where it will stand it would be taken to stand. */
  protected lookAcross(belts: Belts, travel: TravelAhead): void {
    if (this.next === null || !(this.oldest > this.first)) return
    const { spell } = this
    const { clock } = belts.floor
    const { now } = clock
    clock.now = Math.max(this.movedLast, travel.lastTurn(spell.until))
    belts.crossing.length = spell.lengths[(this.oldest - 1) & spell.mask]!
    belts.crossing.begin()
    belts.tailMoves()
    clock.now = now
  }
}

/** Onto which a case may go before it has left the one behind: the answers of `line/tail`, ahead of the clock, of a case all of whose times are known. */
export abstract class CarryingStage extends GivingStage {
  /** How far along here, m, and when, s: what is asked, for a number that a call takes may be allocated. */
  way = unset
  at = unset
  /** When a case is as far as that, s. */
  arrival = unset
  /** Of that instant: room on here, m, and when those before it hear of more, s. */
  roomThen = unset
  toldAt = unset

  /** Finds when a case that has come here is as far as `way`: `arrival`. */
  abstract findArrival(number: number): void
  /** Whether the exit is shut at the instant `at`, `last` being the one that came last; if so, finds what room there is then and when more is told of. */
  abstract isShutThen(last: number): boolean
  /** Puts down for how long the belts of the stage before stand, because the case that goes from there stands across the joint. */
  abstract standAcross(number: number, behind: TravelAhead): void
}
