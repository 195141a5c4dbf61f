/** Pace of a source: when the next cases come and of which kind they are. */
import type { Measure } from './measure.js'

/** The kind of a case that the pace does not know: it is drawn from the mix. */
export const fromMix = -1

export interface Pace {
  /** Cases that come together. */
  readonly batch: number
  /** Several may be late at one instant: they come one after the other as they are taken, without an event each. */
  readonly mayBeLate: boolean
  /** Nothing has been counted yet; what is due stays due. */
  clear(): void
  /** A shift begins; nothing of a shift before is left. */
  reset(): void
  /** When the next cases come, seen from `now`; both s since the start of the shift; `never` after the last. Asked once for each arrival. */
  next(now: number): number
  /** A case comes: its kind by its place in the scenario, or `fromMix`. */
  bring(): number
  /** The instant, not before `now`, of what was due at `due` when a break began at `began`; it ends now. */
  afterBreak(due: number, began: number, now: number): number
  measures(at: readonly string[], name: string): Measure[]
}
