/** Results as CSV, unrounded: shift by shift, and difference by difference. */

import type { Column, ShiftResult } from '../line/line.js'
import { csvText } from '../report/csv.js'

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

/** A row per draw: what was drawn of each input, SI, of a law its mean. */
export const inputsCsv = (
  paths: readonly string[],
  draws: readonly { inputs: readonly number[] }[],
): string => csvText([['draw', ...paths], ...draws.map(({ inputs }, index) => [index + 1, ...inputs])])

/** A design with its shifts. */
interface DesignRows {
  /** Of one design alone it is not said. */
  name?: string
  columns: readonly Column[]
  shifts: readonly ShiftResult[]
  /** Of each draw of the inputs; null where they are held fixed. */
  draws?: readonly (readonly ShiftResult[])[] | null | undefined
}

/** A row per design and shift, where inputs were drawn per design, draw (0: as given) and shift, under the columns of all of them; empty where a design has no such measure. */
export const shiftsCsv = (designs: readonly DesignRows[]): string => csvText(rowsOf(designs))

function* rowsOf(designs: readonly DesignRows[]): Generator<readonly (string | number)[]> {
  const names = [...new Set(designs.flatMap(({ columns }) => shiftColumns(columns)))]
  const isDrawn = designs.some(({ draws }) => draws)
  const isNamed = designs.some(({ name }) => name !== undefined)
  const head = (name: string, draw: string | number, shift: string | number) => [
    ...(isNamed ? [name] : []),
    ...(isDrawn ? [draw, shift] : [shift]),
  ]
  yield [...head('variant', 'draw', 'shift'), ...names]
  for (const { name = '', columns, shifts, draws } of designs) {
    const places = new Map(shiftColumns(columns).map((column, index) => [column, index]))
    for (const [draw, each] of [shifts, ...(draws ?? [])].entries())
      for (const [index, shift] of each.entries()) {
        const cells = shiftCells(shift)
        yield [
          ...head(name, draw, index + 1),
          ...names.map((column) => cells[places.get(column) ?? -1] ?? ''),
        ]
      }
  }
}
