/** What reading the files of a record rests on. */
import type { ReadLog } from './dialect.js'
import type { RecordFile } from './format.js'
import type { Ledger } from './ledger.js'
import type { LocalClock } from './zone.js'

export interface Reading {
  record: RecordFile
  readLog: ReadLog
  clock: LocalClock
  ledger: Ledger
}
