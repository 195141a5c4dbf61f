/** Results as CSV, unrounded: shift by shift, and difference by difference. */
import { stringify } from 'csv-stringify/sync'
import type { Column, ShiftResult } from '../line/line.js'
import type { CompareResult } from '../study/compare-result.js'
import type { SizeResult } from '../study/size-result.js'

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

/** A design with its shifts, for `designsCsv`. */
export interface DesignRows {
  name: string
  columns: readonly Column[]
  shifts: readonly ShiftResult[]
}

/** A row per design and shift, under the columns of all of them; empty where a design has no such measure. */
export function designsCsv(designs: readonly DesignRows[]): string {
  const names = [...new Set(designs.flatMap(({ columns }) => shiftColumns(columns)))]
  const rows = designs.flatMap(({ name, columns, shifts }) => {
    const places = new Map(shiftColumns(columns).map((column, index) => [column, index]))
    return shifts.map((shift, index) => {
      const cells = shiftCells(shift)
      return [name, index + 1, ...names.map((column) => cells[places.get(column) ?? -1] ?? '')]
    })
  })
  return stringify([['variant', 'shift', ...names], ...rows], { escape_formulas: true })
}

/** A row per variant and measure: the variant less the base. */
export function differencesCsv({ differences, pairs }: CompareResult): string {
  const all = [
    ...Object.entries(differences).map(([of, figures]) => ({ of, against: 'base', figures })),
    ...pairs.map(({ of, against, differences: figures }) => ({ of, against, figures })),
  ]
  const rows = all.flatMap(({ of, against, figures }) =>
    Object.entries(figures).map(([measure, each]) => [
      ...[of, against, measure, each.unit, each.mean, each.low, each.high, each.family ?? ''],
      ...[each.alone.low, each.alone.high, each.p, each.isShown ?? '', each.n, each.varianceRatio],
    ]),
  )
  const head = [
    ...['variant', 'against', 'measure', 'unit', 'difference', 'low', 'high', 'family'],
    ...['low alone', 'high alone', 'p', 'shown', 'pairs', 'variance ratio'],
  ]
  return stringify([head, ...rows], {
    escape_formulas: true,
    cast: { boolean: (value) => (value ? 'yes' : 'no') },
  })
}

/** A row per design that was looked at, in order of cost. */
export function designsSizedCsv({ choices, promises, designs, currency }: SizeResult): string {
  const paths = choices.map(({ path }) => path)
  const head = [
    ...[
      'design',
      ...paths,
      `cost of a shift by hand [${currency}]`,
      'verdict',
      'without simulating',
      'shifts',
    ],
    ...promises.flatMap(({ promise }) => [promise, 'low', 'high']),
  ]
  const rows = designs.map(({ place, set, cost, verdict, without, shifts, promises: figures }) => [
    ...[place, ...paths.map((path) => cellOf(set[path])), cost ?? '', verdict, without ?? '', shifts],
    ...figures.flatMap(({ mean, low, high }) => [mean ?? '', low ?? '', high ?? '']),
  ])
  return stringify([head, ...rows], { escape_formulas: true })
}

const cellOf = (value: unknown) => (typeof value === 'object' ? JSON.stringify(value) : value)
