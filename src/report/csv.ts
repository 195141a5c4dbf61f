/** Shift by shift as CSV, unrounded. */
import { stringify } from 'csv-stringify/sync'
import type { Column, ShiftResult } from '../line/line.js'

/** Names of the columns after the shift's number: one a measure; a ratio of two totals has its two totals. */
export function shiftColumns(columns: readonly Column[]): string[] {
  return columns.map(({ measure, part }) => {
    const name = measure.path.filter((step) => step !== 'measures').join('.')
    if (measure.kind !== 'ratio') return `${name} [${measure.unit}]`
    return part === 'value' ? `${name}, total` : `${name}, over`
  })
}

/** The numbers of a shift under those columns; empty where nothing is known. */
export function shiftCells(shift: ShiftResult): (number | '')[] {
  return Array.from(shift.values, (value) => (Number.isFinite(value) ? value : ''))
}

/** A row per shift. */
export function shiftsCsv(columns: readonly Column[], shifts: readonly ShiftResult[]): string {
  const rows = shifts.map((shift, index) => [index + 1, ...shiftCells(shift)])
  return stringify([['shift', ...shiftColumns(columns)], ...rows], { escape_formulas: true })
}
