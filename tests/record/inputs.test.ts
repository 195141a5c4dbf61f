/** What a record says of inputs, worked by hand: counts in their exposure, running times, lengths of stops, gaps and the mix. */
import { describe, expect, it } from 'vitest'
import { holdOut } from '../../src/record/hold-out.js'
import type { LoggedInput } from '../../src/record/input.js'
import { loggedInputs } from '../../src/record/inputs.js'
import { recordOf, winter } from './texts.js'

const fixed =
  '{file: shifts.csv, begins: Beginn, ends: Ende, good: Gut, breaks: [{at: "09:00", for: 30 min}]}'
const shifts = `Beginn;Ende;Gut
12.01.2026 06:00;12.01.2026 14:00;4000
13.01.2026 06:00;13.01.2026 14:00;4100
`
const stops = `Von;Bis;Anlage;Grund
12.01.2026 06:10;12.01.2026 06:14;Kleber;Stau
12.01.2026 10:00;12.01.2026 10:30;Kleber;Motor
13.01.2026 07:00;13.01.2026 07:20;Kleber;Motor
13.01.2026 13:55;13.01.2026 14:10;Kleber;Stau
`
const written = { shifts, stops, keys: { shifts: fixed } }

type Of<What> = Extract<LoggedInput, { what: What }>
function input<What extends LoggedInput['what']>(all: LoggedInput[], what: What, path: string): Of<What> {
  const found = all.find((each) => each.path === path)
  expect(found?.what).toBe(what)
  return found as Of<What>
}

const minutes = (seconds: number) => seconds / 60

// the first day runs 480 - 30 - 4 - 30 = 416 min, the second 480 - 30 - 20 - 5 = 425 min
describe('inputs of a record', () => {
  const all = loggedInputs(recordOf(written))

  it('are those that `means` names', () => {
    expect(all.map(({ what, path }) => [what, path])).toEqual([
      ['chance', 'line.sealer.jams.chance'],
      ['times', 'line.sealer.jams.clear'],
      ['time-to', 'line.sealer.breakdowns.after'],
      ['times', 'line.sealer.breakdowns.repair'],
    ])
  })

  it('jams are counted in cases, which grow with the running time of their shift', () => {
    const jams = input(all, 'chance', 'line.sealer.jams.chance')
    expect(jams).toMatchObject({ count: 2, exposure: { value: 8100, unit: 'cases' }, seenFrom: 0 })
    expect(jams.exposure!.value).toBeCloseTo(8100, 9)
    const [first, second] = jams.occurrences
    expect(first).toMatchObject({
      piece: 'Kleber',
      shift: 0,
      hour: 6,
      value: 240,
      at: winter('2026-01-12T06:10'),
    })
    // 10 of the 416 min of the first day; all of both, for nothing ran after 13:55
    expect(first!.exposureBefore).toBeCloseTo((4000 * 10) / 416, 9)
    expect(second!.exposureBefore).toBeCloseTo(8100, 9)
    expect(jams.exposureByPiece?.get('Kleber')).toBeCloseTo(8100, 9)
    expect(jams.exposureByHour![6]).toBeCloseTo((4000 * 56) / 416 + (4100 * 60) / 425, 9)
    expect(jams.exposureByHour!.reduce((sum, each) => sum + each)).toBeCloseTo(8100, 6)
    expect(jams.notes).toEqual(['Counted per good case: spoilt cases are not included.'])
  })

  it('times are differences of a clock of minutes; what ran into the end of a shift was longer', () => {
    const { sample, count, holdsWalk, notes, occurrences } = input(all, 'times', 'line.sealer.jams.clear')
    expect(sample).toEqual({ seen: [{ clocked: 240, grain: 60 }, { over: 300 }], counts: [1, 1], from: 0 })
    expect([count, holdsWalk, notes.length]).toEqual([2, true, 1])
    expect(occurrences.map(({ isCutOff }) => isCutOff)).toEqual([false, true])
    expect(input(all, 'times', 'line.sealer.breakdowns.repair').sample.seen).toEqual([
      { clocked: 1800, grain: 60 },
      { clocked: 1200, grain: 60 },
    ])
  })

  it('running time goes on over the shifts, and what comes after the last breakdown is not dropped', () => {
    const after = input(all, 'time-to', 'line.sealer.breakdowns.after')
    // until 10:00: 240 - 30 - 4; then what is left of 416, and an hour; then what is left of 416 + 425
    expect(after.occurrences.map(({ value }) => minutes(value))).toEqual([206, 270])
    expect(after.sample).toEqual({
      seen: [{ clocked: 206 * 60, grain: 60 }, { clocked: 270 * 60, grain: 60 }, { over: 365 * 60 }],
      counts: [1, 1, 1],
      from: 0,
    })
    expect(after).toMatchObject({ count: 2, exposure: { value: 841 * 60, unit: 's' } })
    expect(after.exposureByHour!.map(minutes).slice(6, 14)).toEqual([116, 100, 120, 60, 90, 120, 120, 115])
    expect(after.occurrences.map(({ exposureBefore }) => minutes(exposureBefore!))).toEqual([206, 476])
  })

  it('what is held out counts for nothing', () => {
    const record = recordOf(written)
    const held = {
      ...record,
      shifts: record.shifts.map((shift, number) => ({ ...shift, isHeldOut: number === 1 })),
    }
    const some = loggedInputs(held)
    expect(input(some, 'chance', 'line.sealer.jams.chance')).toMatchObject({
      count: 1,
      exposure: { unit: 'cases' },
    })
    expect(input(some, 'chance', 'line.sealer.jams.chance').exposure!.value).toBeCloseTo(4000, 9)
    const { sample } = input(some, 'time-to', 'line.sealer.breakdowns.after')
    expect(sample.seen).toEqual([{ clocked: 206 * 60, grain: 60 }, { over: 210 * 60 }])
  })

  it('a reason that never occurs is a count of none in its exposure', () => {
    const none = loggedInputs(
      recordOf({
        ...written,
        stops: stops.split('\n')[0]!,
        keys: {
          shifts: fixed,
          means: '{Stau: line.sealer.jams, Motor: line.sealer.breakdowns, Riss: line.sealer.tape-breaks}',
        },
      }),
      { heads: new Map([['sealer', 2]]) },
    )
    expect(input(none, 'chance', 'line.sealer.jams.chance')).toMatchObject({
      count: 0,
      exposure: { value: 8100, unit: 'cases' },
      occurrences: [],
    })
    expect(input(none, 'chance', 'line.sealer.tape-breaks.chance')).toMatchObject({
      count: 0,
      exposure: { value: 16_200, unit: 'strips' },
    })
    const after = input(none, 'time-to', 'line.sealer.breakdowns.after')
    expect(after).toMatchObject({ count: 0, exposure: { value: 900 * 60, unit: 's' } })
    expect(after.sample).toEqual({ seen: [{ over: 900 * 60 }], counts: [1], from: 0 })
    expect(input(none, 'times', 'line.sealer.jams.clear').sample.seen).toEqual([])
  })

  it('tape breaks without a known number of heads are told to be a chance a case', () => {
    const some = loggedInputs(
      recordOf({ ...written, keys: { shifts: fixed, means: '{Stau: line.sealer.tape-breaks}' } }),
    )
    const breaks = input(some, 'chance', 'line.sealer.tape-breaks.chance')
    expect(breaks.exposure).toEqual({ value: expect.closeTo(8100, 6), unit: 'cases' })
    expect(breaks.notes.some((note) => note.includes('heads'))).toBe(true)
  })

  it('shifts without a count of cases and their jams do not count for the chance', () => {
    const some = loggedInputs(recordOf({ ...written, shifts: shifts.replace('4100', '') }))
    const jams = input(some, 'chance', 'line.sealer.jams.chance')
    expect(jams).toMatchObject({ count: 1, exposure: { unit: 'cases' } })
    expect(jams.exposure!.value).toBeCloseTo(4000, 9)
    expect(jams.notes[1]).toBe(
      'Shifts without a count of cases: 1; these shifts and their stops (1) are not used here.',
    )
    expect(input(some, 'times', 'line.sealer.jams.clear').count).toBe(2)
    const without = '{file: shifts.csv, begins: Beginn, ends: Ende}'
    const unknown = input(
      loggedInputs(recordOf({ ...written, keys: { shifts: without } })),
      'chance',
      'line.sealer.jams.chance',
    )
    expect(unknown).toMatchObject({ count: 2, exposure: null, exposureByHour: null, exposureByPiece: null })
  })

  it('stops that are not logged below a length truncate times, and a stop that is cut off early is longer than that', () => {
    const some = loggedInputs(
      recordOf({
        ...written,
        stops: `${stops}12.01.2026 08:59;12.01.2026 09:40;Kleber;Stau\n`,
        keys: { shifts: fixed, 'seen-from': '2 min' },
      }),
    )
    const clear = input(some, 'times', 'line.sealer.jams.clear')
    expect(clear.sample).toEqual({
      seen: [{ clocked: 240, grain: 60 }, { over: 120 }, { over: 300 }],
      counts: [1, 1, 1],
      from: 120,
    })
    expect(input(some, 'chance', 'line.sealer.jams.chance')).toMatchObject({ count: 3, seenFrom: 120 })
  })

  it('machines of one sort each run on their own', () => {
    const some = loggedInputs(
      recordOf({ ...written, stops: stops.replace('07:20;Kleber;', '07:20;Kleber 2;') }),
    )
    const after = input(some, 'time-to', 'line.sealer.breakdowns.after')
    // the first one broke down after 206 min; the second one ran 416 min on the first day and 60 on the second before it did
    expect(after.occurrences.map(({ value }) => minutes(value))).toEqual([206, 416 + 60])
    expect([...after.exposureByPiece!].map(([piece, seconds]) => [piece, minutes(seconds)])).toEqual([
      ['Kleber', 841],
      ['Kleber 2', 841],
    ])
    expect(after.exposure!.value).toBe(2 * 841 * 60)
    expect(after.sample.seen.slice(2)).toEqual([{ over: (841 - 206) * 60 }, { over: (841 - 476) * 60 }])
    expect(after.notes.some((note) => note.includes('Kleber, Kleber 2'))).toBe(true)
  })
})

describe('arrivals', () => {
  const cases = `Zeit;Artikel
12.01.2026 06:00:00;a
12.01.2026 06:00:05;a
12.01.2026 06:00:10;b
12.01.2026 06:12:00;a
12.01.2026 06:12:07;a
12.01.2026 13:59:58;a
13.01.2026 06:00:02;b
13.01.2026 06:00:07;b
`
  const keys = { cases: '{file: cases.csv, at: Zeit, kind: Artikel, times: "dd.MM.yyyy HH:mm:ss"}' }

  it('are the gaps within a shift in which nothing stood, on the clock of the scanner', () => {
    // the jam from 06:10 on cuts the third off after 590 s; the next two begin while it lasts; the night is none
    const all = loggedInputs(recordOf({ ...written, cases, keys: { ...keys, shifts: fixed } }), {
      source: 'packing',
    })
    const between = input(all, 'time-between', 'arrivals.packing.time-between')
    expect([...between.gaps]).toEqual([5, 5, 5])
    expect([...between.shifts]).toEqual([0, 0, 1])
    expect(between.sample).toEqual({
      seen: [{ clocked: 5, grain: 1 }, { over: 590 }],
      counts: [3, 1],
      from: 0,
    })
    expect(between.count).toBe(4)
    expect(between.leftOut).toBe(2)
    expect(between.notes.slice(0, 2)).toEqual([
      expect.stringContaining('2 gaps that began during a logged stop'),
      expect.stringContaining('1 gaps ended in a stop'),
    ])
    expect(between.countByHour[6]).toBe(3)
    expect(between.secondsByHour[6]).toBe(605)
    expect(input(all, 'mix', 'cases')).toMatchObject({
      count: 8,
      kinds: [
        { name: 'a', count: 5 },
        { name: 'b', count: 3 },
      ],
    })
  })

  it('count cases where no shift does, and say where they come only if the record does', () => {
    const all = loggedInputs(
      recordOf({
        ...written,
        cases,
        keys: { ...keys, shifts: '{file: shifts.csv, begins: Beginn, ends: Ende}' },
      }),
    )
    expect(input(all, 'time-between', 'arrivals.*.time-between').notes.at(-1)).toContain('`source`')
    const jams = input(all, 'chance', 'line.sealer.jams.chance')
    expect(jams.exposure!.value).toBeCloseTo(8, 9)
    expect(jams.notes[0]).toBe('Counted per case that the scanner saw.')
  })
})

describe('days held out', () => {
  const twenty = Array.from({ length: 20 }, (_, n) => `${`${n + 1}`.padStart(2, '0')}.01.2026`)
  const record = recordOf({
    shifts: `Beginn;Ende;Gut\n${twenty.map((day) => `${day} 06:00;${day} 14:00;1\n${day} 14:00;${day} 22:00;1\n`).join('')}`,
    stops,
  })

  it('are whole days, as many as were asked for, the same for the same seed', () => {
    const held = holdOut(record, 0.3, 'a')
    expect(held.days).toHaveLength(6)
    expect(held.record.shifts.filter(({ isHeldOut }) => isHeldOut)).toHaveLength(12)
    expect(held.record.shifts.every(({ day, isHeldOut }) => held.days.includes(day) === isHeldOut)).toBe(true)
    expect(holdOut(record, 0.3, 'a').days).toEqual(held.days)
    expect(holdOut(record, 0.3, 'b').days).not.toEqual(held.days)
    // drawing again does not add to what is held out
    expect(holdOut(held.record, 0, 'a').record.shifts.some(({ isHeldOut }) => isHeldOut)).toBe(false)
  })

  it('are at least one and never all', () => {
    expect(holdOut(record, 0.001, 'a').days).toHaveLength(1)
    expect(holdOut(record, 1, 'a').days).toHaveLength(19)
    const single = recordOf({ shifts: 'Beginn;Ende;Gut\n12.01.2026 06:00;12.01.2026 14:00;1\n', stops })
    expect(holdOut(single, 0.5, 'a').days).toEqual([])
  })
})
