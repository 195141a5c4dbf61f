/** What the page asks of the worker that studies, and what it is told: data alone, so that it can be sent. */
import type { Layout } from '../../pictures/layout.js'
import type { Move } from '../../pictures/motion.js'
import type { CheckResult } from '../../questions/check/document.js'
import type { CompareResult } from '../../questions/compare/document.js'
import type { RunResult } from '../../questions/run/document.js'
import type { Problem } from '../../scenario/problems.js'
import type { Stretch } from '../../shifts/stretch.js'

/** CSV texts that a scenario draws on, by the name that it gives them. */
export type Files = Readonly<Record<string, string>>

/** What the file of the scenario is called in messages and commands, and what lies beside it. */
export interface Home {
  name: string
  files: Files
}

/** A design that is kept: its text by the name that it was given. */
export interface Pin {
  name: string
  text: string
}

/** Which of the two lines: as it came, and as it is now. */
export type Side = 'before' | 'after'

/** An ask cuts off the one before it. `number` grows by one with each, and comes back with all that is told of it. */
export type Ask =
  | { what: 'try'; number: number; home: Home; before: string; after: string }
  /** A table of designs on the same random numbers, the first of them as the base. */
  | { what: 'pins'; number: number; home: Home; pins: readonly Pin[] }

/** What is told of an ask, in the order in which it comes. */
export type Told =
  /** A text that is no scenario, or a line that cannot be simulated: nothing more comes of this ask. */
  | { what: 'problems'; number: number; of: Side | string; problems: readonly Problem[] }
  /** The line as it is now, before it is simulated: findings, hand calculation, and where its pieces stand. */
  | { what: 'checked'; number: number; check: CheckResult; layout: Layout }
  /** The lines after so many shifts: told again and again, until `isDone`. */
  | ({ what: 'figures'; number: number; isDone: boolean } & Figures)
  /** Twenty minutes of an ordinary shift of the line as it is now, and how its cases move: worked out where it keeps nobody waiting. */
  | { what: 'stretch'; number: number; layout: Layout; stretch: Stretch; moves: readonly Move[] }
  /** Both lines once more, with draws of their inputs: plus-minus holds both kinds of what is not known. */
  | ({ what: 'drawn'; number: number } & Figures)
  /** The kept designs side by side: `variants` and `differences` by their names. */
  | { what: 'pinned'; number: number; isDone: boolean; compared: CompareResult }
  /** A fault of the program, not of the scenario. */
  | { what: 'bug'; number: number; message: string }

/** What is known of the two lines. */
export interface Figures {
  /** Shifts of each line. */
  shifts: number
  /** The document that `tapeshift run` makes of each, without a recorded stretch. */
  before: RunResult
  after: RunResult
  /**
   * The document of a comparison on the same random numbers: `variants.base` is the line as it came, `variants.changed` the line as it
   * is now, `differences.changed` that less the former. Null where both are the same, and until it is worked out.
   */
  compared: CompareResult | null
}

/** Whether no draws of inputs follow: neither line has evidence. */
export const isExact = ({ before, after }: Figures): boolean =>
  [before, after].every(({ evidence = [] }) => evidence.length === 0)

/** Names of the two lines in a comparison. */
export const changedName = 'changed'
