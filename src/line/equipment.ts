/** What every piece of equipment does alike: the handshake, its states, its stops and its breakdowns. */
import { type Actor, never } from '../engine/clock.js'
import type { Law } from '../engine/variates.js'
import type { CaseIndex } from './cases.js'
import type { Task } from './crew.js'
import type { Draw, Floor } from './floor.js'
import type { HeldSeries, Measure } from './measure.js'
import { Cause, causes, State, states } from './states.js'

/** Whoever offers cases to a piece; it is told when there is room after a no. */
export interface Feeder {
  roomAhead(now: number): void
}

/** Whoever takes cases. */
export interface Taker {
  /** Takes the case now, or answers false; then it owes `from` a `roomAhead`. */
  offer(now: number, item: CaseIndex, from: Feeder): boolean
}

export interface BreakdownKeys {
  after: Law
  'counted-in': 'running-time' | 'calendar-time'
  repair: Law
}

export abstract class Equipment implements Actor, Feeder, Taker {
  next!: Taker
  /** Why it stands for somebody to put it right. */
  protected cause: Cause = Cause.none
  /** It stands still: for a stop of its own or for a break. */
  protected frozen = false
  readonly stateTimes = new Float64Array(states.length)
  readonly stopCounts = new Uint32Array(causes.length)
  readonly stopTimes = new Float64Array(causes.length)
  readonly stopWaits = new Float64Array(causes.length)

  private slot = -1
  private readonly refused: Feeder[] = []
  private state: State = State.waiting
  private stateSince = 0
  private stoppedAt = 0
  private isWorkedOn = false
  private isHalted = false
  private frozenAt = 0
  private readonly task: Task
  private readonly after: Draw | null
  private readonly repair: Draw | null
  private readonly countsCalendar: boolean
  /** Running time that is left until the next breakdown, or the instant of it where the calendar counts. */
  private breakdownLeft = never

  constructor(
    protected readonly floor: Floor,
    readonly name: string,
    breakdowns: BreakdownKeys | undefined,
    protected readonly isManual: boolean,
  ) {
    this.after = breakdowns ? floor.draws(this.label, 'time to breakdown', breakdowns.after) : null
    this.repair = breakdowns ? floor.draws(this.label, 'repair', breakdowns.repair) : null
    this.countsCalendar = breakdowns?.['counted-in'] === 'calendar-time'
    this.task = {
      skill: 'jams',
      duration: 0,
      begin: (now) => this.workBegins(now),
      done: (now) => this.workDone(now),
    }
  }

  get label(): string {
    return `line.${this.name}`
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
    this.refused.length = 0
    this.state = State.waiting
    this.stateSince = 0
    this.stateTimes.fill(0)
    this.stopCounts.fill(0)
    this.stopTimes.fill(0)
    this.stopWaits.fill(0)
    this.breakdownLeft = this.after ? this.after.draw() : never
    this.empty()
    this.refresh(0)
  }

  // --- what each kind of equipment says of itself ---

  /** Puts the piece back to empty. */
  protected abstract empty(): void
  /** Takes the case if it can. */
  protected abstract take(now: number, item: CaseIndex): boolean
  /** Does what is due now. */
  protected abstract step(now: number): void
  /** When something is due next while it is not frozen. */
  protected abstract pending(): number
  /** Working, waiting or blocked, while it is not frozen. */
  protected abstract ownState(): State
  /** Everything inside stands still from now. */
  protected abstract freeze(now: number): void
  /** It moves again after `passed` seconds: what was due is due that much later; what was refused is offered again. */
  protected abstract thaw(now: number, passed: number): void
  abstract roomAhead(now: number): void
  /** Cases inside, counted piece by piece for the balance. */
  abstract held(): number
  /** Books what is still open at the end of the shift. */
  protected abstract close(now: number): void
  protected abstract ownMeasures(): Measure[]
  /** Places whose cases are drawn over the shift. */
  series(): HeldSeries[] {
    return []
  }

  /** A stop of this cause is over; the piece is about to move again. */
  protected putRight(_now: number, _cause: Cause): void {}

  // --- handshake ---

  offer(now: number, item: CaseIndex, from: Feeder): boolean {
    const isTaken = this.take(now, item)
    if (isTaken) {
      const index = this.refused.length > 0 ? this.refused.indexOf(from) : -1
      if (index >= 0) this.refused.splice(index, 1)
    } else if (!this.refused.includes(from)) this.refused.push(from)
    this.refresh(now)
    return isTaken
  }

  /** Somebody was told no and has not been asked again. */
  protected get owes(): boolean {
    return this.refused.length > 0
  }

  /** There is room: those who were told no offer again, first come first served. */
  protected invite(now: number): void {
    for (let left = this.refused.length; left > 0 && this.refused.length > 0; left--) this.refused.shift()!.roomAhead(now)
  }

  // --- clock ---

  act(now: number): void {
    if (this.breakdownDue() <= now) this.stop(now, Cause.breakdown, this.repair!.draw())
    else {
      this.step(now)
      this.refresh(now)
    }
  }

  /** Brings state and pending time up to date after any change inside. */
  protected refresh(now: number): void {
    const shouldFreeze = this.cause !== Cause.none || this.isHalted
    if (shouldFreeze && !this.frozen) {
      this.frozen = true
      this.frozenAt = now
      this.freeze(now)
    } else if (!shouldFreeze && this.frozen) {
      this.frozen = false
      this.thaw(now, now - this.frozenAt)
    }
    this.enter(now, this.stateNow())
    const due = this.frozen ? never : Math.min(this.pending(), this.breakdownDue())
    this.floor.clock.set(this.slot, due > now ? due : now)
  }

  private stateNow(): State {
    if (this.cause !== Cause.none) return this.isWorkedOn ? causes[this.cause].working : causes[this.cause].waiting
    return this.isHalted ? State.onBreak : this.ownState()
  }

  private enter(now: number, state: State): void {
    if (state === this.state) return
    this.bookState(now)
    this.state = state
  }

  private bookState(now: number): void {
    const passed = now - this.stateSince
    this.stateTimes[this.state]! += passed
    if (this.state === State.working && !this.countsCalendar) this.breakdownLeft -= passed
    this.stateSince = now
  }

  private breakdownDue(): number {
    if (this.countsCalendar) return this.breakdownLeft
    return this.state === State.working ? this.stateSince + this.breakdownLeft : never
  }

  // --- stops ---

  /** Stands for `cause` until somebody has come and worked for `duration` seconds. */
  protected stop(now: number, cause: Exclude<Cause, -1>, duration: number): void {
    this.cause = cause
    this.isWorkedOn = false
    this.stoppedAt = now
    this.stopCounts[cause]!++
    this.task.skill = causes[cause].skill
    this.task.duration = duration
    this.refresh(now)
    this.floor.crew.call(now, this.task)
  }

  private workBegins(now: number): void {
    this.isWorkedOn = true
    this.stopWaits[this.cause]! += now - this.stoppedAt
    this.refresh(now)
  }

  private workDone(now: number): void {
    const { cause } = this
    this.stopTimes[cause]! += now - this.stoppedAt
    this.cause = Cause.none
    if (cause === Cause.breakdown) this.breakdownLeft = this.after!.draw() + (this.countsCalendar ? now : 0)
    this.putRight(now, cause)
    this.refresh(now)
    if (this.owes && !this.frozen) this.invite(now)
  }

  /** A break begins or ends for this piece. */
  halt(now: number, isHalted: boolean): void {
    this.isHalted = isHalted
    this.refresh(now)
    if (this.owes && !this.frozen) this.invite(now)
  }

  /** Whether a break stops it when breaks stop manual work only. */
  get stopsAtBreaks(): boolean {
    return this.isManual
  }

  // --- end of the shift ---

  settle(now: number): void {
    this.bookState(now)
    if (this.cause !== Cause.none) {
      this.stopTimes[this.cause]! += now - this.stoppedAt
      if (!this.isWorkedOn) this.stopWaits[this.cause]! += now - this.stoppedAt
    }
    this.close(now)
  }

  measures(): Measure[] {
    const at = ['equipment', this.name]
    const shares = states.map(({ key, label }, index): Measure => ({
      path: [...at, 'states', key],
      label: `${this.name}: ${label}`,
      unit: 'share',
      kind: 'mean',
      value: () => this.stateTimes[index]! / this.floor.end,
    }))
    const stops = causes.flatMap(({ key, label }, cause): Measure[] => [
      {
        path: [...at, 'measures', key],
        label: `${label} a shift, ${this.name}`,
        unit: 'count',
        kind: 'mean',
        value: () => this.stopCounts[cause]!,
      },
      {
        path: [...at, 'measures', `${key}-stop`],
        label: `Mean time from stop to restart, ${label.toLowerCase()}, ${this.name}`,
        unit: 's',
        kind: 'ratio',
        value: () => this.stopTimes[cause]!,
        over: () => this.stopCounts[cause]!,
      },
      {
        path: [...at, 'measures', `${key}-wait`],
        label: `of it waiting for crew, ${label.toLowerCase()}, ${this.name}`,
        unit: 's',
        kind: 'ratio',
        value: () => this.stopWaits[cause]!,
        over: () => this.stopCounts[cause]!,
      },
    ])
    const happens = new Set<number>(this.causesThatHappen())
    return [...shares, ...stops.filter((_, index) => happens.has(Math.floor(index / 3))), ...this.ownMeasures()]
  }

  /** The causes for which this piece may stand, by number. */
  protected causesThatHappen(): Cause[] {
    return this.after ? [Cause.breakdown] : []
  }
}
