/** A piece of equipment as its mechanism sees it, and what is counted of it. */
import type { Call } from '../scenario/calls.js'
import type { Feeder, Outlet, Taker } from './handshake.js'
import type { JamKind } from './jam-kind.js'
import type { Cause, State } from './states.js'

/** Times in s and numbers of stops, by number of the state or cause. */
export interface Tallies {
  readonly name: string
  readonly stateTimes: Float64Array
  readonly stopCounts: Uint32Array
  readonly stopTimes: Float64Array
  readonly stopWaits: Float64Array
  /** Of several kinds of jam the rarer one whose single jam can outweigh all others; null where there is none. */
  readonly heavyJam: string | null
  /** Who is called for stops of a cause: of jams it may be one for each kind. */
  callsFor(cause: Cause): readonly Call[]
  /** Of the stops those that waited for the end of a break. */
  readonly stopsInBreaks: Uint32Array
}

export interface Unit extends Tallies, Feeder {
  /** Where its cases go; of several ways the first. */
  readonly next: Taker
  /** All ways out, in the order of `scenario/routes`. */
  readonly ways: readonly Outlet[]
  /** It stands still, for a stop of its own or for a break; since when, s. */
  readonly frozen: boolean
  readonly frozenAt: number
  /** Somebody was told no and has not been asked again. */
  readonly owes: boolean
  /** The piece that now offers, or offered last, carries cases: one may stand half on it. */
  readonly isCarriedTo: boolean
  /** The case that came last goes on otherwise than was said. */
  tellBehind(): void
  /** There is room: those who were told no offer again. */
  invite(): void
  /**
   * The mechanism's answer to `plan`: it has something to do next at `time` and is in `state`. Working may lapse into
   * waiting by itself, at `lapse`, else `never`; that needs no event.
   */
  plans(time: number, state: State, lapse: number): void
  /** When it has something to do next, s, as was planned last. */
  readonly due: number
  /** It acts at `time` already, if it was to act later: to tell something. */
  actsBy(time: number): void
  /** Has the piece act when its mechanism wants to be woken, if it would not act before. */
  wake(): void
  /** Stands for `cause` until somebody has come and worked for `duration` seconds; of a jam with its kind, which says whom it calls. */
  stop(cause: Exclude<Cause, -1>, duration: number, kind?: JamKind): void
}
