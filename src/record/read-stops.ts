/** The rows of a log of stops: their times, lengths, pieces and reasons, before any of it is cleaned. */
import { Growing, Names } from './growing.js'
import type { Ledger } from './ledger.js'
import { grainOfLengths, NumberColumn } from './numbers.js'
import type { Reading } from './reading.js'
import type { CleanRecord, Span } from './record.js'
import { Table } from './table.js'
import { earliestFirst, TimesOfFile } from './times-of-file.js'

const mostStops = 1_000_000
/** More different texts are no codes of reasons or names of pieces. */
const mostNames = 10_000
const longestName = 200

/** A row of the log. */
export interface StopRow extends Span {
  piece: string
  reason: string
  row: number
}

/** What a log of stops holds. */
export interface StopRows {
  rows: StopRow[]
  lengths: CleanRecord['lengths']
  /** Grain of the clock that stops begin by where their lengths were timed, s; else 0. */
  slack: number
  /** Grain of the clock, or of the lengths where these were timed, s; 0: finer than a second. */
  grain: number
  /** A time that is finer than this grain. */
  isFinerThan: (grain: number) => boolean
}

/** Texts of a column, each kept once; what is odd about them is told. */
class NameColumn {
  readonly names = new Names()
  private readonly places = new Growing()

  constructor(
    private readonly file: string,
    private readonly column: string,
    private readonly ledger: Ledger,
  ) {}

  take(text: string, row: number): void {
    const { file, ledger, names } = this
    let name = text.normalize('NFC').replace(/\s+/g, ' ')
    if (name.length > longestName) {
      name = `${name.slice(0, longestName - 1)}…`
      ledger.tell('long-name', { file, row })
    }
    this.places.push(names.placeOf(name))
  }

  /** More different names than it can mean. */
  get isUnnamed(): boolean {
    return this.names.list.length > mostNames
  }

  tellUnnamed(): void {
    const { file, column } = this
    this.ledger.tell('too-many-names', { file, group: column, what: [column, String(mostNames)] })
  }

  at(index: number): string {
    return this.names.list[this.places.values[index]!]!
  }
}

/** The stops of the log whose times can be read, in the order of the file. */
export function readStops({ record, readLog, clock, ledger }: Reading): StopRows {
  const { file, begins, ends, lasts, unit, piece, reason, times = record.times } = record.stops
  const from = new Growing()
  const to = new Growing()
  const places = new Growing()
  const lengths = new NumberColumn(unit ?? 's')
  const pieces = new NameColumn(file, piece ?? '', ledger)
  const reasons = new NameColumn(file, reason, ledger)
  const reader = new TimesOfFile(file, times, clock, ledger)
  const table = new Table(
    { file, columns: { begins, ends, lasts, piece, reason }, mostRows: mostStops, mayBeEmpty: true },
    ledger,
    (of, row) => {
      if (pieces.isUnnamed || reasons.isUnnamed) return false
      from.push(reader.read(of.cell('begins'), row))
      if (lasts === undefined) to.push(reader.read(of.cell('ends'), row))
      else lengths.take(of.cell('lasts'))
      pieces.take(of.cell('piece'), row)
      reasons.take(of.cell('reason'), row)
      places.push(row)
      return true
    },
  )
  table.read(readLog)
  reader.finish(table.rows)
  for (const column of [pieces, reasons]) if (column.isUnnamed) column.tellUnnamed()
  const timed =
    lasts === undefined
      ? null
      : lengths.values({ file, column: lasts, said: record.decimal }, table.delimiter, ledger)
  let before = -Infinity
  const rows = earliestFirst(from.values).flatMap((index): StopRow[] => {
    const row = places.values[index]!
    const start = reader.utc(from.values[index]!, row, before)
    if (Number.isNaN(start)) return []
    before = start
    const end = timed ? start + timed[index]! : reader.utc(to.values[index]!, row, start)
    if (timed && Number.isNaN(end)) ledger.tell('no-length', { file, row })
    if (Number.isNaN(end)) return []
    return [{ begins: start, ends: end, piece: pieces.at(index), reason: reasons.at(index), row }]
  })
  return {
    rows,
    lengths: timed ? 'timed' : 'clocked',
    slack: timed ? reader.grain : 0,
    grain: timed ? grainOfLengths(timed, unit ?? 's') : reader.grain,
    isFinerThan: (grain) => (timed ? grainOfLengths(timed, unit ?? 's') < grain : reader.isFinerThan(grain)),
  }
}
