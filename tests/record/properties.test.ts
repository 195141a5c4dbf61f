/** What holds for any log: no minute is lost or counted twice, every row is a stop or told, spans are spans. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cleanStops } from '../../src/record/clean-stops.js'
import { runningTime } from '../../src/record/exposure.js'
import { loggedInputs } from '../../src/record/inputs.js'
import { Ledger } from '../../src/record/ledger.js'
import { timeSpent } from '../../src/record/minutes.js'
import { Reasons } from '../../src/record/reasons.js'
import type { CleanRecord, LoggedShift, Span } from '../../src/record/record.js'
import { union, without } from '../../src/record/spans.js'

const minute = 60

/** Shifts one after the other, some with a break, with or without a gap between them. */
const someShifts = fc
  .array(
    fc.record({
      gap: fc.nat(120),
      length: fc.integer({ min: 30, max: 480 }),
      rest: fc.nat(30),
      at: fc.nat(400),
    }),
    {
      minLength: 1,
      maxLength: 5,
    },
  )
  .map((all) => {
    let from = 0
    return all.map(({ gap, length, rest, at }, index): LoggedShift => {
      const begins = (from + gap) * minute
      const ends = begins + length * minute
      from = ends / minute
      const start = begins + Math.min(at, length - 1) * minute
      const breaks = rest > 0 ? [{ begins: start, ends: Math.min(ends, start + rest * minute) }] : []
      return {
        begins,
        ends,
        day: '1970-01-01',
        good: null,
        breaks,
        lost: [],
        isHeldOut: false,
        row: index + 2,
      }
    })
  })

const someRows = fc
  .array(
    fc.record({
      begins: fc.integer({ min: -30, max: 2000 }),
      length: fc.integer({ min: -5, max: 200 }),
      piece: fc.constantFrom('a', 'b', 'c', 'a + b', ''),
      reason: fc.constantFrom('jam', 'motor', 'break', 'full', 'who knows'),
    }),
    { maxLength: 60 },
  )
  .map((all) =>
    all.map(({ begins, length, ...words }, index) => ({
      ...words,
      begins: begins * minute,
      ends: (begins + length) * minute,
      row: index + 2,
    })),
  )

const means = { jam: 'line.sealer.jams', motor: 'line.sealer.breakdowns', break: 'break', full: 'blocked' }

const clean = (shifts: readonly LoggedShift[], rows: Parameters<typeof cleanStops>[0], seenFrom = 0) => {
  const ledger = new Ledger()
  const record = cleanStops(rows, shifts, {
    file: 'stops.csv',
    grain: 60,
    slack: 0,
    seenFrom,
    reasons: new Reasons({ means }),
    ledger,
  })
  return { record, account: ledger.account() }
}

describe('cleaning', () => {
  it('keeps every minute: shifts are what ran, breaks, stops by what they mean, and lost time', () => {
    fc.assert(
      fc.property(someShifts, someRows, fc.constantFrom(0, 120, 600), (shifts, rows, seenFrom) => {
        const { record } = clean(shifts, rows, seenFrom)
        const spent = timeSpent(record)
        const stopped = [...spent.stopped.values()].reduce((sum, seconds) => sum + seconds, 0)
        expect(spent.run + spent.breaks + stopped + spent.lost).toBe(spent.shifts)
        expect(runningTime(record, () => true).total).toBe(spent.run)
      }),
      { numRuns: 500, seed: 20261129 },
    )
  })

  it('leaves no row untold: each is a stop, a break, or in the account', () => {
    const gone = [
      'doubled',
      'ends-before',
      'overlap',
      'outside',
      'begins-outside',
      'shorter-than-seen',
      'two-pieces',
      'logged-breaks',
    ]
    fc.assert(
      fc.property(someShifts, someRows, fc.constantFrom(0, 120, 600), (shifts, rows, seenFrom) => {
        const { record, account } = clean(shifts, rows, seenFrom)
        const told = account
          .filter(({ code }) => gone.includes(code))
          .reduce((sum, { count }) => sum + count, 0)
        expect(record.stops.length + told).toBe(rows.length)
      }),
      { numRuns: 500, seed: 20261129 },
    )
  })

  it('leaves stops that lie within their shift, between its breaks, and of which no two of one piece overlap', () => {
    fc.assert(
      fc.property(someShifts, someRows, (shifts, rows) => {
        const { record } = clean(shifts, rows)
        const until = new Map<string, number>()
        for (const { begins, ends, shift, piece, limit, isCutOff } of record.stops) {
          const own = record.shifts[shift]!
          expect(begins >= own.begins && ends <= own.ends).toBe(true)
          expect(own.breaks.every((each) => ends <= each.begins || begins >= each.ends)).toBe(true)
          expect(isCutOff ? ends - begins === limit : ends - begins <= limit).toBe(true)
          expect(begins).toBeGreaterThanOrEqual(until.get(piece) ?? -Infinity)
          until.set(piece, ends)
        }
      }),
      { numRuns: 300, seed: 20261129 },
    )
  })
})

describe('inputs', () => {
  const asRecord = (shifts: LoggedShift[], rows: Parameters<typeof cleanStops>[0]): CleanRecord => ({
    ...clean(
      shifts.map((shift, index) => ({ ...shift, good: index === 1 ? null : 1000, isHeldOut: index === 2 })),
      rows,
    ).record,
    title: '',
    zone: 'Europe/Berlin',
    roundedTo: 60,
    lengths: 'clocked',
    seenFrom: 0,
    meanings: Object.values(means),
    cases: null,
    account: [],
  })

  it('of running time add up to all that ran, and counts to all that occurred in shifts that count', () => {
    fc.assert(
      fc.property(someShifts, someRows, (shifts, rows) => {
        const record = asRecord(shifts, rows)
        const inputs = loggedInputs(record)
        const ran = runningTime(record, ({ isHeldOut }) => !isHeldOut).total
        for (const input of inputs) {
          if (input.what === 'mix' || input.what === 'time-between') continue
          expect(input.occurrences.every(({ shift }) => shift !== 2)).toBe(true)
          if (input.what === 'times') {
            expect(input.sample.counts.reduce((sum, count) => sum + count, 0)).toBe(input.count)
            continue
          }
          expect(input.exposureByHour!.reduce((sum, each) => sum + each, 0)).toBeCloseTo(
            input.exposure!.value,
            6,
          )
          const before = input.occurrences.map(({ exposureBefore }) => exposureBefore!)
          expect(before.every((each, index) => index === 0 || each >= before[index - 1]!)).toBe(true)
          expect(before.every((each) => each <= input.exposure!.value + 1e-6)).toBe(true)
          if (input.what === 'chance') {
            expect(input.exposure!.value).toBeCloseTo(
              1000 * record.shifts.filter(({ good, isHeldOut }) => good !== null && !isHeldOut).length,
              6,
            )
            continue
          }
          const seen = input.sample.seen.map((each) =>
            'clocked' in each ? each.clocked : 'over' in each ? each.over : Number.NaN,
          )
          const sum = seen.reduce((total, each, index) => total + each * input.sample.counts[index]!, 0)
          expect(sum).toBeCloseTo(input.exposure!.value, 6)
          expect(input.exposure!.value).toBeCloseTo(ran * input.exposureByPiece!.size, 6)
        }
      }),
      { numRuns: 300, seed: 20261129 },
    )
  })
})

describe('spans', () => {
  const someSpans = fc.array(
    fc
      .record({ begins: fc.nat(50), length: fc.nat(10) })
      .map(({ begins, length }): Span => ({ begins, ends: begins + length })),
  )
  /** Which of the 60 seconds are covered. */
  const seconds = (spans: readonly Span[]) =>
    Array.from({ length: 60 }, (_, at) => spans.some(({ begins, ends }) => begins <= at && at < ends))

  it('are joined and taken away second by second', () => {
    fc.assert(
      fc.property(someSpans, (spans) => {
        const all = union(spans)
        expect(seconds(all)).toEqual(seconds(spans))
        for (const [index, { begins }] of all.entries())
          expect(index === 0 || begins > all[index - 1]!.ends).toBe(true)
        const left = without({ begins: 10, ends: 40 }, all)
        expect(seconds(left)).toEqual(seconds(spans).map((isIn, at) => at >= 10 && at < 40 && !isIn))
      }),
    )
  })
})
