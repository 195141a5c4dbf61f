/** Stops of a line as a plant logged them, in place of those that laws would bring: only in memory, no file of a scenario has them. */

/** What a stop of the log may be: the key that has such stops in a scenario. */
export type LoggedKind =
  | 'jams'
  | 'breakdowns'
  | 'roll-change'
  | 'size-setting'
  | 'tape-breaks'
  | 'blade'
  | 'every'

/** Stops of a piece, in order and apart from one another. */
export interface RecordedStops {
  /** All stops of these kinds are those of the log; a law that brings one takes no time. */
  instead: readonly LoggedKind[]
  /** Since the start of the shift, s. */
  begins: readonly number[]
  ends: readonly number[]
  kinds: readonly LoggedKind[]
}

/** By the name of the piece. */
export type RecordedStopsOfLine = Readonly<Record<string, RecordedStops>>
