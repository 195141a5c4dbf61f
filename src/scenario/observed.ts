/** Fills the values of every `observed` law from its CSV column. */

import type { Finding } from './finding.js'
import type { Observed } from './law.js'
import { unitSize } from './quantity.js'
import type { Path } from './walk.js'

/** The cells of one column of a CSV file beside the scenario; throws with a plain message when it cannot. */
export type ReadColumn = (file: string, column: string) => string[]

/** Reads the files of all `observed` laws in `scenario`, in place; returns what was wrong. */
export function readObserved(
  scenario: object,
  readColumn: ReadColumn | undefined,
  path: Path = [],
): Finding[] {
  if ((scenario as Partial<Observed>).law === 'observed')
    return fill(scenario as Observed, readColumn, [...path, 'observed', 'file'])
  return Object.entries(scenario).flatMap(([key, value]) =>
    typeof value === 'object' && value !== null
      ? readObserved(value as object, readColumn, [...path, key])
      : [],
  )
}

function fill(law: Observed, readColumn: ReadColumn | undefined, path: Path): Finding[] {
  const finding = (rule: string, fix: string): Finding[] => [
    { code: 'file', path, found: '', rule, fix, atKey: false },
  ]
  if (!readColumn) return finding('files cannot be read here', 'give the law by its parameters')
  let cells: string[]
  try {
    cells = readColumn(law.file, law.column)
  } catch (error) {
    return finding(
      error instanceof Error ? error.message : 'cannot be read',
      'check the name; the file stays in the folder of the scenario',
    )
  }
  const size = unitSize('time', law.unit)
  const values = cells.map((cell) => (cell.trim() === '' ? Number.NaN : Number(cell) * size))
  const bad = values.findIndex((value) => !(value >= 0 && value < Infinity))
  if (bad >= 0)
    return finding(
      `row ${bad + 2} of column ${law.column} is no time: \`${cells[bad]!.slice(0, 20)}\``,
      'each row holds a number that is not negative',
    )
  if (values.length === 0) return finding('the column holds no values', 'record at least one')
  law.values = values.sort((a, b) => a - b)
  return []
}
