/** A report as data, the same for the terminal and the page: sentences, tables and what only a page shows. */
import type { Display } from '../catalogue/printed-units.js'
import type { Front } from './front.js'
import type { Markup } from './markup.js'
import type { Table } from './table.js'

export type { Table } from './table.js'

/** The head in words. */
export interface Head {
  title: string
  lines: string[]
}

export interface Report {
  title: string
  subtitle: string
  /** The units of the reader. */
  display: Display
  /** What must be known before the figures are read. */
  head?: Head
  headline: string[]
  /** How sure the figures are. */
  certainty: string[]
  tables: Table[]
  /** Limits of the model and of the study, printed with the figures. */
  limits: string[]
  assumed: Table
  /** What of that has no published source, one by one. */
  unsourced: string[]
  cautions: readonly string[]
  repeat: string
  /** Version, seed and scenario that made it. */
  origin: string
  /** For the page alone: the question, and what its first screen says. */
  question?: string
  front?: Front
  /** The line from above, to scale, as SVG. */
  plan?: Markup
  /** Cases over time and place in a stretch of one shift: SVG, for a screen and for a telephone. */
  moment?: {
    wide: Markup
    narrow: Markup
    /** Why the page has no replay of it; not there where it has one. */
    unplayed?: string
  }
  findings?: Table
  given?: Table
  /** What the inputs rest on, and a sentence on those that are taken as exact. */
  rests?: { table: Table; exact: string }
  definitions?: Table
  checklist?: Table
}
