/** The observer of a shift: the line tells it what happens, and it passes that on as events in order of time. */
import type { Clock } from '../engine/clock.js'
import type { Ring } from '../engine/ring.js'
import { taskOf } from '../scenario/calls.js'
import { varies } from '../scenario/outside.js'
import type { Scenario } from '../scenario/schema.js'
import type { CaseIndex, Cases } from './cases.js'
import { ObservedStates } from './observed-states.js'
import type { EventName, OtherWorkEvent, ShiftEvent } from './shift-event.js'
import { Cause, causes } from './states.js'
import type { Task } from './task.js'

/** What is told of an event besides what, when and where it is. */
type Told = Omit<ShiftEvent, 'time' | 'event' | 'at'>

const ofJam = (jam: string | null): Told => (jam === null ? {} : { jam })

const calendarEvents = {
  'break begins': 'break-begins',
  'break ends': 'break-ends',
  'arrivals end': 'arrivals-end',
  'start-up ends': 'start-up-ends',
} as const

/**
 * The line calls it with one line a hook, and `floor.observer` is null in a study. Times never go back. States are told when
 * the instant is over, so one that lasts no time is not told; working that lapses into waiting without an event
 * of the line is told at its own time, before what comes later.
 */
export class Observer extends ObservedStates {
  private readonly kinds: readonly string[]
  /** Where each case is and was before, by its index in the pool, and whether it has been told to stand before the line. */
  private readonly places: string[] = []
  private readonly before: string[] = []
  private readonly standing: boolean[] = []

  constructor(
    clock: Clock,
    private readonly cases: Cases,
    private readonly scenario: Scenario,
    tell: (event: ShiftEvent) => void,
    isOfCases = true,
  ) {
    super(clock, tell, isOfCases)
    this.kinds = Object.keys(scenario.cases)
  }

  /** A shift begins. */
  override begin(): void {
    super.begin()
    this.places.length = 0
    this.before.length = 0
    this.standing.length = 0
  }

  /** Tells what happens now. */
  private happens(event: EventName, at: string, more: Told = {}): void {
    this.advance()
    this.tell({ time: this.clock.now, event, at, ...more })
  }

  // --- cases ---

  private ofCase(event: EventName, at: string, item: CaseIndex, more: Told = {}): void {
    if (!this.isOfCases) return
    this.happens(event, at, { case: this.cases.number[item]!, ...more })
  }

  /** What happens to a case at a piece, and what to a case under a head there. */
  private caseEvent(event: EventName) {
    return (piece: string, item: CaseIndex): void => this.ofCase(event, piece, item)
  }

  private headEvent(event: EventName) {
    return (sealer: string, head: string, item: CaseIndex): void => this.ofCase(event, sealer, item, { head })
  }

  readonly turnedAway = this.caseEvent('turned-away')
  readonly onBelts = this.caseEvent('on-belts')
  readonly freed = this.caseEvent('freed')
  readonly spoilt = this.caseEvent('spoilt')
  /** The head let the case pass without a strip, its roll being empty. */
  readonly passesUnsealed = this.headEvent('passes-unsealed')
  readonly tapeBreaks = this.headEvent('tape-breaks')
  /** The strip of a case that stood too long under its head does not hold. */
  readonly stripSpoilt = this.headEvent('strip-spoilt')

  /** `jam`: its kind; null where the piece has but one. */
  jams(piece: string, item: CaseIndex, jam: string | null): void {
    this.ofCase('jams', piece, item, ofJam(jam))
  }

  arrives(source: string, item: CaseIndex): void {
    if (!this.isOfCases) return
    this.places[item] = source
    this.standing[item] = false
    const kind = this.kinds[this.cases.kind[item]!]!
    this.ofCase('arrives', source, item, { kind, ...this.sizeOf(item, kind) })
  }

  /** Outside size, of a case whose kind varies. */
  private sizeOf(item: CaseIndex, kind: string): Told {
    const { length, width, height, sizes } = this.cases
    if (!sizes.vary || !varies(this.scenario.cases[kind]!)) return {}
    return { length: length[item]!, width: width[item]!, height: height[item]! }
  }

  /** Cases stand before the line; those that came last have not been told yet. */
  stands(source: string, whenFull: string, standing: Ring): void {
    if (whenFull === 'turn-away' || !this.isOfCases) return
    let first = standing.length
    while (first > 0 && !this.standing[standing.at(first - 1)]) first--
    for (let index = first; index < standing.length; index++) {
      const item = standing.at(index)
      this.standing[item] = true
      this.ofCase(whenFull === 'queue' ? 'queues' : 'waits', source, item)
    }
  }

  /** A piece has taken a case; told once, for service may begin before the handshake is over. */
  taken(piece: string, item: CaseIndex): void {
    if (!this.isOfCases) return
    const from = this.places[item]
    if (from === piece) return
    this.places[item] = piece
    if (from !== undefined) this.before[item] = from
    this.ofCase('taken', piece, item, from === undefined ? {} : { from })
  }

  /** The machine behind stands and holds the tail of the case that came last onto `piece`, or lets it go. */
  tail(piece: string, item: CaseIndex, isHeld: boolean): void {
    this.ofCase(isHeld ? 'tail-held' : 'tail-let-go', piece, item, { from: this.before[item]! })
  }

  serviceBegins(station: string, item: CaseIndex, doneAt: number): void {
    this.taken(station, item)
    this.ofCase('service-begins', station, item, { lasts: doneAt - this.clock.now })
  }

  stripLaid(sealer: string, head: string, item: CaseIndex, tape: number): void {
    this.ofCase('strip-laid', sealer, item, { head, tape })
  }

  /** An inspection has taken a case and will reject it. */
  rejects(inspection: string, item: CaseIndex): void {
    this.taken(inspection, item)
    this.ofCase('rejected', inspection, item)
  }

  leaves(item: CaseIndex): void {
    const { arrivedAt, rejected, unsealed } = this.cases
    this.ofCase('leaves', this.places[item] ?? 'exit', item, {
      after: this.clock.now - arrivedAt[item]!,
      as: rejected[item] ? 'rejected' : unsealed[item] ? 'unsealed' : 'good',
    })
  }

  // --- stops, crew, calendar ---

  plannedStop(station: string, until: number): void {
    this.happens('planned-stop', station, { lasts: until - this.clock.now })
  }

  stops(piece: string, cause: Exclude<Cause, -1>, jam: string | null): void {
    this.happens('stops', piece, { cause: causes[cause]!.key, ...ofJam(jam) })
  }

  /** A sensor stops the piece: it sees a case on the conveyor, or none. */
  sensorStops(piece: string, sensor: string, seesCase: boolean): void {
    this.happens('sensor-stops', piece, { sensor, sees: seesCase ? 'full' : 'clear' })
  }

  sensorStarts(piece: string): void {
    this.happens('sensor-starts', piece)
  }

  /** The drive of the piece runs at another speed, m/s. */
  runsAt(piece: string, speed: number): void {
    this.happens('runs-at', piece, { speed })
  }

  /** The piece works slower from now, after it stood long, or at its whole speed again. */
  slowStart(piece: string, begins: boolean): void {
    this.happens(begins ? 'slow-start-begins' : 'slow-start-ends', piece)
  }

  setsOut(person: string, { place, skill, planned }: Task): void {
    this.happens('sets-out', place, { person, task: planned?.does ?? taskOf(skill) })
  }

  /** Somebody has arrived and begins. */
  workBegins(person: string, { place, skill, planned, duration }: Task): void {
    if (planned) this.plannedWork(place, planned.does, duration, person)
    else this.happens('work-begins', place, { person, task: taskOf(skill), lasts: duration })
  }

  workDone(person: string, { place, skill, planned }: Task): void {
    if (planned) this.plannedWorkDone(place, planned.does, person)
    else this.happens('work-done', place, { person, task: taskOf(skill) })
  }

  /** Planned work begins at a piece; `person`: who does it, if anybody. */
  plannedWork(piece: string, task: string, lasts: number, person?: string): void {
    this.happens('planned-work', piece, { ...(person === undefined ? {} : { person }), task, lasts })
  }

  plannedWorkDone(piece: string, task: string, person?: string): void {
    this.happens('planned-work-done', piece, { ...(person === undefined ? {} : { person }), task })
  }

  /** Other work of a crew is due, begun, left or done; `lasts`: what there is to do of it, s. */
  otherWork(event: OtherWorkEvent, crew: string, person: string | null, task: string, lasts?: number): void {
    this.happens(event, `crew.${crew}`, {
      ...(person === null ? {} : { person }),
      task,
      ...(lasts === undefined ? {} : { lasts }),
    })
  }

  /** The handover of shifts begins or ends at a piece. */
  handover(piece: string, begins: boolean): void {
    this.happens(begins ? 'handover-begins' : 'handover-ends', piece)
  }

  /** A stop of a sealer is over now: the heads that have a new roll, or the one whose blade has been serviced. */
  putRight(
    sealer: string,
    cause: Cause,
    heads: readonly { name: string }[],
    newRolls: readonly boolean[],
    stopped: number,
  ): void {
    for (const [index, { name: head }] of heads.entries())
      if (cause === Cause.tape && newRolls[index]) this.happens('roll-changed', sealer, { head })
      else if (cause === Cause.blade && index === stopped) this.happens('blade-serviced', sealer, { head })
  }

  /** Somebody of a crew stands at its post from now, or nobody does. */
  post(crew: string, isManned: boolean): void {
    const at = this.scenario.crew[crew]!['stands-at'] ?? crew
    this.happens(isManned ? 'post-manned' : 'post-left', at, { person: crew })
  }

  calendar(what: keyof typeof calendarEvents, crew: string | null): void {
    this.happens(calendarEvents[what], crew === null ? 'shift' : `crew.${crew}`)
  }
}
