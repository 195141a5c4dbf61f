/** The cases of a record as a scanner or counter saw them: millions of rows in typed arrays, in order, each in its shift. */
import type { RecordFile } from './format.js'
import { Growing, Names } from './growing.js'
import type { Ledger } from './ledger.js'
import type { Reading } from './reading.js'
import type { LoggedCases, LoggedShift } from './record.js'
import { Table } from './table.js'
import { earliestFirst, TimesOfFile } from './times-of-file.js'

/** More rows than this say no more of how cases arrive. */
export const mostCases = 5_000_000
/** More kinds than this are numbers of single cases. */
const mostKinds = 1000

/** Cases as they stand in the file. */
interface CaseRows {
  /** UTC, s; NaN where there is no such time. */
  times: Float64Array
  kinds: Float64Array
  /** Rows of the file. */
  rows: Float64Array
  names: readonly string[]
  grain: number
}

/** The cases in the shifts; null where the record has none that can be used, which is told. */
export function readCases(reading: Reading, shifts: readonly LoggedShift[]): LoggedCases | null {
  const asked = reading.record.cases
  if (!asked) return null
  const read = rowsOf(reading, asked)
  const { ledger } = reading
  if (ledger.isRefused) return null
  const hasKinds = asked.kind !== undefined
  const order = inOrder(read, asked.file, ledger)
  const kept = keptOf(read, order, shifts, { file: asked.file, ledger })
  return {
    times: Float64Array.from(kept.places, (place) => read.times[place]!),
    shifts: Uint16Array.from(kept.shifts),
    kinds: hasKinds ? Uint16Array.from(kept.places, (place) => read.kinds[place]!) : null,
    names: hasKinds ? read.names.map((name) => asked.kinds?.[name] ?? name) : [],
    roundedTo: read.grain,
    source: asked.source ?? null,
  }
}

function rowsOf(
  { record, readLog, clock, ledger }: Reading,
  asked: NonNullable<RecordFile['cases']>,
): CaseRows {
  const { file, at, kind, times = record.times } = asked
  const readings = new Growing()
  const kinds = new Growing()
  const rows = new Growing()
  const names = new Names()
  const reader = new TimesOfFile(file, times, clock, ledger)
  const table = new Table({ file, columns: { at, kind }, mostRows: mostCases }, ledger, (of, row) => {
    const reading = reader.read(of.cell('at'), row)
    if (Number.isNaN(reading)) return true
    readings.push(reading)
    rows.push(row)
    if (kind !== undefined) kinds.push(names.placeOf(of.cell('kind').slice(0, 200).normalize('NFC')))
    return names.list.length <= mostKinds
  })
  table.read(readLog)
  reader.finish(table.rows)
  if (names.list.length > mostKinds)
    ledger.tell('too-many-names', { file, what: [kind ?? '', String(mostKinds)] })
  const order = earliestFirst(readings.values)
  const utc = new Float64Array(readings.length)
  let before = -Infinity
  for (const place of order) {
    utc[place] = reader.utc(readings.values[place]!, rows.values[place]!, before)
    before = utc[place]
  }
  return { times: utc, kinds: kinds.values, rows: rows.values, names: names.list, grain: reader.grain }
}

/** Places of the cases in the order of time; those that went back are told. */
function inOrder({ times, rows }: CaseRows, file: string, ledger: Ledger): number[] {
  const order = earliestFirst(times).filter((place) => !Number.isNaN(times[place]!))
  let latest = -Infinity
  let back = 0
  for (const place of order) {
    const time = times[place]!
    if (time < latest) {
      back++
      ledger.tell('cases-go-back', { file, row: rows[place]! })
    } else latest = time
  }
  return back === 0 ? order : order.sort((a, b) => times[a]! - times[b]! || a - b)
}

/** Cases within shifts and without doubles, by their places, and the shift of each. */
function keptOf(
  { times, kinds, rows, grain }: CaseRows,
  order: readonly number[],
  shifts: readonly LoggedShift[],
  { file, ledger }: { file: string; ledger: Ledger },
): { places: number[]; shifts: number[] } {
  const kept = { places: [] as number[], shifts: [] as number[] }
  // a clock of whole seconds shows two cases alike, a finer one does not
  const again = grain === 0 ? 'doubled-cases' : 'cases-at-once'
  let shift = 0
  let last = -1
  for (const place of order) {
    const time = times[place]!
    const isAgain = last >= 0 && times[last] === time && kinds[last] === kinds[place]
    last = place
    if (isAgain) ledger.tell(again, { file, row: rows[place]! })
    if (isAgain && grain === 0) continue
    while (shift < shifts.length && shifts[shift]!.ends <= time) shift++
    if (time >= (shifts[shift]?.begins ?? Infinity)) {
      kept.places.push(place)
      kept.shifts.push(shift)
    } else ledger.tell('cases-outside', { file, row: rows[place]! })
  }
  return kept
}
