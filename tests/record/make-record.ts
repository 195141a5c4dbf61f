/**
 * Writes down what happened on line 4 as a plant would: the CSV files of `scenarios/lindmoor-record`, the same bytes each time. What is
 * wrong with them is wrong on purpose; each such place says so.
 */
import { stringify } from 'csv-stringify/sync'
import { DateTime, IANAZone } from 'luxon'
import { Stream } from '../../src/engine/stream.js'
import { type TrueShift, type TrueStop, trueShifts, truth, type WhyStood } from './plant.js'

const zone = 'Europe/Berlin'
const clocks = IANAZone.create(zone)

/** Shorter stops are not written down, s. */
export const seenFrom = 30

/** When each shift begins, s since 1970 in UTC. */
const begins: readonly number[] = [...earlyShifts(), seconds('2026-10-24T22:00')].sort((a, b) => a - b)

function seconds(local: string): number {
  return DateTime.fromISO(local, { zone }).toSeconds()
}

/** Early shifts from Monday to Friday, August to October; the works holiday leaves a gap. */
function earlyShifts(): number[] {
  const holiday = ['2026-08-31', '2026-09-01']
  const found: number[] = []
  for (let day = DateTime.fromISO('2026-08-03T06:00', { zone }); day.month < 11; day = day.plus({ days: 1 }))
    if (day.weekday <= 5 && !holiday.includes(day.toISODate()!)) found.push(day.toSeconds())
  return found
}

/** A shift at its place in the calendar. */
export interface DatedShift extends TrueShift {
  /** s since 1970 in UTC. */
  begins: number
}

/** The seed of the record in `scenarios`. */
const ownSeed = truth.study.seed

/** The shifts of a record in their order; of another plant than line 4 where `of` is given. */
export const datedShifts = (seed = ownSeed, of = truth): DatedShift[] =>
  trueShifts(begins.length, seed, of).map((shift, index) => ({ ...shift, begins: begins[index]! }))

/** A row of the stops, times in s since 1970 in UTC. */
interface Row {
  begins: number
  ends: number
  piece: string
  reason: string
}

/** The sealer was given another name on this day. */
const renamedAt = seconds('2026-09-14T00:00')

const pieces: Record<string, string> = { outfeed: 'Ablaufband', palletiser: 'Palettierer' }

const reasons: Partial<Record<WhyStood, string>> = {
  jams: 'Stau Einlauf',
  'roll-changes': 'Band leer',
  'tape-breaks': 'Band gerissen',
  breakdowns: 'Störung Antrieb',
  'planned-stops': 'Palettenwechsel',
}

const pieceWords = (piece: string, at: number): string =>
  pieces[piece] ?? (at < renamedAt ? 'Verschließer' : 'Verschließer L4')

/** Rows of the stops as they should be, in the order in which they began. `chance`: numbers for what people write as they like. */
function stopRows(shifts: readonly DatedShift[], chance: Stream): Row[] {
  // why the outfeed stood nobody knew, or nobody wrote
  const reasonOf = ({ piece, why }: TrueStop) =>
    piece === 'outfeed' ? (chance.next() < 0.6 ? 'Sonstiges' : '') : reasons[why]!
  return shifts.flatMap(({ begins, stops }) => {
    const written = stops
      .filter((stop) => stop.ends - stop.begins >= seenFrom)
      .map((stop) => ({
        begins: begins + stop.begins,
        ends: begins + stop.ends,
        piece: pieceWords(stop.piece, begins),
        reason: reasonOf(stop),
      }))
    const breaks = truth.shift.breaks.map((pause) => ({
      begins: begins + pause.at,
      ends: begins + pause.at + pause.for,
      piece: 'Linie',
      reason: 'Pause',
    }))
    return [...written, ...breaks].sort((a, b) => a.begins - b.begins)
  })
}

/** Local time of an instant to the second, and to the minute in which it lies: `25.10.2026 02:30:07`. */
function toSecond(at: number): string {
  const clock = new Date((Math.floor(at) + offsetAt(at)) * 1000).toISOString()
  return `${clock.slice(8, 10)}.${clock.slice(5, 7)}.${clock.slice(0, 4)} ${clock.slice(11, 19)}`
}
const toMinute = (at: number): string => toSecond(at).slice(0, -3)

/** How far the clocks of the plant are ahead of UTC, s. */
const offsetAt = (at: number): number => clocks.offset(at * 1000) * 60

/** As a spreadsheet writes it: semicolons, Latin-1, and the line ends of its makers. */
const sheet = (rows: readonly (readonly string[])[]): Buffer =>
  Buffer.from(stringify([...rows], { delimiter: ';', record_delimiter: '\r\n' }), 'latin1')

function shiftSheet(shifts: readonly DatedShift[]): Buffer {
  const rows = shifts.map(({ begins, good, tape }) => [
    toMinute(begins),
    toMinute(begins + truth.shift.length),
    String(good),
    tape.toFixed(1).replace('.', ','),
  ])
  return sheet([['Beginn', 'Ende', 'Gutmenge', 'Bandverbrauch m'], ...rows])
}

/** With two slips of the pen: a row that stands there twice, and one that ends an hour too early. */
function stopSheet(shifts: readonly DatedShift[], seed: string): Buffer {
  const chance = new Stream('record', 'what people write')
  chance.begin(seed, 1)
  const rows = stopRows(shifts, chance)
  const place = () => Math.floor(chance.next() * rows.length)
  const [twice, early] = [place(), place()]
  const cells = rows.flatMap(({ begins, ends, piece, reason }, index) => {
    const written = [toMinute(begins), toMinute(index === early ? ends - 3600 : ends), piece, reason]
    return index === twice ? [written, written] : [written]
  })
  return sheet([['Von', 'Bis', 'Anlage', 'Grund'], ...cells])
}

const articles: Record<string, string> = { bottles: 'FL', refills: 'NF' }

/** From then on the scanner was there, until the clock was put back and the night was over. */
const scannedFrom = seconds('2026-09-25T00:00')
const scannedTo = seconds('2026-10-25T12:00')

export const isScanned = ({ begins }: DatedShift): boolean => begins >= scannedFrom && begins < scannedTo

const caseSheet = (shifts: readonly DatedShift[]): Buffer =>
  sheet([
    ['Zeit', 'Artikel'],
    ...shifts
      .filter(isScanned)
      .flatMap(({ begins, cases }) => cases.map(({ at, kind }) => [toSecond(begins + at), articles[kind]!])),
  ])

/** The files of a record by their names. */
export const makeRecord = (shifts: readonly DatedShift[], seed = ownSeed): ReadonlyMap<string, Buffer> =>
  new Map([
    ['shifts.csv', shiftSheet(shifts)],
    ['stops.csv', stopSheet(shifts, seed)],
    ['cases.csv', caseSheet(shifts)],
  ])
