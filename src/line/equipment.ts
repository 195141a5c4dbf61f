/**
 * A piece of equipment: handshake, states, stops and breakdowns, which are alike for all kinds. What is inside is its
 * `Mechanism`. Kept apart for speed too: this class has one shape, so the engine's hottest code is compiled for it
 * alone, however many kinds there are (as one base class of several it took three times as long).
 */

import { type Actor, never } from '../engine/clock.js'
import { unset } from '../engine/unset.js'
import { type BreakdownKeys, Breakdowns } from './breakdowns.js'
import type { CaseIndex } from './cases.js'
import type { Task } from './crew.js'
import type { Floor } from './floor.js'
import type { Feeder, Outlet, Taker } from './handshake.js'
import type { Measure } from './measure.js'
import type { Mechanism } from './mechanism.js'
import { Cause, causes, State, stateKeys } from './states.js'
import { stateMeasures, stopMeasures } from './stop-measures.js'

export class Equipment implements Actor, Feeder, Outlet {
  next!: Taker
  /** All ways out, in the order of `scenario/routes`; `next` is the first. */
  ways: readonly Outlet[] = []
  /** The feeder that is invited before all others; null where those go first who came first. */
  rightOfWay: Feeder | null = null
  readonly label: string
  /** It stands still, for a stop of its own or for a break. */
  frozen = false
  /** Since when, s. */
  frozenAt = unset
  /** Its state, for others to read; since when it is in it, and when that lapses, s. */
  state: State = State.waiting
  stateSince = unset
  lapsesAt = never
  readonly stateTimes = new Float64Array(stateKeys.length)
  readonly stopCounts = new Uint32Array(causes.length)
  readonly stopTimes = new Float64Array(causes.length)
  readonly stopWaits = new Float64Array(causes.length)
  /** Of the stops those that waited for the end of a break. */
  readonly stopsInBreaks = new Uint32Array(causes.length)

  private slot = -1
  /** Who was told no, in the order in which they came: the first `owed` places; the rest are left over. */
  private readonly refused: Feeder[] = []
  private owed = 0
  /** What the mechanism says of itself while nothing holds it up. */
  private ownState: State = State.waiting
  /** When the mechanism has something to do next, s. */
  private due = never
  /** When what it says lapses: working into waiting, s. */
  private ownLapse = never
  private cause: Cause = Cause.none
  private stoppedAt = unset
  private isWorkedOn = false
  private hasMetBreak = false
  private isHalted = false
  private isActing = false
  private readonly task: Task
  private readonly breakdowns: Breakdowns | null

  constructor(
    private readonly floor: Floor,
    readonly mechanism: Mechanism,
    breakdowns: BreakdownKeys | undefined,
    /** People run it: a break stops it. */
    readonly isManual: boolean,
  ) {
    mechanism.unit = this
    this.label = `line.${this.name}`
    this.breakdowns = breakdowns ? new Breakdowns(floor, this.label, breakdowns) : null
    this.task = {
      place: this.name,
      skill: 'jams',
      duration: 0,
      begin: () => this.workBegins(),
      done: () => this.workDone(),
      waitsOutBreak: () => this.meetsBreak(),
    }
  }

  get name(): string {
    return this.mechanism.name
  }

  /** Adds the piece to the clock; the order of these calls is the order of simultaneous events. */
  join(): void {
    this.slot = this.floor.clock.add(this)
  }

  /** Empty, in order and at rest at the start of a shift. */
  reset(): void {
    this.cause = Cause.none
    this.frozen = false
    this.isHalted = false
    this.isWorkedOn = false
    this.isActing = false
    this.owed = 0
    this.state = State.waiting
    this.stateSince = 0
    this.lapsesAt = never
    this.breakdowns?.begin()
    this.mechanism.empty()
    this.countAnew()
    this.refresh()
  }

  // --- handshake ---

  offer(item: CaseIndex, from: Feeder): boolean {
    if (!this.mechanism.take(item)) {
      if (!this.hasRefused(from)) this.refused[this.owed++] = from
      return false
    }
    if (this.owed > 0) this.forget(from)
    this.floor.observer?.taken(this.name, item)
    this.refresh()
    return true
  }

  private forget(from: Feeder): void {
    const index = this.placeOf(from)
    if (index >= 0) this.takeRefused(index)
  }

  /** Its place among those who were told no, or -1. */
  private placeOf(from: Feeder): number {
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

  held(): number {
    return this.mechanism.held()
  }

  /** Somebody was told no and has not been asked again. */
  get owes(): boolean {
    return this.owed > 0
  }

  /** There is room: those who were told no offer again, who has right of way first, then first come first served. */
  invite(): void {
    let left = this.owed
    const first = this.rightOfWay === null ? -1 : this.placeOf(this.rightOfWay)
    if (first > 0) {
      left--
      this.takeRefused(first).roomAhead()
    }
    for (; left > 0 && this.owed > 0; left--) this.takeRefused(0).roomAhead()
  }

  /** `from` was told no here and waits to be told of room. */
  hasRefused(from: Feeder): boolean {
    return this.placeOf(from) >= 0
  }

  /** It is blocked, and nothing inside will happen before there is room ahead. */
  standsBlocked(): boolean {
    if (this.frozen || this.state !== State.blocked) return false
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
    if (breakdowns !== null) {
      breakdowns.find(this)
      if (breakdowns.dueAt <= now) {
        this.stop(Cause.breakdown, breakdowns.repairTime())
        return
      }
    }
    this.isActing = true
    this.mechanism.step()
    this.isActing = false
    this.refresh()
  }

  /**
   * The mechanism's answer to `plan`: it has something to do next at `time` and is in `state`. Working may lapse into
   * waiting by itself, at `lapse`; that needs no event.
   */
  plans(time: number, state: State, lapse = never): void {
    this.due = time
    this.ownState = state
    this.ownLapse = lapse
  }

  /** Has the piece act when its mechanism wants to be woken, if it would not act before. */
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
  private refresh(): void {
    if (this.isActing) return
    if (this.frozen) {
      this.plans(never, this.cause === Cause.none ? State.onBreak : this.stopState())
      this.enterState()
    } else {
      this.mechanism.plan()
      this.enterState()
      if (this.breakdowns !== null) {
        this.breakdowns.find(this)
        this.due = Math.min(this.due, this.breakdowns.dueAt)
      }
    }
    this.schedule()
  }

  private stopState(): State {
    const { waiting, working } = causes[this.cause]!
    return this.isWorkedOn ? working : waiting
  }

  /** Is from now in the state that has been planned, working only until that lapses. */
  private enterState(): void {
    const { ownState } = this
    this.floor.observer?.state(this.name, ownState, this.ownLapse)
    if (ownState !== this.state || this.lapsesAt < this.floor.clock.now) {
      this.bookState()
      this.state = ownState
    }
    this.lapsesAt = this.ownLapse
  }

  /** Books the time in its state up to now; if that has lapsed, it has waited since. */
  private bookState(): void {
    const { now } = this.floor.clock
    const until = Math.min(this.lapsesAt, now)
    const passed = until - this.stateSince
    this.stateTimes[this.state]! += passed
    if (this.breakdowns?.counts(this.state)) this.breakdowns.left -= passed
    if (until < now) {
      this.state = State.waiting
      this.stateTimes[State.waiting]! += now - until
    }
    this.stateSince = now
  }

  /** Stands still or moves again, as stops and breaks have it. */
  private settleFrozen(): void {
    const { now } = this.floor.clock
    const shouldFreeze = this.cause !== Cause.none || this.isHalted
    if (shouldFreeze === this.frozen) return
    this.frozen = shouldFreeze
    if (shouldFreeze) {
      this.frozenAt = now
      this.mechanism.freeze()
    } else this.mechanism.thaw(now - this.frozenAt)
  }

  // --- stops ---

  /** Stands for `cause` until somebody has come and worked for `duration` seconds. */
  stop(cause: Exclude<Cause, -1>, duration: number): void {
    const { now } = this.floor.clock
    this.cause = cause
    this.isWorkedOn = false
    this.hasMetBreak = false
    this.stoppedAt = now
    this.stopCounts[cause]!++
    this.floor.observer?.stops(this.name, cause)
    this.task.skill = causes[cause]!.skill
    this.task.duration = duration
    this.settleFrozen()
    this.refresh()
    this.floor.crew.call(this.task)
  }

  private meetsBreak(): void {
    if (this.hasMetBreak) return
    this.hasMetBreak = true
    this.stopsInBreaks[this.cause]!++
  }

  private workBegins(): void {
    const { now } = this.floor.clock
    this.isWorkedOn = true
    this.stopWaits[this.cause]! += now - this.stoppedAt
    this.refresh()
  }

  private workDone(): void {
    const { now } = this.floor.clock
    const { cause } = this
    this.stopTimes[cause]! += now - this.stoppedAt
    this.cause = Cause.none
    if (cause === Cause.breakdown) this.breakdowns!.begin()
    this.mechanism.putRight(cause)
    this.moveOn()
  }

  /** A standing duty: somebody stands at it from now, or nobody does. */
  manned(isManned: boolean): void {
    this.mechanism.manned(isManned)
    this.refresh()
  }

  /** A break begins or ends for this piece. */
  halt(isHalted: boolean): void {
    this.isHalted = isHalted
    this.moveOn()
  }

  private moveOn(): void {
    this.settleFrozen()
    this.refresh()
    if (this.owes && !this.frozen) this.invite()
  }

  // --- what is counted ---

  /**
   * Counts anew from now. What lies before it of the state and the stop that last is taken off now, and booked with the
   * rest when they end: booked in two parts, a running time would be rounded anew, and with it the next breakdown.
   */
  countAnew(): void {
    const { now } = this.floor.clock
    this.stateTimes.fill(0)
    this.stopCounts.fill(0)
    this.stopTimes.fill(0)
    this.stopWaits.fill(0)
    this.stopsInBreaks.fill(0)
    const until = Math.min(this.lapsesAt, now)
    this.stateTimes[this.state]! -= until - this.stateSince
    this.stateTimes[State.waiting]! -= now - until
    this.bookStop(this.stoppedAt - now)
    this.mechanism.countAnew()
  }

  /** Books so many seconds of the stop that lasts, if one does; takes them off where they are negative. */
  private bookStop(time: number): void {
    if (this.cause === Cause.none) return
    this.stopTimes[this.cause]! += time
    if (!this.isWorkedOn) this.stopWaits[this.cause]! += time
  }

  /** Books what is open when the shift ends. */
  settle(): void {
    const { now } = this.floor.clock
    this.bookState()
    this.bookStop(now - this.stoppedAt)
    this.mechanism.close()
  }

  measures(): Measure[] {
    const own = this.mechanism.mayStandFor()
    const causes = this.breakdowns ? [...own, Cause.breakdown] : own
    return [
      ...stateMeasures(this, this.floor, causes),
      ...causes.flatMap((each) => stopMeasures(this, each, this.floor)),
      ...this.mechanism.measures(),
    ]
  }
}
