/** Records for tests: a record file and its logs as texts, read as the program reads files, without any. */
import { mkdtempSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { readLogOf } from '../../src/cli/rows.js'
import type { ReadLog } from '../../src/record/dialect.js'
import { readRecord } from '../../src/record/read.js'
import type { CleanRecord } from '../../src/record/record.js'

/** One after the other lies here: to make and remove a folder for each took most of the time. */
const file = path.join(mkdtempSync(path.join(os.tmpdir(), 'tapeshift-record-')), 'log.csv')

/** Reads logs from `texts`, through files as the command line does. */
export function logsOf(texts: Readonly<Record<string, string | Uint8Array>>): ReadLog {
  return (name, taker) => {
    const text = texts[name]
    if (text === undefined) throw new Error(`\`${name}\` cannot be read: there is no such file or folder`)
    writeFileSync(file, text)
    readLogOf(file, name, taker, () => {})
  }
}

/** A record file: what every test needs, and `more` keys as lines of it. */
export interface Written {
  shifts: string | Uint8Array
  stops: string | Uint8Array
  cases?: string | Uint8Array
  /** Lines of the record file in place of the usual ones, by key. */
  keys?: Readonly<Record<string, string>>
}

export const usualKeys = {
  title: 'Line 2',
  zone: 'Europe/Berlin',
  times: 'dd.MM.yyyy HH:mm',
  'seen-from': '0 s',
  shifts: '{file: shifts.csv, begins: Beginn, ends: Ende, good: Gut}',
  stops: '{file: stops.csv, begins: Von, ends: Bis, piece: Anlage, reason: Grund}',
  means:
    '{Stau: line.sealer.jams, Motor: line.sealer.breakdowns, Pause: break, leer: starved, voll: blocked, Treffen: other}',
}

export const recordText = (keys: Readonly<Record<string, string>> = {}): string =>
  `record:\n${Object.entries({ ...usualKeys, ...keys })
    .filter(([, value]) => value !== '')
    .map(([key, value]) => `  ${key}: ${value}\n`)
    .join('')}`

/** Reads and cleans it. */
export function recordOf({ shifts, stops, cases, keys }: Written): CleanRecord {
  const logs = {
    'shifts.csv': shifts,
    'stops.csv': stops,
    ...(cases === undefined ? {} : { 'cases.csv': cases }),
  }
  return readRecord(recordText(keys), { name: 'plant.yaml', readLog: logsOf(logs) })
}

/** What the account says, without what every file says of itself and the words that a short log never has. */
export const told = ({ account }: CleanRecord) =>
  account
    .filter(({ code }) => !['written', 'grain-found', 'never-occurs'].includes(code))
    .map(({ code, did, rows, count, seconds }) => [code, did, rows, count, seconds] as const)

/** UTC of a time that a clock in Berlin shows in winter, s. */
export const winter = (text: string): number => Date.parse(`${text}+01:00`) / 1000
