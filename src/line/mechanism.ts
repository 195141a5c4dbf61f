/** What each kind of equipment says of itself; `Equipment` does the rest. */
import { never } from '../engine/clock.js'
import type { JamsKeys } from '../scenario/jams.js'
import type { CaseIndex } from './cases.js'
import type { Floor } from './floor.js'
import { Jams } from './jams.js'
import type { HeldSeries, Measure } from './measure.js'
import type { Sensor } from './sensor.js'
import { Cause } from './states.js'
import type { Tail } from './tail.js'
import type { Taper } from './taper.js'
import type { Unit } from './unit.js'

export abstract class Mechanism {
  /** The piece of equipment whose inside this is. */
  unit!: Unit
  /** When to tell those who were told no that there may be room, s. */
  wakeAt = never
  readonly jams: Jams | null

  constructor(
    readonly floor: Floor,
    readonly name: string,
    jams?: JamsKeys,
  ) {
    this.jams = jams ? new Jams(floor, `line.${name}`, jams) : null
  }

  /** Owner of its random streams, and its name in messages. */
  protected get label(): string {
    return `line.${this.name}`
  }

  /** Empty and at rest at the start of a shift; `countAnew` follows. */
  abstract empty(): void
  /** Takes the case if it can. Where it will be able to at a known time, it sets `wakeAt` and says so to `unit.wake`. */
  abstract take(item: CaseIndex): boolean
  /** Does what is due. */
  abstract step(): void
  /** Tells `unit.plans` when something is due next and which state this is; called while nothing holds it up. */
  abstract plan(): void
  /** Everything inside stands still from now. */
  abstract freeze(): void
  /** It moves again after `passed` seconds: what was due is due that much later, what was refused is offered again. */
  abstract thaw(passed: number): void
  /** The next piece, which said no, has room. */
  abstract roomAhead(): void
  /** Cases inside, counted for the balance. */
  abstract held(): number
  /** Counts anew from now; what is inside, and what it counts for its own working, stays. */
  abstract countAnew(): void
  /** Books what is open at the end of the shift. */
  abstract close(): void
  abstract measures(): Measure[]

  /** Cases lie on it while they pass, so that one may stand half on it and half on the next. */
  get carries(): boolean {
    return false
  }

  /** It takes cases in whole, as a place does. */
  get takesWhole(): boolean {
    return true
  }

  /** Says how the case that came last goes on, while it is not frozen. */
  follow(tail: Tail): void {
    tail.through()
  }

  /** The case that came last is held by its tail, or let go. */
  hold(_isHeld: boolean): void {}

  /** The case that left last goes on ahead otherwise than was said. */
  tailMoves(): void {}

  /** Whether that can matter to it now; asked first, for mostly that case has long crossed. */
  heedsTail(): boolean {
    return false
  }

  /** Cases that lie on it cannot leave now. */
  isShut(): boolean {
    return false
  }

  /** Adds the length that is left on it, and beyond it as far as cases close up, to `tail.room`. */
  addRoom(_tail: Tail): void {}

  /** It stands because a case ahead stands whose tail it holds. */
  get standsForTail(): boolean {
    return false
  }

  /** What the sensor sees now, and until when as far as is known; only conveyors have any. */
  see(_sensor: Sensor): void {}

  /** Share of its length that cases take, with the room kept between them; only conveyors have any. */
  shareTaken(): number {
    return 0
  }

  /** Speed at which it carries what lies on it now, m/s; 0 where it stands, and where cases are in places. Asked while it is not frozen. */
  get pace(): number {
    return 0
  }

  /** Its drive runs at this speed from now, m/s; only what says so in its keys has several. */
  runsAt(_speed: number): void {}

  /** It works at this share of its speed from now; only what says so in its keys works at several. */
  worksAt(_share: number): void {}

  /** A stop of this cause is over; the piece is about to move again. */
  putRight(_cause: Cause): void {}

  /** A break of the shift begins: what is to be done before it. */
  breakBegins(): void {}

  /** Somebody stands at it from now, or nobody does. */
  manned(_isManned: boolean): void {}

  /** Whether the case where cases jam does so now, drawn once a case: then the piece stands. */
  protected jamsWith(item: CaseIndex): boolean {
    return this.jams?.strikes(this.unit, item) === true
  }

  /** Causes, breakdowns left out, for which it may stand. */
  mayStandFor(): readonly Cause[] {
    return this.jams ? [Cause.jam] : []
  }

  /** Itself where it tapes. */
  taper(): Taper | null {
    return null
  }

  /** It may reject cases. */
  mayReject(): boolean {
    return false
  }

  /** Places whose cases are drawn over the shift. */
  series(): HeldSeries[] {
    return []
  }
}
