/** Reads a CSV file of any length row by row: in parts, never as one text. */
import { closeSync, openSync, readSync } from 'node:fs'
import { type Options, parse } from 'csv-parse'
import { Decoding, type Delimiter, delimiterOf, type LogTaker } from '../record/dialect.js'
import type { RowTaker } from '../scenario/recorded.js'

const partBytes = 2 ** 18
/** The parser keeps its last bytes back until it knows what follows. */
const tail = '\n'.repeat(64)
/** A row longer than this is a quote that is never closed. */
const longestRow = 1_000_000

/** Cells of a row that stands in no file: it ends the reading. */
const lastRow = '\u0000end of file'

/** Is given every part of a file that is read, as it is. */
type Seen = (part: Uint8Array) => void

/**
 * Hands header and rows of the CSV file at `file` to `taker`, until that has enough; `name` is how messages call it.
 * Throws with a plain message, or as the file system does.
 */
export function readRowsOf(file: string, name: string, taker: RowTaker, seen: Seen): void {
  let columns = 0
  const take = (cells: readonly string[]): boolean => {
    if (columns > 0) return cells.length !== columns || taker.row(cells)
    columns = cells.length
    taker.header(cells)
    return true
  }
  const begin = (delimiter: Delimiter) =>
    new Rows(name, { delimiter, skip_empty_lines: true, bom: true }, take)
  let rows: Rows | undefined
  for (const part of partsOf(file)) {
    seen(part)
    rows ??= begin(delimiterOf(new TextDecoder().decode(part)))
    if (!rows.feed(part)) return
  }
  ;(rows ?? begin(',')).end()
}

/** The same of a log as a plant writes it: any usual delimiter and encoding, rows longer or shorter than the header, stray quotes. */
export function readLogOf(file: string, name: string, taker: LogTaker, seen: Seen): void {
  const decoding = new Decoding()
  let rows: Rows | undefined
  let wantsMore = true
  let count = 0
  let hasHeader = false
  const take = (cells: readonly string[]): boolean => {
    count++
    if (cells.length === 1 && cells[0] === '') return true
    if (hasHeader) return taker.row(cells, count)
    // the header is row 1, whatever empty lines come before it
    count = 1
    hasHeader = true
    taker.header(cells)
    return true
  }
  const feed = (text: string): void => {
    if (text === '') return
    rows ??= new Rows(
      name,
      { delimiter: delimiterOf(text), relax_quotes: true, relax_column_count: true },
      take,
    )
    wantsMore = rows.feed(text)
  }
  for (const part of partsOf(file)) {
    seen(part)
    feed(decodedBy(name, () => decoding.decode(part)))
    if (!wantsMore) break
  }
  if (wantsMore) feed(decodedBy(name, () => decoding.end()))
  if (wantsMore) rows?.end()
  taker.written({ delimiter: rows?.delimiter ?? ',', encoding: decoding.encoding })
}

function decodedBy(name: string, decode: () => string): string {
  try {
    return decode()
  } catch (error) {
    throw new Error(`\`${name}\` cannot be read: ${(error as Error).message}`)
  }
}

function* partsOf(file: string): Generator<Uint8Array> {
  const handle = openSync(file, 'r')
  try {
    for (;;) {
      // a part of its own each time: the parser may still hold the one before
      const part = Buffer.allocUnsafe(partBytes)
      const bytes = readSync(handle, part, 0, partBytes, null)
      if (bytes === 0) return
      yield part.subarray(0, bytes)
    }
  } finally {
    closeSync(handle)
  }
}

/** Text to rows, as far as it is known. */
class Rows {
  readonly delimiter: ',' | ';' | '\t'
  private fault: Error | undefined
  private readonly parser: ReturnType<typeof parse>
  private columns = 0
  private isAtEnd = false
  private wantsMore = true

  constructor(
    private readonly name: string,
    { delimiter = ',', ...options }: Options & { delimiter?: ',' | ';' | '\t' },
    private readonly take: (cells: readonly string[]) => boolean,
  ) {
    this.delimiter = delimiter
    // errors come through `on_skip` because it is called at once; an event would come after the work is done
    this.parser = parse({
      ...options,
      delimiter,
      trim: true,
      max_record_size: longestRow,
      record_delimiter: ['\r\n', '\n', '\r'],
      skip_records_with_error: true,
      on_skip: (error) => {
        this.fault ??= error
        return undefined
      },
    })
    this.parser.on('error', (error: Error) => {
      this.fault ??= error
    })
  }

  /** Takes the next part of the file; false: no more is wanted. Throws with a plain message. */
  feed(part: Uint8Array | string): boolean {
    this.parser.write(part)
    for (;;) {
      const row = this.parser.read() as string[] | null
      if (row === null) break
      if (this.columns === 0) this.columns = row.length
      if (row[0] === lastRow) this.isAtEnd = true
      else if (this.wantsMore) this.wantsMore = this.take(row)
    }
    if (this.fault) throw new Error(`\`${this.name}\` is not a CSV file: ${this.fault.message}`)
    return this.wantsMore
  }

  /** There are no more parts. */
  end(): void {
    if (!this.feed(tail) || this.columns === 0) return
    // a row that a quote without an end would swallow
    this.feed(`${Array(this.columns).fill(lastRow).join(this.delimiter)}${tail}`)
    if (!this.isAtEnd)
      throw new Error(`\`${this.name}\` is not a CSV file: a quote is opened and never closed`)
  }
}
