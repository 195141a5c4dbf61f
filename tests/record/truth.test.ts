/**
 * The record of `scenarios/lindmoor-record` is what `make-record.ts` makes of the truth, and the truth is in it, by simple counting. To write the files
 * anew: `WRITE_RECORD=yes npx vitest run --config .config/vitest.config.ts tests/record/truth.test.ts`.
 */
import { readFileSync, writeFileSync } from 'node:fs'
import { parse } from 'csv-parse/sync'
import { sampleStandardDeviation } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { parse as parseYaml } from 'yaml'
import { jamsOf } from '../../src/scenario/jams.js'
import { meanOf, varianceOf } from '../../src/scenario/law.js'
import { countLimits } from '../../src/statistics/events.js'
import { call } from '../cli/in-process.js'
import { demoFolder } from '../demo.js'
import { datedShifts, isScanned, makeRecord, seenFrom } from './make-record.js'
import { type TrueStop, truth, type WhyStood } from './plant.js'

const folder = `${demoFolder}lindmoor-record/`
const shifts = datedShifts()
const made = makeRecord(shifts)
if (process.env.WRITE_RECORD) for (const [name, bytes] of made) writeFileSync(folder + name, bytes)

type Row = Record<string, string>
const rowsOf = (name: string): Row[] =>
  parse(readFileSync(folder + name).toString('latin1'), { columns: true, delimiter: ';' }) as Row[]
const [shiftRows, stopRows, caseRows] = ['shifts.csv', 'stops.csv', 'cases.csv'].map(rowsOf) as [
  Row[],
  Row[],
  Row[],
]

/** Chance of a figure outside of it that is right, as of four standard errors either way. */
const confidence = 0.99994
const standardErrors = 4

const stopsOf = (piece: string, why: WhyStood): TrueStop[] =>
  shifts.flatMap(({ stops }) => stops.filter((stop) => stop.piece === piece && stop.why === why))
const lengths = (stops: readonly TrueStop[]) =>
  stops.filter(({ isOpen }) => !isOpen).map(({ begins, ends }) => ends - begins)
const total = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0)
const mean = (values: readonly number[]) => total(values) / values.length

function expectCount(events: number, expected: number): void {
  const { low, high } = countLimits(events, confidence)
  expect(low).toBeLessThan(expected)
  expect(high).toBeGreaterThan(expected)
}

/** Times whose law has that mean and variance. */
function expectMean(times: readonly number[], expected: number, variance: number): void {
  expect(times.length).toBeGreaterThanOrEqual(30)
  expect(Math.abs(mean(times) - expected)).toBeLessThan(standardErrors * Math.sqrt(variance / times.length))
}

const { sealer, outfeed, palletiser } = truth.line
if (sealer?.type !== 'sealer' || outfeed?.type !== 'conveyor' || palletiser?.type !== 'station')
  throw new Error('the truth is of another line')

describe('the files', () => {
  it.each([...made.keys()])('%s is made anew to the last byte', (name) => {
    expect(made.get(name)!.equals(readFileSync(folder + name))).toBe(true)
  })

  it('are small, and in Latin-1 as a spreadsheet writes it', () => {
    const bytes = [...made.values()]
    expect(total(bytes.map(({ length }) => length))).toBeLessThan(2.2e6)
    const stops = made.get('stops.csv')!
    expect(() => new TextDecoder('utf-8', { fatal: true }).decode(stops)).toThrow()
    expect(stops.toString('latin1')).toMatch(/^Von;Bis;Anlage;Grund\r\n/)
    expect(made.get('shifts.csv')!.toString('latin1')).toMatch(
      /\r\n03\.08\.2026 06:00;03\.08\.2026 14:00;\d{4};\d{4},\d\r\n/,
    )
  })

  it('hold three months of early shifts, a gap, and one night', () => {
    expect(shiftRows).toHaveLength(64)
    expect(shiftRows.map(({ Beginn }) => Beginn).filter((begins) => !begins!.endsWith('06:00'))).toEqual([
      '24.10.2026 22:00',
    ])
    expect(shiftRows.some(({ Beginn }) => /^(31\.08|01\.09)/.test(Beginn!))).toBe(false)
    // eight hours, of which the clock shows seven
    expect(shiftRows.find(({ Beginn }) => Beginn!.endsWith('22:00'))!.Ende).toBe('25.10.2026 05:00')
    // once the clock was put back it goes with the sun again
    expect(shiftRows.at(-1)).toMatchObject({ Beginn: '30.10.2026 06:00', Ende: '30.10.2026 14:00' })
  })
})

describe('the truth in what happened', () => {
  const cases = total(shifts.map(({ good }) => good))

  it('jams: two in 1000 cases, three of four minor', () => {
    const jams = stopsOf('sealer', 'jams')
    expectCount(jams.length, jamsOf(sealer.jams)[0]!.keys.chance * cases)
    const law = jamsOf(sealer.jams)[0]!.keys.clear
    expect(meanOf(law)).toBeCloseTo(0.75 * 45 + 0.25 * 360, 9)
    expectMean(lengths(jams), meanOf(law), varianceOf(law))
  })

  it('breakdowns: one in 10 h of running, and nearly all the time that nothing stands is running', () => {
    const breakdowns = stopsOf('sealer', 'breakdowns')
    const running = total(shifts.map(({ working }) => working.get('sealer')!))
    expectCount(breakdowns.length, running / meanOf(sealer.breakdowns!.after))
    expectMean(lengths(breakdowns), meanOf(sealer.breakdowns!.repair), varianceOf(sealer.breakdowns!.repair))
    const pauses = total(truth.shift.breaks.map((pause) => pause.for))
    const stood = total(shifts.flatMap(({ stops }) => stops.map(({ begins, ends }) => ends - begins)))
    const seen = shifts.length * (truth.shift.length - pauses) - stood
    expect(running / seen).toBeGreaterThan(0.9)
    expect(running / seen).toBeLessThan(1.1)
  })

  it('roll changes: as many as the tape asks for, and their time', () => {
    const changes = stopsOf('sealer', 'roll-changes')
    const tape = total(shifts.map((shift) => shift.tape))
    // both heads begin each shift with a roll used up by a random part: the count of a shift is the tape over the roll within one a head
    const { roll, 'lost-per-roll': lost } = truth.tape
    const spread = Math.sqrt((shifts.length * 2) / 4)
    expect(Math.abs(changes.length - tape / (roll - lost))).toBeLessThan(standardErrors * spread)
    const { time } = sealer['roll-change']
    expectMean(
      lengths(changes).filter((each) => each < truth.shift.length),
      meanOf(time),
      varianceOf(time),
    )
  })

  it('tape breaks: their chance a strip, and their time', () => {
    const breaks = stopsOf('sealer', 'tape-breaks')
    expectCount(breaks.length, sealer['tape-breaks']!.chance * total(shifts.map(({ strips }) => strips)))
    const { fix } = sealer['tape-breaks']!
    expectMean(lengths(breaks), meanOf(fix), varianceOf(fix))
  })

  it('pallet changes: every 96 cases, and their time where no break falls into them', () => {
    const changes = stopsOf('palletiser', 'planned-stops')
    const { every } = palletiser
    expect(changes.length).toBe(
      total(shifts.map(({ stops }) => stops.filter(({ why }) => why === 'planned-stops').length)),
    )
    // each shift begins with an empty pallet
    expect(
      Math.abs(changes.length - total(shifts.map(({ good }) => Math.floor(good / every!.cases)))),
    ).toBeLessThanOrEqual(shifts.length)
    const whole = changes.filter(
      ({ begins, ends }) => !truth.shift.breaks.some(({ at }) => begins < at && at < ends),
    )
    // a long one is likelier to meet a break: the 90 s or so before each of three in 7 h leave the mean lower by less than 0.1 s
    expectMean(lengths(whole), meanOf(every!.stop), varianceOf(every!.stop))
  })

  it('the outfeed stands too, and the palletiser never breaks down', () => {
    const running = total(shifts.map(({ working }) => working.get('outfeed')!))
    expectCount(stopsOf('outfeed', 'breakdowns').length, running / meanOf(outfeed.breakdowns!.after))
    expect(stopsOf('palletiser', 'breakdowns')).toEqual([])
  })

  it('cases come as their law says, whatever stands, and in the shares of their kinds', () => {
    const law = truth.arrivals.filling!['time-between']!
    const inBreak = (at: number) =>
      truth.shift.breaks.some((pause) => Math.abs(at - pause.at - pause.for) < 60)
    const gaps = shifts.flatMap(({ cases: came }) =>
      came.slice(1).flatMap(({ at }, index) => (inBreak(at) ? [] : [at - came[index]!.at])),
    )
    expectMean(gaps, meanOf(law), varianceOf(law))
    const cv = sampleStandardDeviation(gaps) / mean(gaps)
    // standard error of a cv about cv / sqrt(2 n), and half as much again for the skewness of the law
    expect(Math.abs(cv - 0.45)).toBeLessThan((standardErrors * 1.5 * 0.45) / Math.sqrt(2 * gaps.length))
    const kinds = shifts.flatMap(({ cases: came }) => came.map(({ kind }) => kind))
    const share = kinds.filter((kind) => kind === 'bottles').length / kinds.length
    expect(Math.abs(share - 0.65)).toBeLessThan(standardErrors * Math.sqrt((0.65 * 0.35) / kinds.length))
  })
})

describe('what is written down of it', () => {
  const written = (reason: string) => stopRows.filter(({ Grund }) => Grund === reason)
  const minute = (text: string) => Number(text.slice(11, 13)) * 60 + Number(text.slice(14, 16))
  const minutesOf = ({ Von, Bis }: Row) => minute(Bis!) - minute(Von!)

  it('is every stop from 30 s on, one row of all twice', () => {
    const seen = shifts.flatMap(({ stops }) => stops.filter(({ begins, ends }) => ends - begins >= seenFrom))
    const pauses = shifts.length * truth.shift.breaks.length
    expect(stopRows).toHaveLength(seen.length + pauses + 1)
    const lines = stopRows.map((row) => Object.values(row).join(';'))
    const doubled = lines.filter((line, index) => line === lines[index - 1])
    expect(doubled.length).toBeGreaterThanOrEqual(1)
    expect(written('Pause').length).toBeGreaterThanOrEqual(pauses)
    expect(written('Störung Roboter')).toEqual([])
  })

  it('is cut to the minute at both ends, which leaves the mean as it is', () => {
    const jams = stopsOf('sealer', 'jams').map(({ begins, ends }) => ends - begins)
    const logged = written('Stau Einlauf')
      .map(minutesOf)
      .filter((minutes) => minutes >= 0)
    const seen = jams.filter((each) => each >= seenFrom)
    // each end is off by up to a minute: together by a triangle of variance 1/6; the row that may stand twice, or wrong, weighs less than that
    const tolerance = standardErrors * Math.sqrt(1 / 6 / logged.length) + 20 / logged.length
    expect(Math.abs(mean(logged) - mean(seen) / 60)).toBeLessThan(tolerance)
  })

  it('says little of some stops, of one piece under two names, and of one that it ended before it began', () => {
    const outfeedRows = stopRows.filter(({ Anlage }) => Anlage === 'Ablaufband')
    expect(new Set(outfeedRows.map(({ Grund }) => Grund))).toEqual(new Set(['Sonstiges', '']))
    const names = (pattern: RegExp) => stopRows.filter(({ Anlage }) => pattern.test(Anlage!)).length
    expect(names(/^Verschließer$/)).toBeGreaterThan(100)
    expect(names(/^Verschließer L4$/)).toBeGreaterThan(100)
    const backwards = stopRows.filter((row) => minutesOf(row) < 0 && !/^2[45]\.10/.test(row.Von!))
    expect(backwards).toHaveLength(1)
  })

  it('runs into breaks, into the end of the shift, and through an hour that there was twice', () => {
    const into = (at: number) =>
      stopRows.filter((row) => row.Grund !== 'Pause' && minute(row.Von!) < at && minute(row.Bis!) >= at)
    expect(into(10 * 60).length).toBeGreaterThan(0)
    expect(into(14 * 60).length).toBeGreaterThan(0)
    const inHour = stopRows.filter(({ Von }) => Von!.startsWith('25.10.2026 02:'))
    const goesBack = inHour.findIndex(
      ({ Von }, index) => index > 0 && minute(Von!) < minute(inHour[index - 1]!.Von!),
    )
    expect(goesBack).toBeGreaterThan(0)
  })

  it('is each case of a month to the second', () => {
    const came = shifts.filter(isScanned).flatMap(({ cases }) => cases)
    expect(shifts.filter(isScanned)).toHaveLength(22)
    expect(caseRows).toHaveLength(came.length)
    expect(caseRows.filter(({ Artikel }) => Artikel === 'FL')).toHaveLength(
      came.filter(({ kind }) => kind === 'bottles').length,
    )
    expect(caseRows[0]!.Zeit).toMatch(/^25\.09\.2026 06:00:\d\d$/)
  })
})

describe('the scenario of line 4 before its log was read', () => {
  it('can work', async () => {
    const { code, out } = await call(['check', 'line-4.yaml'], { cwd: folder })
    expect([code, out]).toEqual([0, expect.stringContaining('0 errors')])
  })

  it('is the truth but for what a log can tell', () => {
    const read = (file: string) => parseYaml(readFileSync(file, 'utf8')) as object
    const guessed = read(`${folder}line-4.yaml`)
    expect(differences(guessed, read(new URL('truth.yaml', import.meta.url).pathname))).toEqual([
      'title',
      'cases.bottles.share',
      'cases.refills.share',
      'arrivals.filling.time-between',
      'line.sealer.jams',
      'line.sealer.breakdowns.after',
      'line.sealer.breakdowns.repair',
      'line.sealer.roll-change.time',
      'line.sealer.tape-breaks',
      'line.outfeed.breakdowns',
      'line.palletiser.every.stop',
      'line.palletiser.breakdowns',
      'study',
    ])
  })
})

/** Paths at which two trees differ, a few steps deep. */
function differences(left: unknown, right: unknown, path: string[] = []): string[] {
  if (JSON.stringify(left) === JSON.stringify(right)) return []
  const isTree = (value: unknown): value is Record<string, unknown> =>
    typeof value === 'object' && value !== null
  const ends = ['jams', 'tape-breaks', 'time-between', 'after', 'repair', 'time', 'stop', 'study']
  if (!isTree(left) || !isTree(right) || ends.includes(path.at(-1)!)) return [path.join('.')]
  const keys = [...new Set([...Object.keys(left), ...Object.keys(right)])]
  return keys.flatMap((key) => differences(left[key], right[key], [...path, key]))
}
