/** Reads a CSV file of any length row by row: in parts, never as one text. */
import { closeSync, openSync, readSync } from 'node:fs'
import { parse } from 'csv-parse'
import type { RowTaker } from '../scenario/recorded.js'

const partBytes = 2 ** 18
/** The parser keeps its last bytes back until it knows what follows. */
const tail = '\n'.repeat(64)
/** A row longer than this is a quote that is never closed. */
const longestRow = 1_000_000

/** Cells of a row that stands in no file: it ends the reading. */
const lastRow = '\u0000end of file'

/**
 * Hands header and rows of the CSV file at `file` to `taker`, until that has enough; `name` is how messages call it.
 * `seen` is given every part that is read, as it is. Throws with a plain message, or as the file system does.
 */
export function readRowsOf(
  file: string,
  name: string,
  taker: RowTaker,
  seen: (part: Uint8Array) => void,
): void {
  let fault: Error | undefined
  // errors come through `on_skip` because it is called at once; an event would come after the work is done
  const parser = parse({
    skip_empty_lines: true,
    trim: true,
    bom: true,
    max_record_size: longestRow,
    record_delimiter: ['\r\n', '\n', '\r'],
    skip_records_with_error: true,
    on_skip: (error) => {
      fault ??= error
      return undefined
    },
  })
  parser.on('error', (error: Error) => {
    fault ??= error
  })
  let columns = 0
  let latest: readonly string[] = []
  let wantsMore = true
  const feed = (part: Uint8Array | string): void => {
    parser.write(part)
    for (;;) {
      const row = parser.read() as string[] | null
      if (row === null) break
      latest = row
      if (columns === 0) {
        columns = row.length
        taker.header(row)
      } else if (wantsMore && row.length === columns && row[0] !== lastRow) wantsMore = taker.row(row)
    }
    if (fault) throw new Error(`\`${name}\` is no CSV: ${fault.message}`)
  }
  const handle = openSync(file, 'r')
  try {
    while (wantsMore) {
      // a part of its own each time: the parser may still hold the one before
      const part = Buffer.allocUnsafe(partBytes)
      const bytes = readSync(handle, part, 0, partBytes, null)
      if (bytes === 0) break
      seen(part.subarray(0, bytes))
      feed(part.subarray(0, bytes))
    }
    if (!wantsMore) return
    feed(tail)
    // a row that a quote without an end would swallow
    if (columns > 0) feed(`${Array(columns).fill(lastRow).join(',')}${tail}`)
    if (columns > 0 && latest[0] !== lastRow)
      throw new Error(`\`${name}\` is no CSV: a quote is opened and never closed`)
  } finally {
    closeSync(handle)
  }
}
