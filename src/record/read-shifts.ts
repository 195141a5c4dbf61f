/** The shifts of a record: read, put into order, apart from one another, with their breaks at fixed times. */
import { Growing } from './growing.js'
import type { Ledger } from './ledger.js'
import { NumberColumn } from './numbers.js'
import type { Reading } from './reading.js'
import type { LoggedShift, Span } from './record.js'
import { lengthOf, union, within } from './spans.js'
import { Table } from './table.js'
import { earliestFirst, TimesOfFile } from './times-of-file.js'
import type { LocalClock } from './zone.js'

/** More shifts than this are no record of one line; shifts are numbered in 16 bits. */
const mostShifts = 60_000
const secondsOfDay = 86_400

interface Row extends Span {
  good: number | null
  row: number
}

/** The shifts in order; none where the file cannot be used, which is told. */
export function readShifts(reading: Reading): LoggedShift[] {
  const { record, clock, ledger } = reading
  const { file } = record.shifts
  const rows = placed(rowsOf(reading), file, ledger)
  if (rows.length === 0 && !ledger.isRefused) ledger.tell('no-shifts', { file })
  const fixed = record.shifts.breaks ?? []
  return rows.map((row) => ({
    begins: row.begins,
    ends: row.ends,
    day: clock.day(row.begins),
    good: row.good,
    breaks: breaksIn(row, fixed, clock),
    lost: [],
    isHeldOut: false,
    row: row.row,
  }))
}

/** The rows whose times can be read, in the order of the file. */
function rowsOf({ record, readLog, clock, ledger }: Reading): Row[] {
  const { file, begins, ends, good, times = record.times } = record.shifts
  const readings = { begins: new Growing(), ends: new Growing(), rows: new Growing() }
  const counts = new NumberColumn(null)
  const reader = new TimesOfFile(file, times, clock, ledger)
  const table = new Table(
    { file, columns: { begins, ends, good }, mostRows: mostShifts },
    ledger,
    (of, row) => {
      readings.begins.push(reader.read(of.cell('begins'), row))
      readings.ends.push(reader.read(of.cell('ends'), row))
      readings.rows.push(row)
      if (good !== undefined) counts.take(of.cell('good'))
      return true
    },
  )
  table.read(readLog)
  reader.finish(table.rows)
  const numbers =
    good === undefined
      ? null
      : counts.values({ file, column: good, said: record.decimal }, table.delimiter, ledger)
  let before = -Infinity
  return earliestFirst(readings.begins.values).flatMap((index) => {
    const row = readings.rows.values[index]!
    const from = reader.utc(readings.begins.values[index]!, row, before)
    const to = reader.utc(readings.ends.values[index]!, row, from)
    if (Number.isNaN(from) || Number.isNaN(to)) return []
    before = from
    const count = numbers?.[index] ?? Number.NaN
    if (good !== undefined && !(count >= 0)) ledger.tell('no-number', { file, row })
    return [{ begins: from, ends: to, good: count >= 0 ? count : null, row }]
  })
}

/** Shifts in order: doubles and what is none left out, overlaps cut. */
function placed(rows: readonly Row[], file: string, ledger: Ledger): Row[] {
  const kept: Row[] = []
  for (const shift of [...rows].sort((a, b) => a.begins - b.begins || a.row - b.row)) {
    const { row } = shift
    const last = kept.at(-1)
    const fault = faultOf(shift, last)
    if (fault) {
      ledger.tell(fault, { file, row, seconds: Math.max(0, lengthOf(shift)) })
      continue
    }
    const begins = Math.max(shift.begins, last?.ends ?? shift.begins)
    if (begins > shift.begins) ledger.tell('shifts-overlap', { file, row, seconds: begins - shift.begins })
    if (lengthOf(shift) > secondsOfDay) ledger.tell('long-shift', { file, row })
    if (shift.good === null) ledger.tell('good-missing', { file, row })
    kept.push({ ...shift, begins })
  }
  return kept
}

/** Why a shift cannot stand beside the one before; null where it can. */
function faultOf(
  shift: Span,
  last: Span | undefined,
): 'shift-ends-before' | 'doubled-shift' | 'shift-within' | null {
  if (shift.ends <= shift.begins) return 'shift-ends-before'
  if (!last || shift.ends > last.ends) return null
  return last.begins === shift.begins && last.ends === shift.ends ? 'doubled-shift' : 'shift-within'
}

/** Breaks at local times of the day that fall into `shift`. */
function breaksIn(shift: Span, fixed: readonly { at: string; for: number }[], clock: LocalClock): Span[] {
  const firstDay = Math.floor(clock.local(shift.begins) / secondsOfDay) - 1
  const lastDay = Math.floor(clock.local(shift.ends) / secondsOfDay)
  const found: Span[] = []
  for (let day = firstDay; day <= lastDay; day++)
    for (const { at, for: length } of fixed) {
      const [hours, minutes] = at.split(':').map(Number) as [number, number]
      const [begins] = clock.meant(day * secondsOfDay + hours * 3600 + minutes * 60)
      // a break that the change of the clock leaves out is none
      const inside = begins === undefined ? null : within({ begins, ends: begins + length }, shift)
      if (inside) found.push(inside)
    }
  return union(found)
}
