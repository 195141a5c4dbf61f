/** A field: what a person sees and changes of one value of a scenario. */

import type { Problem } from '../../scenario/problems.js'
import type { Dimension } from '../../scenario/quantity.js'
import { isWithin } from '../../scenario/within.js'

/** A number as it is written, and its unit; an empty unit: it has none. */
export interface Amount {
  number: number
  unit: string
}

/** Between what a value is dragged, and in what steps: in the unit in which it is written, or its default. */
export interface Drag {
  from: number
  to: number
  step: number
}

export interface Field {
  /** Dotted path, as `--set` names it. */
  path: string
  /** The key as a person reads it: `belt speed`. */
  label: string
  /** The keys that it stands below in its group: `heads, top`; empty where it stands at the top. */
  part: string
  /** What it means. */
  explanation: string
  /** What may stand there, in words; empty where nothing need be said. */
  takes: string
  /**
   * What a field holds. `amount`: a number, with or without a unit; `choice`: one of a few words; `flag`: yes or no; `text`: any text;
   * `more`: a value of several parts, such as a law or a list, which is changed as YAML in one line.
   */
  form: 'amount' | 'choice' | 'flag' | 'text' | 'more'
  /** Must be given. */
  isNeeded: boolean
  /** As the file writes it, as YAML in one line; null where nobody gave it. */
  written: string | null
  /** As the format would write the default; null where there is none. */
  usual: string | null
  /** Where the default comes from; null where there is none. */
  basis: string | null
  /** What the value rests on, in words: `counted: 36 in 40000 cases`; null where it is taken as exact. */
  evidence: string | null
  /** The number of what is written, or of the default; null where it is none. */
  amount: Amount | null
  /** What the number is of, for `converted`; null where it has no unit, or is money. */
  dimension: Dimension | null
  /** Units that may be chosen; none where it has none. */
  units: readonly string[]
  /** Words that may be chosen, true and false among them. */
  choices: readonly string[]
  /** Null where nothing can be dragged. */
  drag: Drag | null
}

/** Fields that belong together. */
export interface FieldGroup {
  /** What it is, in words. */
  explanation: string
  fields: readonly Field[]
}

/** The problems of what stands at a path, or inside it. */
export const problemsAt = (problems: readonly Problem[], path: string): Problem[] =>
  problems.filter((each) => isWithin(each.path, path))
