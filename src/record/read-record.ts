/** A record as questions take it: read and cleaned, known by its hash, and refused where it cannot be used. */
import { Fault } from '../scenario/fault.js'
import { printable } from '../scenario/printable.js'
import { isUsable } from './read.js'
import type { CleanRecord } from './record.js'

/** A file that was read. */
export interface FileRead {
  file: string
  rows: number
  sha256: string
}

/** A record that was read and cleaned. */
export interface ReadRecord {
  record: CleanRecord
  /** How the line that repeats a question calls its file. */
  name: string
  /** Of the record file and of the logs that it names. */
  sha256: string
  files: readonly FileRead[]
}

/** Throws `Fault` `record` with all that makes it unusable, and the rows that were left out besides. */
export function refuseUnusable({ record }: ReadRecord): void {
  if (isUsable(record)) return
  const told = ['refused', 'left-out'].flatMap((did) => record.account.filter((each) => each.did === did))
  const lines = told.flatMap(({ file, words, rows, count, fix }) => {
    const more = count > rows.length ? ` and ${count - rows.length} more` : ''
    const which = rows.length === 0 ? '' : `, row ${rows.join(', ')}${more}`
    return [`${file}${which}: ${words}`, ...(fix === '' ? [] : [`    fix:   ${fix}`])]
  })
  throw new Fault('record', lines.map(printable).join('\n'))
}
