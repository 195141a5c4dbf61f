/** A table as data: heads, rows of cells, and where it stands in a report. */
import type { Cell, Column } from './cell.js'
import type { Section } from './sections.js'

export interface Table {
  title: string
  /** What the table says, in a sentence. */
  note?: string
  /** The first one holds words. */
  columns: Column[]
  rows: Cell[][]
  /** Rows that a first screen leaves out. */
  more?: number
  /** Where it stands in the report. */
  section?: Section
  /** Charts that show the same figures, by their name or the begin of it: a page folds the table under them. */
  behind?: string
}
