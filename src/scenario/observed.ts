/** Fills the values of every `observed` law from its CSV column. */

import { decimalOf } from './csv-columns.js'
import { type Finding, findingAt } from './finding.js'
import type { Observed } from './law.js'
import { shown } from './printable.js'
import { unitSize } from './quantity.js'
import { sideEnds } from './size-law.js'
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
    return fill(scenario as Observed, readColumn, [...path, 'observed'])
  return Object.entries(scenario).flatMap(([key, value]) =>
    typeof value === 'object' && value !== null
      ? readObserved(value as object, readColumn, [...path, key])
      : [],
  )
}

type Told = (key: 'file' | 'day', rule: string, fix: string) => Finding[]

function fill(law: Observed, readColumn: ReadColumn | undefined, path: Path): Finding[] {
  const told: Told = (key, rule, fix) => [findingAt([...path, key], 'file', rule, fix)]
  if (!readColumn) return told('file', 'files cannot be read here', 'give a distribution with parameters')
  let cells: string[]
  try {
    cells = readColumn(law.file, law.column)
  } catch (error) {
    return told('file', messageOf(error), 'check the name; the file must be in the folder of the scenario')
  }
  const { dimension, isOne, what, rule } = path[0] === 'cases' ? ofSizes : ofTimes
  const size = unitSize(dimension, law.unit)
  const values = cells.map((cell) => decimalOf(cell) * size)
  const bad = values.findIndex((value) => !isOne(value))
  if (bad >= 0)
    return told(
      'file',
      `row ${bad + 2} of column ${law.column} is ${what}: \`${cells[bad]!.slice(0, 20)}\``,
      `each row needs ${rule}`,
    )
  if (values.length === 0) return told('file', 'the column has no values', 'record at least one')
  if (law.day !== undefined) return fillByDay(law, law.day, values, readColumn, told)
  law.values = values.sort((a, b) => a - b)
  return []
}

/** What the rows of a column hold: sizes of cases, else times. */
const ofTimes = {
  dimension: 'time',
  isOne: (value: number) => value >= 0 && value < Infinity,
  what: 'not a time',
  rule: 'a number of 0 or more',
} as const
const ofSizes = {
  dimension: 'length',
  isOne: (value: number) => value >= sideEnds.from && value <= sideEnds.to,
  what: 'not a size of a case',
  rule: `a length from ${1000 * sideEnds.from} mm to ${sideEnds.to} m`,
} as const

const messageOf = (error: unknown): string => (error instanceof Error ? error.message : 'cannot be read')

const withoutDays = 'remove `day`: then single values are drawn, as if values of one day were independent'

/** Fills values of which each has its day. */
function fillByDay(
  law: Observed,
  day: string,
  values: readonly number[],
  readColumn: ReadColumn,
  told: Told,
): Finding[] {
  let cells: string[]
  try {
    cells = readColumn(law.file, day).map((cell) => cell.trim())
  } catch (error) {
    return told('day', messageOf(error), withoutDays)
  }
  const empty = cells.indexOf('')
  if (empty >= 0)
    return told(
      'day',
      `row ${empty + 2} of column ${day} is empty`,
      'give the day in each row, written the same for all rows of one day',
    )
  const places = new Map<string, number>()
  for (const cell of cells) if (!places.has(cell)) places.set(cell, places.size)
  if (places.size < 2)
    return told(
      'day',
      `column ${day} has one day only, ${shown(cells[0]!, 20)}: one day does not show how days differ`,
      `log more days, or ${withoutDays}`,
    )
  const order = values.map((_, index) => index).sort((a, b) => values[a]! - values[b]!)
  law.values = order.map((index) => values[index]!)
  law.byDay = { of: Uint32Array.from(order, (index) => places.get(cells[index]!)!), count: places.size }
  return []
}
