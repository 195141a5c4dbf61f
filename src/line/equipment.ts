/**
 * A piece of equipment: handshake, states, stops and breakdowns, which are alike for all kinds. What is inside is its
 * `Mechanism`. Kept apart for speed too: this class has one shape, so the engine's hottest code is compiled for it
 * alone, however many kinds there are (as one base class of several it took three times as long).
 */

import { type Actor, never } from '../engine/clock.js'
import { unset } from '../engine/unset.js'
import { type BreakdownKeys, Breakdowns } from './breakdowns.js'
import type { CaseIndex } from './cases.js'
import type { Floor } from './floor.js'
import type { Feeder, Outlet } from './handshake.js'
import type { JamKind } from './jam-kind.js'
import { LoggedStops } from './logged-stops.js'
import type { Mechanism } from './mechanism.js'
import { Stands } from './stands.js'
import { Cause, causes, State } from './states.js'
import type { Task } from './task.js'
import type { Unit } from './unit.js'

export class Equipment extends Stands implements Actor, Outlet, Unit {
  readonly label: string
  frozen = false
  frozenAt = unset

  private slot = -1
  /** What the mechanism says of itself while nothing holds it up. */
  private ownState: State = State.waiting
  /** When the mechanism has something to do next, s. */
  due = never
  /** When what it says lapses: working into waiting, s. */
  private ownLapse = never
  private isActing = false
  /** A stop that lasts no time, for the log has such stops. */
  private isPassing = false
  private readonly task: Task
  protected override readonly logged: LoggedStops | null

  constructor(
    floor: Floor,
    readonly mechanism: Mechanism,
    breakdowns: BreakdownKeys | undefined,
    /** People run it: a break stops it. */
    readonly isManual: boolean,
  ) {
    super(
      floor,
      breakdowns ? new Breakdowns(floor, `line.${mechanism.name}`, breakdowns) : null,
      mechanism.jams?.kinds ?? [],
    )
    mechanism.unit = this
    this.carries = mechanism.carries
    this.takesWhole = mechanism.takesWhole
    this.label = `line.${this.name}`
    const recorded = floor.scenario.recordedStops?.[this.name]
    this.logged = recorded ? new LoggedStops(floor, this.label, recorded, () => this.moveOn()) : null
    this.task = {
      place: this.name,
      skill: 'jams',
      planned: null,
      duration: 0,
      begin: () => this.workBegins(),
      done: () => this.workDone(),
      waitsOutBreak: () => this.meetsBreak(),
    }
  }

  override get name(): string {
    return this.mechanism.name
  }

  /** Adds the piece to the clock; the order of these calls is the order of simultaneous events. */
  join(): void {
    this.slot = this.floor.clock.add(this)
  }

  /** Adds the stops of the log to the clock, after all else: what is due at the instant of a stop is done before. */
  joinLogged(): void {
    this.logged?.join()
  }

  /** Empty, in order and at rest at the start of a shift. */
  reset(): void {
    this.beginState()
    this.frozen = false
    this.standsForNothing()
    this.isActing = false
    this.isPassing = false
    this.taken = 0
    this.logged?.begin()
    this.owed = 0
    this.lastFrom = null
    this.breakdowns?.begin()
    this.mechanism.empty()
    this.mechanism.jams?.passed()
    this.countAnew()
    this.refresh()
  }

  // --- handshake ---

  offer(item: CaseIndex, from: Feeder): boolean {
    this.isCarriedTo = from.carries
    if (!this.mechanism.take(item)) {
      if (!this.hasRefused(from)) this.refused[this.owed++] = from
      return false
    }
    if (this.owed > 0) this.forget(from)
    this.lastFrom = from
    this.taken++
    this.floor.observer?.taken(this.name, item)
    this.refresh()
    return true
  }

  held(): number {
    return this.mechanism.held()
  }

  /** It is blocked or stands for a sensor, and nothing inside will happen before something moves elsewhere. */
  standsBlocked(): boolean {
    if (this.frozen) return this.isStuckBySensor
    if (this.state !== State.blocked) return false
    this.mechanism.plan()
    return this.due === never
  }

  roomAhead(): void {
    if (this.frozen) return
    this.mechanism.roomAhead()
    this.refresh()
  }

  // --- clock ---

  act(): void {
    const { now } = this.floor.clock
    const { breakdowns } = this
    if (this.isPassing) {
      this.isPassing = false
      this.workDone()
      return
    }
    // found when its state was brought up to date, and nothing has changed since
    if (breakdowns !== null && breakdowns.dueAt <= now) {
      this.stop(Cause.breakdown, breakdowns.repairTime())
      return
    }
    if (this.frozen) {
      this.refresh()
      return
    }
    this.isActing = true
    this.mechanism.step()
    this.isActing = false
    this.refresh()
  }

  /** Without an argument that may be left out it is so short that the compiler always puts it in place, and no number is allocated. */
  plans(time: number, state: State, lapse: number): void {
    this.due = time
    this.ownState = state
    this.ownLapse = lapse
  }

  actsBy(time: number): void {
    if (time < this.due) this.due = time
  }

  wake(): void {
    if (this.mechanism.wakeAt >= this.due) return
    this.due = this.mechanism.wakeAt
    this.schedule()
  }

  private schedule(): void {
    const { clock } = this.floor
    clock.times[this.slot] = Math.max(this.due, clock.now)
    clock.changed(this.slot)
  }

  /** Brings state and pending time up to date after a change inside. */
  protected refresh(): void {
    if (this.isActing) return
    if (this.frozen) {
      this.plans(this.isPassing ? this.floor.clock.now : never, this.frozenState(), never)
    } else this.mechanism.plan()
    this.enterState()
    if (this.breakdowns !== null) this.findBreakdown(this.breakdowns)
    this.schedule()
    this.tellWatchers()
  }

  private findBreakdown(breakdowns: Breakdowns): void {
    if (this.frozen && !this.isHeldBySensorAlone) {
      breakdowns.dueAt = never
      return
    }
    breakdowns.find(this)
    this.due = Math.min(this.due, breakdowns.dueAt)
  }

  /** Is from now in the state that has been planned, working only until that lapses. */
  private enterState(): void {
    const { ownState } = this
    this.floor.observer?.state(this, ownState, this.ownLapse)
    if (ownState !== this.state || this.lapsesAt < this.floor.clock.now) this.bookState(ownState)
    this.lapsesAt = this.ownLapse
  }

  /** Stands still or moves again, as stops and breaks have it. */
  private settleFrozen(): void {
    const { now } = this.floor.clock
    const shouldFreeze = this.mustStand
    if (shouldFreeze === this.frozen) return
    this.frozen = shouldFreeze
    if (shouldFreeze) {
      this.frozenAt = now
      this.slowStart?.stands()
      this.mechanism.freeze()
    } else {
      // before what stood begins anew
      this.slowStart?.goesOn(now - this.frozenAt)
      this.mechanism.thaw(now - this.frozenAt)
    }
    this.tellBehind()
  }

  // --- stops ---

  stop(cause: Exclude<Cause, -1>, duration: number, kind: JamKind | null = null): void {
    this.beginStop(cause)
    if (this.logged?.isInstead(cause)) {
      this.isPassing = true
      this.settleFrozen()
      this.refresh()
      return
    }
    this.countStop(kind)
    this.floor.observer?.stops(this.name, cause, kind === null ? null : kind.name)
    this.task.skill = kind === null ? causes[cause]!.skill : kind.call
    this.task.duration = duration
    this.settleFrozen()
    this.refresh()
    this.floor.crew.call(this.task)
  }

  private workBegins(): void {
    this.bookWait()
    this.refresh()
  }

  private workDone(): void {
    const { cause } = this
    this.endStop()
    if (cause === Cause.breakdown) this.breakdowns!.begin()
    this.mechanism.putRight(cause)
    this.moveOn()
  }

  /** As if a breakdown, a break, planned work or a stop of the log ended now. */
  goesOn(): void {
    this.standsForNothing()
    if (this.cause === Cause.breakdown) this.workDone()
    else this.moveOn()
  }

  /** A standing duty: somebody stands at it from now, or nobody does. */
  manned(isManned: boolean): void {
    this.mechanism.manned(isManned)
    this.refresh()
  }

  protected override moveOn(): void {
    this.settleFrozen()
    this.refresh()
    if (this.owes && !this.frozen) this.invite()
  }

  // --- what is counted ---

  override countAnew(): void {
    super.countAnew()
    this.mechanism.countAnew()
  }

  override settle(): void {
    super.settle()
    this.mechanism.close()
  }

  /** It may fail. */
  get breaksDown(): boolean {
    return this.breakdowns !== null
  }
}
