/** Each rule of cleaning, worked by hand on a few rows: what stays, what is changed or left out, and that it is told with its rows. */
import { describe, expect, it } from 'vitest'
import { isUsable } from '../../src/record/read.js'
import type { CleanRecord } from '../../src/record/record.js'
import { recordOf, told, winter } from './texts.js'

const shifts = `Beginn;Ende;Gut
12.01.2026 06:00;12.01.2026 14:00;4000
12.01.2026 14:00;12.01.2026 22:00;3900
13.01.2026 06:00;13.01.2026 14:00;4100
`
const head = 'Von;Bis;Anlage;Grund\n'

const read = (rows: string, keys: Record<string, string> = {}) =>
  recordOf({ shifts, stops: head + rows, keys })

/** Stops in short: minutes from the beginning of the shift, length in minutes, piece, meaning, cut off. */
const brief = ({ stops, shifts: all }: CleanRecord) =>
  stops.map(({ begins, ends, piece, means, shift, isCutOff }) => [
    shift,
    (begins - all[shift]!.begins) / 60,
    (ends - begins) / 60,
    piece,
    means,
    ...(isCutOff ? ['cut off'] : []),
  ])

const lost = ({ shifts: all }: CleanRecord) =>
  all.map((shift) =>
    shift.lost.map(({ begins, ends }) => [(begins - shift.begins) / 60, (ends - begins) / 60]),
  )

const breaks = ({ shifts: all }: CleanRecord) =>
  all.map((shift) =>
    shift.breaks.map(({ begins, ends }) => [(begins - shift.begins) / 60, (ends - begins) / 60]),
  )

describe('a clean record', () => {
  it('is what the files say', () => {
    const record = read(
      '12.01.2026 06:10;12.01.2026 06:14;Kleber;Stau\n13.01.2026 07:00;13.01.2026 07:30;Kleber;Motor\n',
    )
    expect(record.shifts.map(({ begins, day, good, row }) => [begins, day, good, row])).toEqual([
      [winter('2026-01-12T06:00'), '2026-01-12', 4000, 2],
      [winter('2026-01-12T14:00'), '2026-01-12', 3900, 3],
      [winter('2026-01-13T06:00'), '2026-01-13', 4100, 4],
    ])
    expect(brief(record)).toEqual([
      [0, 10, 4, 'Kleber', 'line.sealer.jams'],
      [2, 60, 30, 'Kleber', 'line.sealer.breakdowns'],
    ])
    expect(record.stops.map(({ limit, row }) => [limit / 60, row])).toEqual([
      [470, 2],
      [420, 3],
    ])
    expect(record).toMatchObject({
      roundedTo: 60,
      lengths: 'clocked',
      seenFrom: 0,
      zone: 'Europe/Berlin',
      cases: null,
    })
    expect(record.meanings).toEqual([
      'line.sealer.jams',
      'line.sealer.breakdowns',
      'break',
      'starved',
      'blocked',
      'other',
    ])
    expect(told(record)).toEqual([])
    expect(record.account.find(({ code }) => code === 'never-occurs')).toMatchObject({
      did: 'noted',
      count: 4,
      words: 'under `means`, but in no row: `Pause`, `leer`, `voll`, `Treffen`',
    })
    expect(isUsable(record)).toBe(true)
  })

  it('rows in any order are put into order; identical ones are counted once', () => {
    const a = '12.01.2026 06:10;12.01.2026 06:14;Kleber;Stau\n'
    const b = '12.01.2026 07:10;12.01.2026 07:14;Kleber;Stau\n'
    const record = read(b + a + b)
    expect(brief(record).map(([, from]) => from)).toEqual([10, 70])
    expect(told(record)[0]).toEqual(['doubled', 'left-out', [4], 1, 240])
  })

  it('a stop that ends before it begins is left out, one of no length is shorter than the grain', () => {
    const record = read(
      '12.01.2026 06:10;12.01.2026 06:04;Kleber;Stau\n12.01.2026 07:10;12.01.2026 07:10;Kleber;Stau\n',
    )
    expect(brief(record)).toEqual([[0, 70, 0, 'Kleber', 'line.sealer.jams']])
    expect(told(record).slice(0, 2)).toEqual([
      ['ends-before', 'left-out', [2], 1, 0],
      ['instant', 'noted', [3], 1, 0],
    ])
  })

  it('overlapping stops of one piece are made one, those of two pieces are not', () => {
    const record = read(
      '12.01.2026 06:10;12.01.2026 06:20;Kleber;Stau\n12.01.2026 06:15;12.01.2026 06:30;Kleber;Motor\n12.01.2026 06:25;12.01.2026 06:28;Kleber;Stau\n12.01.2026 06:12;12.01.2026 06:22;Packer;Stau\n',
    )
    expect(brief(record)).toEqual([
      [0, 10, 20, 'Kleber', 'line.sealer.jams'],
      [0, 12, 10, 'Packer', 'line.sealer.jams'],
    ])
    // 5 of the 15 min and all 3 min were counted already
    expect(told(record).slice(0, 2)).toEqual([
      ['overlap', 'changed', [3, 4], 2, 480],
      ['overlap-other', 'changed', [3], 1, 0],
    ])
  })

  it('a stop that ends when the next begins is not one with it', () => {
    expect(
      brief(
        read(
          '12.01.2026 06:10;12.01.2026 06:20;Kleber;Stau\n12.01.2026 06:20;12.01.2026 06:30;Kleber;Stau\n',
        ),
      ),
    ).toHaveLength(2)
  })

  it('a stop across the end of its shift is cut off there, and the next shift loses the rest', () => {
    const record = read(
      '12.01.2026 13:50;12.01.2026 14:20;Kleber;Motor\n12.01.2026 21:30;12.01.2026 22:10;Kleber;Motor\n',
    )
    expect(brief(record)).toEqual([
      [0, 470, 10, 'Kleber', 'line.sealer.breakdowns', 'cut off'],
      [1, 450, 30, 'Kleber', 'line.sealer.breakdowns', 'cut off'],
    ])
    expect(lost(record)).toEqual([[], [[0, 20]], []])
    expect(told(record)[0]).toEqual(['cut-off', 'changed', [2, 3], 2, 1800])
  })

  it('a stop across a break is cut off there, and what is left after it is lost; breaks stand at fixed times or in the log', () => {
    const fixed =
      '{file: shifts.csv, begins: Beginn, ends: Ende, good: Gut, breaks: [{at: "09:00", for: 15 min}]}'
    const record = read(
      '12.01.2026 08:50;12.01.2026 09:20;Kleber;Motor\n13.01.2026 11:55;13.01.2026 12:40;Kleber;Motor\n13.01.2026 12:00;13.01.2026 12:30;;Pause\n',
      { shifts: fixed },
    )
    expect(breaks(record)).toEqual([
      [[180, 15]],
      [],
      [
        [180, 15],
        [360, 30],
      ],
    ])
    expect(brief(record)).toEqual([
      [0, 170, 10, 'Kleber', 'line.sealer.breakdowns', 'cut off'],
      [2, 355, 5, 'Kleber', 'line.sealer.breakdowns', 'cut off'],
    ])
    expect(record.stops.map(({ limit }) => limit / 60)).toEqual([10, 5])
    expect(lost(record)).toEqual([[[195, 5]], [], [[390, 10]]])
    expect(told(record).slice(0, 2)).toEqual([
      ['logged-breaks', 'noted', [4], 1, 1800],
      ['cut-off', 'changed', [2, 3], 2, 1200 + 2400],
    ])
  })

  it('stops outside all shifts are left out; one that ends within a shift stops it, but is no stop of it', () => {
    const record = read(
      '12.01.2026 23:00;12.01.2026 23:30;Kleber;Motor\n13.01.2026 05:40;13.01.2026 06:15;Kleber;Motor\n12.01.2026 14:00;12.01.2026 14:05;Kleber;Stau\n',
    )
    expect(brief(record)).toEqual([[1, 0, 5, 'Kleber', 'line.sealer.jams']])
    expect(lost(record)).toEqual([[], [], [[0, 15]]])
    expect(told(record).slice(0, 2)).toEqual([
      ['outside', 'left-out', [2], 1, 1800],
      ['begins-outside', 'left-out', [3], 1, 900],
    ])
  })

  it('two pieces in one row are no stop of either where both are known, and a piece of its own where they are not', () => {
    const record = read(
      '12.01.2026 06:00;12.01.2026 06:10;Kleber;Stau\n12.01.2026 07:00;12.01.2026 07:10;Packer;Stau\n12.01.2026 08:00;12.01.2026 08:10;Kleber + Packer;Stau\n12.01.2026 09:00;12.01.2026 09:10;Packer/Kleber;Stau\n12.01.2026 10:00;12.01.2026 10:10;Band 3/4;Stau\n',
    )
    expect(brief(record).map(([, , , piece]) => piece)).toEqual(['Kleber', 'Packer', 'Band 3/4'])
    expect(lost(record)[0]).toEqual([
      [120, 10],
      [180, 10],
    ])
    expect(told(record)[0]).toEqual(['two-pieces', 'left-out', [4, 5], 2, 1200])
  })

  it('an unknown reason is listed with its stops and minutes, and with the word that was meant', () => {
    const record = read(
      '12.01.2026 06:00;12.01.2026 06:10;Kleber;Stua\n12.01.2026 07:00;12.01.2026 07:05;Kleber;Stua\n12.01.2026 08:00;12.01.2026 08:01;Kleber;Sonstiges\n',
    )
    expect(brief(record).map((each) => each[4])).toEqual([null, null, null])
    const unknown = record.account.filter(({ code }) => code === 'unknown-reason')
    expect(unknown.map(({ rows, count, seconds, words, fix }) => [rows, count, seconds, words, fix])).toEqual(
      [
        [[2, 3], 2, 900, '`Stua`: its meaning is not given; 2 stops, 15 min', 'did you mean `Stau`?'],
        [
          [4],
          1,
          60,
          '`Sonstiges`: its meaning is not given; 1 stop, 60 s',
          'add it under `means`, with a stop of the scenario or `other`',
        ],
      ],
    )
  })

  it('of very many unknown reasons those with the most time are listed, and the others together', () => {
    const rows = Array.from({ length: 60 }, (_, n) => {
      const hour = `12.01.2026 ${n < 30 ? '06' : '07'}`
      const begins = 10 + (n % 30)
      // the first ten last a minute, the others two
      return `${hour}:${`${begins}`.padStart(2, '0')};${hour}:${`${begins + (n < 10 ? 1 : 2)}`.padStart(2, '0')};Kleber ${n};Text ${n}\n`
    })
    const record = read(rows.join(''))
    expect(record.account.filter(({ code }) => code === 'unknown-reason')).toHaveLength(50)
    const more = record.account.find(({ code }) => code === 'more-unknown')
    expect(more).toMatchObject({ count: 10, rows: [2, 3, 4, 5, 6], seconds: 600 })
  })

  it('a reason may mean something else at one piece, and a piece that was renamed is one', () => {
    const record = read(
      '12.01.2026 06:00;12.01.2026 06:10;Kleber alt;Motor\n12.01.2026 07:00;12.01.2026 07:10;Kleber;Motor\n12.01.2026 08:00;12.01.2026 08:10;Palettierer;Motor\n',
      {
        means: '{Motor: line.sealer.breakdowns, Palettierer: {Motor: line.palletiser.breakdowns}}',
        same: '{Kleber alt: Kleber}',
      },
    )
    expect(brief(record).map(([, , , piece, means]) => [piece, means])).toEqual([
      ['Kleber', 'line.sealer.breakdowns'],
      ['Kleber', 'line.sealer.breakdowns'],
      ['Palettierer', 'line.palletiser.breakdowns'],
    ])
    expect(told(record)).toEqual([['renamed', 'changed', [2], 1, 0]])
  })

  it('a stop that is shorter than is logged contradicts itself; one that the rounding explains does not', () => {
    const record = read(
      '12.01.2026 06:00;12.01.2026 06:01;Kleber;Stau\n12.01.2026 07:00;12.01.2026 07:02;Kleber;Stau\n',
      { 'seen-from': '150 s' },
    )
    // 1 min on a clock of minutes is less than 2 min; 2 min may be just under 3
    expect(brief(record).map(([, from]) => from)).toEqual([60])
    expect(lost(record)[0]).toEqual([[0, 1]])
    expect(told(record)[0]).toEqual(['shorter-than-seen', 'left-out', [2], 1, 60])
  })

  it('lengths may stand in place of ends, in any unit and with a decimal comma', () => {
    const stops = (unit: string) =>
      `{file: stops.csv, begins: Von, lasts: Dauer, unit: ${unit}, piece: Anlage, reason: Grund}`
    const of = (cell: string, unit: string) => {
      const record = recordOf({
        shifts,
        stops: `Von;Dauer;Anlage;Grund\n12.01.2026 06:00;${cell};Kleber;Stau\n`,
        keys: { stops: stops(unit) },
      })
      return [record.stops.map(({ begins, ends }) => ends - begins), record.roundedTo, record.lengths]
    }
    expect(of('90', 's')).toEqual([[90], 1, 'timed'])
    expect(of('1,5', 'min')).toEqual([[90], 0, 'timed'])
    expect(of('2', 'min')).toEqual([[120], 60, 'timed'])
    expect(of('0:02', 'h:mm')).toEqual([[120], 60, 'timed'])
    expect(of('0:01:30', 'h:mm:ss')).toEqual([[90], 1, 'timed'])
    expect(of('bald', 'min')).toEqual([[], 60, 'timed'])
  })

  it('lengths that were timed are kept where the coarser clock of their beginnings makes stops overlap', () => {
    const record = recordOf({
      shifts,
      stops:
        'Von;Dauer;Anlage;Grund\n12.01.2026 06:00;100;Kleber;Stau\n12.01.2026 06:01;50;Kleber;Stau\n12.01.2026 06:01;55;Kleber;Motor\n',
      keys: { stops: '{file: stops.csv, begins: Von, lasts: Dauer, unit: s, piece: Anlage, reason: Grund}' },
    })
    // the second may have begun 40 s after 06:01, where the first ended; the third began within the same minute, and cannot come after it
    expect(
      record.stops.map(({ begins, ends }) => [begins - record.shifts[0]!.begins, ends - begins]),
    ).toEqual([
      [0, 100],
      [100, 50],
    ])
    expect(told(record)).toEqual([
      ['moved', 'changed', [3], 1, 40],
      ['overlap', 'changed', [4], 1, 55],
      ['overlap-other', 'changed', [4], 1, 0],
    ])
  })

  it('a grain that is coarser than it looks is found: every time is a whole quarter of an hour', () => {
    const rows = Array.from(
      { length: 10 },
      (_, n) =>
        `12.01.2026 ${`${6 + Math.floor(n / 2)}`.padStart(2, '0')}:${n % 2 ? '30' : '00'};12.01.2026 ${`${6 + Math.floor(n / 2)}`.padStart(2, '0')}:${n % 2 ? '45' : '15'};Kleber;Stau\n`,
    )
    expect(read(rows.join('')).roundedTo).toBe(900)
    expect(read(rows.slice(0, 9).join('')).roundedTo).toBe(60)
    expect(read(rows.join(''), { 'rounded-to': '1 min' }).roundedTo).toBe(60)
    const fine = read('12.01.2026 06:01;12.01.2026 06:04;Kleber;Stau\n', { 'rounded-to': '5 min' })
    expect(fine.roundedTo).toBe(300)
    expect(told(fine)[0]![0]).toBe('finer-than-said')
  })
})

describe('shifts', () => {
  const readShifts = (rows: string, keys: Record<string, string> = {}) =>
    recordOf({
      shifts: `Beginn;Ende;Gut\n${rows}`,
      stops: `${head}12.01.2026 06:10;12.01.2026 06:14;Kleber;Stau\n`,
      keys,
    })
  const spans = (record: CleanRecord) =>
    record.shifts.map(({ begins, ends, good }) => [
      (begins - winter('2026-01-12T00:00')) / 3600,
      (ends - begins) / 3600,
      good,
    ])

  it('are put into order, doubles and what is none left out, overlaps cut', () => {
    const record = readShifts(
      '12.01.2026 14:00;12.01.2026 22:00;2\n12.01.2026 06:00;12.01.2026 14:30;1\n12.01.2026 14:00;12.01.2026 22:00;2\n12.01.2026 15:00;12.01.2026 16:00;3\n13.01.2026 06:00;13.01.2026 06:00;4\n13.01.2026 14:00;13.01.2026 06:00;4\n',
    )
    expect(spans(record)).toEqual([
      [6, 8.5, 1],
      [14.5, 7.5, 2],
    ])
    expect(told(record)).toEqual([
      ['shifts-overlap', 'changed', [2], 1, 1800],
      ['shift-within', 'left-out', [4, 5], 2, 8 * 3600 + 3600],
      ['shift-ends-before', 'left-out', [6, 7], 2, 0],
    ])
  })

  it('count what is good in the way of their country, and what is no number is not counted', () => {
    const record = readShifts(
      '12.01.2026 06:00;12.01.2026 14:00;1.234\n13.01.2026 06:00;13.01.2026 14:00;12,5\n14.01.2026 06:00;14.01.2026 14:00;viele\n15.01.2026 06:00;15.01.2026 14:00;\n',
    )
    expect(record.shifts.map(({ good }) => good)).toEqual([1234, 12.5, null, null])
    expect(told(record).slice(0, 2)).toEqual([
      ['no-number', 'changed', [4, 5], 2, 0],
      ['good-missing', 'noted', [4, 5], 2, 0],
    ])
    const guess = readShifts('12.01.2026 06:00;12.01.2026 14:00;1.234\n')
    expect(guess.shifts[0]!.good).toBe(1234)
    expect(guess.account.find(({ code }) => code === 'decimals')!.words).toContain('decimal comma')
    expect(
      readShifts('12.01.2026 06:00;12.01.2026 14:00;1.234\n', { decimal: 'point' }).shifts[0]!.good,
    ).toBe(1.234)
  })

  it('leave days out that are named, and so are days on which nobody logged', () => {
    const rows = [12, 13, 16, 17].map((day) => `${day}.01.2026 06:00;${day}.01.2026 14:00;1\n`)
    const logged = [12, 13, 17].flatMap((day) =>
      Array.from(
        { length: 7 },
        (_, n) =>
          `${day}.01.2026 ${`${6 + n}`.padStart(2, '0')}:01;${day}.01.2026 ${`${6 + n}`.padStart(2, '0')}:03;Kleber;Stau\n`,
      ),
    )
    const record = recordOf({ shifts: `Beginn;Ende;Gut\n${rows.join('')}`, stops: head + logged.join('') })
    const found = record.account.filter(({ code }) => code.startsWith('days'))
    expect(found.map(({ count, words }) => [count, words])).toEqual([
      [2, '2 days between the first and the last without a shift: 2026-01-14 to 2026-01-15'],
      [1, '1 day without any stop, although the other days have many: 2026-01-16'],
    ])
  })

  it('at night begin on the day before, and have their breaks after midnight', () => {
    const record = readShifts('12.01.2026 22:00;13.01.2026 06:00;1\n', {
      shifts:
        '{file: shifts.csv, begins: Beginn, ends: Ende, good: Gut, breaks: [{at: "02:00", for: 30 min}]}',
    })
    expect(record.shifts[0]!.day).toBe('2026-01-12')
    expect(breaks(record)).toEqual([[[240, 30]]])
  })
})

describe('cases', () => {
  const readCases = (rows: string, extra = '', keys: Record<string, string> = {}) =>
    recordOf({
      shifts,
      stops: head,
      cases: `Zeit;Artikel\n${rows}`,
      keys: {
        cases: `{file: cases.csv, at: Zeit, kind: Artikel, times: "dd.MM.yyyy HH:mm:ss"${extra}}`,
        ...keys,
      },
    })

  it('are numbers in order, each in its shift, under the names of the scenario', () => {
    const record = readCases(
      '12.01.2026 06:00:05;4711\n12.01.2026 14:00:00;4712\n12.01.2026 22:30:00;4711\n13.01.2026 07:00:00;4713\n',
      ', kinds: {4711: small, 4712: large}, source: packing',
    )
    expect([...record.cases!.times]).toEqual(
      ['2026-01-12T06:00:05', '2026-01-12T14:00:00', '2026-01-13T07:00:00'].map(winter),
    )
    expect([...record.cases!.shifts]).toEqual([0, 1, 2])
    expect([...record.cases!.kinds!]).toEqual([0, 1, 2])
    expect(record.cases).toMatchObject({ names: ['small', 'large', '4713'], roundedTo: 1, source: 'packing' })
    expect(told(record).filter(([code]) => code.startsWith('cases'))).toEqual([
      ['cases-outside', 'left-out', [4], 1, 0],
    ])
  })

  it('that go back are put into order, and two of one second are two', () => {
    const record = readCases(
      '12.01.2026 06:00:05;a\n12.01.2026 06:00:05;a\n12.01.2026 06:00:09;a\n12.01.2026 06:00:07;b\n12.01.2026 06:00:11;b\n',
    )
    expect([...record.cases!.times].map((time) => time - winter('2026-01-12T06:00'))).toEqual([
      5, 5, 7, 9, 11,
    ])
    expect([...record.cases!.kinds!]).toEqual([0, 0, 1, 0, 1])
    expect(told(record).filter(([code]) => code.startsWith('cases'))).toEqual([
      ['cases-go-back', 'changed', [5], 1, 0],
      ['cases-at-once', 'noted', [3], 1, 0],
    ])
  })

  it('that are alike to the millisecond stand there twice', () => {
    const record = readCases(
      '2026-01-12T06:00:05.125;a\n2026-01-12T06:00:05.125;a\n2026-01-12T06:00:05.250;a\n',
      '',
    ).cases
    expect(record).toBeNull()
    const fine = recordOf({
      shifts,
      stops: head,
      cases: 'Zeit\n2026-01-12T06:00:05.125\n2026-01-12T06:00:05.125\n2026-01-12T06:00:05.250\n',
      keys: { cases: '{file: cases.csv, at: Zeit, times: iso}' },
    })
    expect([...fine.cases!.times].map((time) => time - winter('2026-01-12T06:00'))).toEqual([5.125, 5.25])
    expect(fine.cases!.kinds).toBeNull()
    expect(told(fine).find(([code]) => code === 'doubled-cases')).toEqual([
      'doubled-cases',
      'left-out',
      [3],
      1,
      0,
    ])
  })

  it('the newest first are turned round', () => {
    const record = readCases('12.01.2026 06:00:09;a\n12.01.2026 06:00:07;b\n12.01.2026 06:00:05;a\n')
    expect([...record.cases!.kinds!]).toEqual([0, 1, 0])
    expect(told(record).some(([code]) => code === 'cases-go-back')).toBe(false)
  })
})
