/** Shift by shift as CSV, unrounded. */
import { stringify } from 'csv-stringify/sync'
import type { Column, ShiftResult } from '../line/line.js'

/** A row per shift, a column per measure; a ratio of two totals gives its two totals. */
export function shiftsCsv(columns: readonly Column[], shifts: readonly ShiftResult[]): string {
  const names = columns.map(({ measure, part }) => {
    const name = measure.path.filter((step) => step !== 'measures').join('.')
    if (measure.kind !== 'ratio') return `${name} [${measure.unit}]`
    return part === 'value' ? `${name}, total` : `${name}, over`
  })
  const rows = shifts.map((shift, index) => [
    index + 1,
    ...Array.from(shift.values, (value) => (Number.isFinite(value) ? value : '')),
  ])
  return stringify([['shift', ...names], ...rows], { escape_formulas: true })
}
