/** Figures of a document: what a measure comes to, how sure that is, its unit and words; and amounts worked out by hand. */
import type { Few } from '../statistics/estimate.js'

/** A figure as it stands in the document. A number that nothing is known of is null. */
export interface Figure {
  mean: number | null
  low: number | null
  high: number | null
  sd: number | null
  n: number
  unit: string
  label: string
  /** Half-width with control variates on the arrivals over that without; where they were used. */
  shrink?: number
  /** What it rests on, where that is too little for a plus-minus: low and high are null, or exact limits of a count. */
  few?: Few
  /** Of a count: variance over mean, where its events are shown to come in bunches. */
  bunches?: number
  /** True where the scenario allows no other value. */
  isFixed?: boolean
  /** Where inputs were drawn: the whole interval, with what is not known of them; low and high are luck of the simulation alone. */
  inputs?: FigureOfInputs
}

/** What is not known of the inputs, as it makes itself felt in a figure. */
export interface FigureOfInputs {
  low: number | null
  high: number | null
  /** The interval of the inputs alone. */
  alone: { low: number | null; high: number | null }
  /** Part of the variance of the whole that is theirs, 0 to 1. */
  share: number
  /** Draws that say something of it. */
  draws: number
}

/** The interval of an estimate or a figure that is printed and judged: where inputs were drawn it holds both kinds. */
export const wholeOf = <End>({
  low,
  high,
  inputs,
}: {
  low: End
  high: End
  inputs?: { low: End; high: End } | undefined
}): { low: End; high: End } => inputs ?? { low, high }

/** Figures by the keys of their measures. */
export type Figures<Key extends string> = Partial<Record<Key, Figure>>

/** Those that a document has, in its order. */
export const entriesOf = Object.entries as <Key extends string>(of: Figures<Key>) => [Key, Figure][]

/** A number worked out by hand, SI; null where it is without limit or not known. */
export interface Amount {
  value: number | null
  unit: string
}
