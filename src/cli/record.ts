/** Loads a plant's record for a command: its file, and the logs beside it. */
import { createHash } from 'node:crypto'
import path from 'node:path'
import { readRecord } from '../record/read.js'
import type { FileRead, ReadRecord } from '../record/read-record.js'
import { Fault, isFault } from '../scenario/fault.js'
import { FilesBeside, readText } from './files.js'
import type { Io } from './io.js'

/** Reads and cleans it. Throws `Fault` `file`, or `record` where the record file breaks the rules of its format. */
export async function readRecordFor(name: string, io: Io): Promise<ReadRecord> {
  const text = await readText(name, 'the record file', io)
  const beside = new FilesBeside(name === '-' ? io.cwd : path.dirname(path.resolve(io.cwd, name)), 'record')
  const rows = new Map<string, number>()
  try {
    const record = readRecord(text, {
      name: name === '-' ? 'standard input' : name,
      readLog: (file, taker) => {
        rows.set(file, 0)
        beside.readLog(file, {
          header: (names) => taker.header(names),
          row(cells, row) {
            rows.set(file, rows.get(file)! + 1)
            return taker.row(cells, row)
          },
          written: (dialect) => taker.written(dialect),
        })
      },
    })
    const files = [...beside.logs].map(
      ([file, { sha256 }]): FileRead => ({ file, rows: rows.get(file) ?? 0, sha256 }),
    )
    const whole = createHash('sha256').update(text)
    for (const { file, sha256 } of files) whole.update(JSON.stringify([file, sha256]))
    return { record, name, sha256: whole.digest('hex'), files }
  } catch (error) {
    throw isFault(error, 'scenario') ? new Fault('record', error.message) : error
  }
}
