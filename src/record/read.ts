/** From a record file and its logs to a record that is clean, with an account of everything that was found and done. */
import { DateTime } from 'luxon'
import { cleanStops } from './clean-stops.js'
import type { ReadLog } from './dialect.js'
import { Ledger } from './ledger.js'
import { readCases } from './read-cases.js'
import { readRecordFile } from './read-format.js'
import { readShifts } from './read-shifts.js'
import { readStops, type StopRows } from './read-stops.js'
import type { Reading } from './reading.js'
import { Reasons } from './reasons.js'
import type { CleanRecord, LoggedShift, LoggedStop } from './record.js'
import { LocalClock } from './zone.js'

/** What a record is read with. */
export interface RecordAsked {
  /** How messages call the record file. */
  name?: string
  /** Reads a CSV file beside it. */
  readLog: ReadLog
}

/**
 * Reads the record file that `text` is and the logs that it names, and cleans them. Throws `ScenarioError` with all findings where the file
 * is no record. What is wrong with the logs stands in the account; see `isUsable`.
 */
export function readRecord(text: string, { name, readLog }: RecordAsked): CleanRecord {
  const record = readRecordFile(text, name)
  const ledger = new Ledger()
  const clock = new LocalClock(record.zone ?? null)
  const reading: Reading = { record, readLog, clock, ledger }
  const file = name ?? 'record'
  if (record.zone === undefined) ledger.tell('no-zone', { file })
  if (record['seen-from'] === undefined) ledger.tell('all-seen', { file })
  const logged = readShifts(reading)
  const read = readStops(reading)
  const roundedTo = grainOf(read, reading)
  const seenFrom = record['seen-from'] ?? 0
  const reasons = new Reasons(record)
  const cleaning = { file: record.stops.file, grain: roundedTo, slack: read.slack, seenFrom, reasons, ledger }
  // what follows from a file that cannot be used would be told as if it were of its own
  const isSound = !ledger.isRefused
  const { shifts, stops, rests } = isSound
    ? cleanStops(read.rows, logged, cleaning)
    : { shifts: logged, stops: [], rests: [] }
  const cases = readCases(reading, shifts)
  if (isSound) tellGaps(shifts, stops, { record, ledger })
  return {
    title: record.title,
    zone: record.zone ?? null,
    roundedTo,
    lengths: read.lengths,
    seenFrom,
    shifts,
    meanings: reasons.meanings,
    stops,
    rests,
    cases,
    account: ledger.account(),
  }
}

/** Whether nothing in the account makes the record unusable. */
export const isUsable = ({ account }: Pick<CleanRecord, 'account'>): boolean =>
  account.every(({ did }) => did !== 'refused')

/** Grain of the stops: as the record says, or as it was found, which is told. */
function grainOf({ grain, lengths, rows, isFinerThan }: StopRows, { record, ledger }: Reading): number {
  const { file } = record.stops
  const said = record['rounded-to']
  if (said === undefined) {
    if (rows.length > 0) ledger.tell('grain-found', { file, what: grainWords(grain, lengths) })
    return grain
  }
  if (isFinerThan(said)) ledger.tell('finer-than-said', { file, what: `${said} s` })
  return said
}

function grainWords(grain: number, lengths: StopRows['lengths']): string {
  if (grain === 0) return 'the times of stops are used as exact: they are finer than a second'
  const step = grain < 60 ? `${grain} s` : `${grain / 60} min`
  return lengths === 'timed'
    ? `the lengths of stops are rounded to ${step}: each is known to half of this step`
    : `the clock of the stops has steps of ${step}: a length is known to within one step, longer or shorter`
}

/** A day without a stop is told where days have so many on average: by chance alone it would be one in 150. */
const manyStops = 5

const utc = { zone: 'utc' } as const
const serial = (day: string): number => DateTime.fromISO(day, utc).toMillis() / 86_400_000
const dayOf = (number: number): string => DateTime.fromMillis(number * 86_400_000, utc).toISODate()!

/** Tells of days between the first and the last without a shift, and of those on which nobody seems to have logged. */
function tellGaps(
  shifts: readonly LoggedShift[],
  stops: readonly LoggedStop[],
  { record, ledger }: Pick<Reading, 'record' | 'ledger'>,
): void {
  const days = [...new Set(shifts.map(({ day }) => day))]
  for (const [index, day] of days.entries()) {
    const before = index === 0 ? serial(day) - 1 : serial(days[index - 1]!)
    const count = serial(day) - before - 1
    const [first, last] = [dayOf(before + 1), dayOf(serial(day) - 1)]
    if (count > 0)
      ledger.tell('days-between', {
        file: record.shifts.file,
        count,
        what: count === 1 ? first : `${first} to ${last}`,
      })
  }
  const logged = new Set(stops.map(({ shift }) => shifts[shift]!.day))
  if (stops.length < manyStops * days.length) return
  for (const day of days)
    if (!logged.has(day)) ledger.tell('days-without-stops', { file: record.stops.file, what: day })
}
