/** One pass over one file of a record: its columns found by name, its rows handed on, and all that is wrong with it told. */
import { nearest } from '../scenario/nearest.js'
import { shown } from '../scenario/printable.js'
import type { Delimiter, Dialect, LogTaker, ReadLog } from './dialect.js'
import type { Ledger } from './ledger.js'

const delimiterNames: Record<Delimiter, string> = {
  ',': 'cells between commas',
  ';': 'cells between semicolons',
  '\t': 'cells between tabs',
}
const encodingNames: Record<Dialect['encoding'], string> = {
  'utf-8': 'UTF-8',
  'windows-1252': 'Windows-1252 (Latin-1)',
  'utf-16le': 'UTF-16',
  'utf-16be': 'UTF-16',
}

/** What may be wrong with rows, beside their cells. */
export interface TableAsked<K extends string> {
  file: string
  /** Names of the columns; undefined: not asked for. */
  columns: Readonly<Record<K, string | undefined>>
  /** More rows are refused. */
  mostRows: number
  /** A file without rows means something. */
  mayBeEmpty?: boolean
}

export class Table<K extends string> implements LogTaker {
  /** Rows so far, those included that were left out. */
  rows = 0
  /** Cells between semicolons speak of a country with decimal commas. */
  delimiter: Delimiter = ','
  private cells: readonly string[] = []
  private readonly places: Record<K, number>
  private readonly keys: readonly K[]
  private names: readonly string[] = []
  private last = -1
  private isUsable = true

  constructor(
    private readonly asked: TableAsked<K>,
    private readonly ledger: Ledger,
    /** False: no more rows are wanted. */
    private readonly take: (table: Table<K>, row: number) => boolean,
  ) {
    this.keys = (Object.keys(asked.columns) as K[]).filter((key) => asked.columns[key] !== undefined)
    this.places = Object.fromEntries(this.keys.map((key) => [key, -1])) as Record<K, number>
  }

  /** The cell of the row in hand; empty where its column was not asked for. */
  cell(key: K): string {
    return this.cells[this.places[key]] ?? ''
  }

  /** Reads the file; what is wrong is told. */
  read(readLog: ReadLog): void {
    const { file, mayBeEmpty = false } = this.asked
    try {
      readLog(file, this)
    } catch (error) {
      this.ledger.tell('unreadable', {
        file,
        what: error instanceof Error ? error.message : 'it cannot be read',
      })
      return
    }
    if (this.names.length === 0) this.ledger.tell('empty', { file })
    else if (this.rows === 0 && this.isUsable) this.ledger.tell(mayBeEmpty ? 'no-stops' : 'no-rows', { file })
  }

  header(names: readonly string[]): void {
    this.names = names
    const { file, columns } = this.asked
    const wanted = this.keys.map((key) => columns[key]!)
    const doubled = names.filter((name, place) => name !== '' && names.indexOf(name) !== place)
    for (const what of new Set(doubled))
      this.ledger.tell(wanted.includes(what) ? 'doubled-column' : 'doubled-names', { file, row: 1, what })
    for (const key of this.keys) {
      const name = columns[key]!.trim()
      this.places[key] = names.indexOf(name)
      if (this.places[key] >= 0) continue
      const found = { file, row: 1, group: name }
      this.ledger.tell('no-column', { ...found, what: name })
      this.ledger.tell('no-column', {
        ...found,
        what: shown(nearest(name, names.slice(0, 50)), 200),
        count: 0,
      })
    }
    this.last = Math.max(-1, ...Object.values<number>(this.places))
    this.isUsable =
      this.keys.every((key) => this.places[key] >= 0) && !doubled.some((each) => wanted.includes(each))
  }

  row(cells: readonly string[], row: number): boolean {
    if (!this.isUsable) return false
    const { file, mostRows } = this.asked
    this.rows++
    if (this.rows > mostRows) {
      this.ledger.tell('too-many-rows', { file, what: String(mostRows) })
      this.isUsable = false
      return false
    }
    if (cells.length <= this.last) this.ledger.tell('short-row', { file, row })
    // empty cells at the end stand for nothing
    else if (cells.length > this.names.length && cells.slice(this.names.length).some((cell) => cell !== ''))
      this.ledger.tell('long-row', { file, row })
    else {
      this.cells = cells
      return this.take(this, row)
    }
    return true
  }

  written({ delimiter, encoding }: Dialect): void {
    this.delimiter = delimiter
    const { file } = this.asked
    this.ledger.tell('written', { file, what: [encodingNames[encoding], delimiterNames[delimiter]] })
  }
}
