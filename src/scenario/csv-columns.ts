/** Columns of a CSV file found by their names, and their cells as plain decimal numbers. */
import { nearest } from './nearest.js'
import { shown } from './printable.js'

/** Which column has a name, or why none has. */
type ColumnFound = { index: number; rule?: never } | { index: number; rule: string; fix: string }

/** The column `name` among the names of a header; one that stands there twice is none, for nobody can say which is meant. */
export function columnNamed(names: readonly string[], name: string, file: string): ColumnFound {
  const index = names.indexOf(name)
  if (index < 0)
    return {
      index,
      rule: `\`${shown(file)}\` has no column \`${shown(name)}\`; it has ${shown(names.join(', '), 200)}`,
      fix: shown(nearest(name, names), 200),
    }
  const again = names.indexOf(name, index + 1)
  if (again < 0) return { index }
  return {
    index: -1,
    rule: `\`${shown(file)}\` has the column \`${shown(name)}\` twice, as columns ${index + 1} and ${again + 1} of row 1`,
    fix: 'rename one of the two',
  }
}

const decimal = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/

/** A decimal comma; before exactly three digits it may part thousands, unless a 0 stands before it. */
const withComma = /^[+-]?\d+,\d+$/
const isEither = /^[+-]?[1-9]\d{0,2},\d{3}$/

/**
 * The number of a cell, such as `12.5`, `12,5` or `2e3`; NaN where it is empty, endless, written to another base such as `0x10`, or has a comma of
 * which nobody can say what it parts, such as `1,400`.
 */
export function decimalOf(cell: string): number {
  const trimmed = cell.trim()
  const text = withComma.test(trimmed) && !isEither.test(trimmed) ? trimmed.replace(',', '.') : trimmed
  const value = decimal.test(text) ? Number(text) : Number.NaN
  return Number.isFinite(value) ? value : Number.NaN
}
