/** Tables as a reader sees them, in metric units. */
import { cellText } from '../../src/report/cell.js'
import type { Table } from '../../src/report/report.js'

/** Rows of printed cells. */
export const saidRows = ({ rows }: Table): string[][] =>
  rows.map((row) => row.map((cell) => cellText(cell, 'metric')))

/** Titles of the columns. */
export const titles = ({ columns }: Table): string[] => columns.map(({ title }) => title)
