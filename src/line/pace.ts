/** Pace of a source: when the next cases come and of which kind they are. */
import type { Measure } from './measure.js'

/** The kind of a case that the pace does not know: it is drawn from the mix. */
export const fromMix = -1

/** Places in `Pace.times`: now, and when the next cases come; both s since the start of the shift. */
export const Time = { now: 0, due: 1 } as const

export abstract class Pace {
  /** Cases that come together. */
  abstract readonly batch: number
  /** Several may be late at one instant: they come one after the other as they are taken, without an event each. */
  readonly mayBeLate: boolean = false
  /** What `next` is asked and answers, by `Time`: a number handed over would be allocated with each case. */
  readonly times = new Float64Array(2)

  /** Nothing has been counted yet; what is due stays due. */
  clear(): void {}
  /** A shift begins; nothing of a shift before is left. */
  abstract reset(): void
  /** Finds when the next cases come, seen from now; `never` after the last. Asked once for each arrival. */
  abstract next(): void
  /** A case comes: its kind by its place in the scenario, or `fromMix`. */
  bring(): number {
    return fromMix
  }
  /** The instant, not before `now`, of what was due at `due` when a break began at `began`; it ends now. */
  abstract afterBreak(due: number, began: number, now: number): number
  measures(_name: string): Measure[] {
    return []
  }
}
