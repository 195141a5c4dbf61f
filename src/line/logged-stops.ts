/** Stops of one piece as a plant logged them: it stands at their times and for their lengths, whoever is there. */
import { type Actor, never } from '../engine/clock.js'
import type { LoggedKind, RecordedStops } from '../scenario/recorded-stops.js'
import type { Floor } from './floor.js'
import { Cause, causes, State } from './states.js'

const causeOf: Readonly<Record<LoggedKind, Cause>> = {
  jams: Cause.jam,
  breakdowns: Cause.breakdown,
  'roll-change': Cause.tape,
  'size-setting': Cause.size,
  'tape-breaks': Cause.tapeBreak,
  blade: Cause.blade,
  every: Cause.none,
}

const stateOf = (kind: LoggedKind): State => causes[causeOf[kind]]?.working ?? State.plannedStop

/** Nobody is called to such a stop: its length holds the wait for somebody. Work in hand goes on after it with what was left. */
export class LoggedStops implements Actor {
  /** It stands for a stop of the log, in `state`. */
  isStanding = false
  state: State = State.waiting
  private next = 0
  private slot = -1
  private readonly instead: ReadonlySet<Cause>

  constructor(
    private readonly floor: Floor,
    readonly label: string,
    private readonly stops: RecordedStops,
    /** A stop has begun or ended. */
    private readonly turned: () => void,
  ) {
    this.instead = new Set(stops.instead.map((kind) => causeOf[kind]))
  }

  join(): void {
    this.slot = this.floor.clock.add(this)
  }

  /** At the start of a shift. */
  begin(): void {
    this.isStanding = false
    this.next = 0
    this.floor.clock.set(this.slot, this.stops.begins[0] ?? never)
  }

  /** Stops of this cause are those of the log: one that a law brings takes no time. */
  isInstead(cause: Cause): boolean {
    return this.instead.has(cause)
  }

  act(): void {
    const { begins, ends, kinds } = this.stops
    if (this.isStanding) this.next++
    const { next } = this
    // one may follow upon another: nothing moves between them
    this.isStanding = next < begins.length && begins[next]! <= this.floor.clock.now
    if (this.isStanding) this.state = stateOf(kinds[next]!)
    this.floor.clock.set(this.slot, (this.isStanding ? ends : begins)[next] ?? never)
    this.turned()
  }
}
