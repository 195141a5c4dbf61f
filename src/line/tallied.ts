/**
 * What is counted of a piece of equipment: the time in each state, and of each cause of a stop how often and how long. The
 * lower part of `Equipment`, which is the only class that is made of it.
 */
import { never } from '../engine/clock.js'
import { unset } from '../engine/unset.js'
import type { Call } from '../scenario/calls.js'
import type { Breakdowns } from './breakdowns.js'
import type { Floor } from './floor.js'
import { heaviest, type JamKind } from './jam-kind.js'
import { Cause, causes, State, stateKeys } from './states.js'
import type { Tallies } from './unit.js'

export abstract class Tallied implements Tallies {
  /** Its state, for others to read; since when it is in it, and when that lapses, s. */
  state: State = State.waiting
  stateSince = unset
  lapsesAt = never
  readonly stateTimes = new Float64Array(stateKeys.length)
  readonly stopCounts = new Uint32Array(causes.length)
  readonly stopTimes = new Float64Array(causes.length)
  readonly stopWaits = new Float64Array(causes.length)
  readonly stopsInBreaks = new Uint32Array(causes.length)
  /** The stop that lasts: why, since when, s, and whether somebody is at work on it. */
  protected cause: Cause = Cause.none
  protected stoppedAt = unset
  protected isWorkedOn = false
  /** Its kind, where it is a jam. */
  protected jam: JamKind | null = null
  /** It has waited out a break. */
  private hasMetBreak = false

  constructor(
    protected readonly floor: Floor,
    protected readonly breakdowns: Breakdowns | null,
    /** Kinds of jam, which are counted apart too. */
    private readonly jamKinds: readonly JamKind[],
  ) {}

  abstract get name(): string

  get heavyJam(): string | null {
    return heaviest(this.jamKinds)?.name ?? null
  }

  callsFor(cause: Cause): readonly Call[] {
    return cause === Cause.jam ? this.jamKinds.map(({ call }) => call) : [causes[cause]!.skill]
  }

  /** Waiting, and no stop, from now at the start of a shift. */
  protected beginState(): void {
    this.cause = Cause.none
    this.isWorkedOn = false
    this.jam = null
    this.state = State.waiting
    this.stateSince = 0
    this.lapsesAt = never
  }

  /** A stop begins now. */
  protected beginStop(cause: Exclude<Cause, -1>): void {
    this.cause = cause
    this.isWorkedOn = false
    this.hasMetBreak = false
    this.stoppedAt = this.floor.clock.now
  }

  /** It is counted: it is none that a log has already. */
  protected countStop(kind: JamKind | null): void {
    this.stopCounts[this.cause]!++
    this.jam = kind
    if (kind !== null) kind.count++
  }

  /** It waits, and all who could come are on a break. */
  protected meetsBreak(): void {
    if (this.hasMetBreak) return
    this.hasMetBreak = true
    this.stopsInBreaks[this.cause]!++
    if (this.jam !== null) this.jam.inBreaks++
  }

  /** Somebody is there now, and it has waited until then. */
  protected bookWait(): void {
    const waited = this.floor.clock.now - this.stoppedAt
    this.isWorkedOn = true
    this.stopWaits[this.cause]! += waited
    if (this.jam !== null) this.jam.wait += waited
  }

  /** It is over now. */
  protected endStop(): void {
    const lasted = this.floor.clock.now - this.stoppedAt
    this.stopTimes[this.cause]! += lasted
    if (this.jam !== null) this.jam.time += lasted
    this.jam = null
    this.cause = Cause.none
  }

  /**
   * Books the time in its state up to now; if that has lapsed, it has waited since. If it goes on waiting, what it has waited is booked with the
   * rest: sums must not hang on what else happens meanwhile.
   */
  protected bookState(next: State): void {
    const { now } = this.floor.clock
    const until = Math.min(this.lapsesAt, now)
    const passed = until - this.stateSince
    this.stateTimes[this.state]! += passed
    if (this.breakdowns?.counts(this.state)) this.breakdowns.left -= passed
    const goesOnWaiting = until < now && next === State.waiting
    if (until < now && !goesOnWaiting) this.stateTimes[State.waiting]! += now - until
    this.state = next
    this.stateSince = goesOnWaiting ? until : now
  }

  /** Books so many seconds of the stop that lasts, if one does; takes them off where they are negative. */
  protected bookStop(time: number): void {
    if (this.cause === Cause.none) return
    this.stopTimes[this.cause]! += time
    if (!this.isWorkedOn) this.stopWaits[this.cause]! += time
    this.jam?.book(time, this.isWorkedOn)
  }

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
    for (const kind of this.jamKinds) kind.countAnew()
    const until = Math.min(this.lapsesAt, now)
    this.stateTimes[this.state]! -= until - this.stateSince
    this.stateTimes[State.waiting]! -= now - until
    this.bookStop(this.stoppedAt - now)
  }

  /** Books what is open when the shift ends. */
  settle(): void {
    this.bookState(this.state)
    this.bookStop(this.floor.clock.now - this.stoppedAt)
  }
}
