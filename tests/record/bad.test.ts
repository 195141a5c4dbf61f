/** Logs that are wrong, odd or hostile: each is told with its file, its rows and a mend; none is read silently. */
import { describe, expect, it } from 'vitest'
import { loggedInputs } from '../../src/record/inputs.js'
import { isUsable } from '../../src/record/read.js'
import type { Account, CleanRecord } from '../../src/record/record.js'
import { recordOf, told } from './texts.js'

const shifts = 'Beginn;Ende;Gut\n12.01.2026 06:00;12.01.2026 14:00;4000\n'
const stops = 'Von;Bis;Anlage;Grund\n12.01.2026 06:10;12.01.2026 06:14;Kleber;Stau\n'

const entry = (record: CleanRecord, code: string): Account => {
  const found = record.account.find((each) => each.code === code)
  expect(found, `${code} among ${record.account.map((each) => each.code)}`).toBeDefined()
  return found!
}

describe('a record that cannot be used', () => {
  it.each<[string, Parameters<typeof recordOf>[0], string, string, string]>([
    [
      'a column that is missing',
      { shifts: shifts.replace('Ende', 'Schluss Ende'), stops },
      'no-column',
      '`Ende`',
      'allowed here: Beginn, Schluss Ende, Gut',
    ],
    [
      'a column with a slip of the pen',
      { shifts, stops: stops.replace('Grund', 'Grunde') },
      'no-column',
      '`Grund`',
      'did you mean `Grunde`?',
    ],
    [
      'a column that stands there twice',
      { shifts, stops: stops.replace('Von;Bis', 'Von;Von;Bis') },
      'doubled-column',
      '`Von`',
      'different names',
    ],
    ['an empty file', { shifts: '', stops }, 'empty', 'empty', 'header'],
    ['a file of shifts without rows', { shifts: 'Beginn;Ende;Gut\n', stops }, 'no-rows', 'no rows', 'export'],
    ['zeros', { shifts, stops: new Uint8Array(5000) }, 'unreadable', 'not text', 'check'],
    [
      'a quote without an end',
      { shifts, stops: `${stops}"12.01.2026 06:10;b;c;d\n` },
      'unreadable',
      'never closed',
      'check',
    ],
    ['a line without an end', { shifts, stops: 'x'.repeat(2_000_000) }, 'unreadable', 'million', 'check'],
    [
      'a file that is not there',
      { shifts, stops, keys: { stops: '{file: stopps.csv, begins: Von, ends: Bis, reason: Grund}' } },
      'unreadable',
      'no such file',
      'check',
    ],
    [
      'times in another pattern',
      { shifts: shifts.replaceAll('12.01.2026', '2026-01-12'), stops },
      'mostly-unfit',
      '1 row of 1 holds no readable time',
      'times',
    ],
    [
      'a pattern that fits some rows only',
      {
        shifts,
        stops: `Von;Bis;Anlage;Grund\n${'2026-01-12 06:10;2026-01-12 06:20;Kleber;Stau\n'.repeat(2)}${'12.01.2026 06:10;12.01.2026 06:20;Kleber;Stau\n'.repeat(30)}`,
      },
      'mostly-unfit',
      '2 rows of 32',
      'times',
    ],
    [
      'texts for reasons',
      {
        shifts,
        stops: `Von;Bis;Anlage;Grund\n${Array.from({ length: 10_001 }, (_, n) => `12.01.2026 06:10;12.01.2026 06:20;Kleber;Text ${n}\n`).join('')}`,
      },
      'too-many-names',
      '10000 different',
      'codes',
    ],
  ])('%s', (_, written, code, words, fix) => {
    const record = recordOf(written)
    expect(isUsable(record)).toBe(false)
    const found = entry(record, code)
    expect(found.did).toBe('refused')
    expect(found.words).toContain(words)
    expect(found.fix).toContain(fix)
    expect(record.account[0]!.did).toBe('refused')
  })

  it('all of it is told at once', () => {
    const record = recordOf({
      shifts: shifts.replace('Ende', 'End'),
      stops: new Uint8Array(5),
      cases: 'a;b\n1;2\n',
      keys: { cases: '{file: cases.csv, at: Zeit}' },
    })
    expect(
      record.account.filter(({ did }) => did === 'refused').map(({ file, code }) => [file, code]),
    ).toEqual([
      ['shifts.csv', 'no-column'],
      ['stops.csv', 'unreadable'],
      ['cases.csv', 'no-column'],
    ])
  })
})

describe('a record that can be used', () => {
  it('of one row each says what one row says', () => {
    const record = recordOf({ shifts, stops })
    expect(isUsable(record)).toBe(true)
    expect(told(record)).toEqual([])
    expect(loggedInputs(record)).toHaveLength(4)
  })

  it('without any stop has counts of none, and says so', () => {
    const record = recordOf({ shifts, stops: 'Von;Bis;Anlage;Grund\n' })
    expect(isUsable(record)).toBe(true)
    expect(entry(record, 'no-stops').did).toBe('noted')
    expect(loggedInputs(record).map(({ count }) => count)).toEqual([0, 0, 0, 0])
  })

  it('leaves rows out that are too short, too long, or without a time, with their numbers', () => {
    const good = '12.01.2026 07:10;12.01.2026 07:14;Kleber;Stau\n'
    const more = Array.from({ length: 60 }, (_, n) =>
      good.replaceAll('07:1', `${`${7 + (n % 6)}`.padStart(2, '0')}:${Math.floor(n / 12)}`),
    ).join('')
    const record = recordOf({
      shifts,
      stops: `${stops}12.01.2026 06:20;12.01.2026 06:24\n12.01.2026 06:30;12.01.2026 06:34;Kleber;Stau;mehr\n12.01.2026 06:40;;Kleber;Stau\n31.02.2026 06:50;31.02.2026 06:55;Kleber;Stau\n${good.trim()};;\n${more}`,
    })
    expect(isUsable(record)).toBe(true)
    expect(told(record).slice(0, 4)).toEqual([
      ['short-row', 'left-out', [3], 1, 0],
      ['long-row', 'left-out', [4], 1, 0],
      ['empty-time', 'left-out', [5], 1, 0],
      ['no-such-date', 'left-out', [6], 1, 0],
    ])
    expect(entry(record, 'no-such-date').words).toContain('`31.02.2026 06:50`')
  })

  it('names the pattern that rows in another one would fit, and guesses nothing', () => {
    const many = Array.from(
      { length: 40 },
      (_, n) =>
        `12.01.2026 07:${`${n}`.padStart(2, '0')};12.01.2026 07:${`${n + 1}`.padStart(2, '0')};Kleber;Stau\n`,
    ).join('')
    const record = recordOf({
      shifts,
      stops: `Von;Bis;Anlage;Grund\n${many}01/12/2026 06:10;01/12/2026 06:14;Kleber;Stau\n`,
    })
    expect(record.stops).toHaveLength(40)
    expect(entry(record, 'unfit-time')).toMatchObject({ rows: [42], count: 1, did: 'left-out' })
    // the twelfth of January or the first of December: both are named
    expect(entry(record, 'other-pattern').words).toContain('`dd/MM/yyyy HH:mm` fits 2 of 2')
    expect(entry(record, 'other-pattern').words).toContain('`MM/dd/yyyy HH:mm` fits 2 of 2')
  })

  it('says what is assumed where nothing is said', () => {
    const record = recordOf({ shifts, stops, keys: { zone: '', 'seen-from': '' } })
    expect(told(record).map(([code]) => code)).toEqual(['no-zone', 'all-seen'])
    expect(record.account.slice(0, 2).map(({ did, fix }) => [did, fix.length > 0])).toEqual([
      ['noted', true],
      ['noted', true],
    ])
  })

  it('bears names of any sort', () => {
    const long = 'n'.repeat(10_000)
    const names = [
      '__proto__',
      'constructor',
      'toString',
      '<script>alert(1)</script>',
      '=1+1',
      '\u001b[31mred',
      '\u202eevil',
      long,
    ]
    const record = recordOf({
      shifts,
      stops: `Von;Bis;Anlage;Grund\n${names.map((name, n) => `12.01.2026 07:${10 + n};12.01.2026 07:${11 + n};${name};${name}\n`).join('')}`,
    })
    expect(record.stops.map(({ piece, means }) => [piece.slice(0, 20), means])).toEqual(
      names.map((name) => [name.slice(0, 20), null]),
    )
    const unknown = record.account.filter(({ code }) => code === 'unknown-reason')
    expect(unknown).toHaveLength(8)
    for (const { words } of record.account) {
      expect(words.length).toBeLessThan(600)
      // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must not be there
      expect(words).not.toMatch(/[\u0000-\u001f\u202e]/)
    }
    expect(entry(record, 'long-name')).toMatchObject({ rows: [9], count: 1, did: 'changed' })
  })

  it('of Latin-1 with umlauts and of UTF-8 with its mark is the same', () => {
    const text = 'Von;Bis;Anlage;Grund\n12.01.2026 06:10;12.01.2026 06:14;Kühlstrecke;Störung groß\n'
    const keys = { means: '{Störung groß: line.sealer.breakdowns}' }
    for (const bytes of [
      Buffer.from(text, 'latin1'),
      Buffer.from(`\ufeff${text}`),
      Buffer.from(text.normalize('NFD')),
    ]) {
      const record = recordOf({ shifts, stops: bytes, keys })
      expect(record.stops.map(({ piece, means }) => [piece, means])).toEqual([
        ['Kühlstrecke', 'line.sealer.breakdowns'],
      ])
    }
  })
})

describe('changes of the clock', () => {
  const night = (day: string, next: string) => `Beginn;Ende;Gut\n${day} 22:00;${next} 06:00;4000\n`

  it('the hour that is left out in spring is no time, and the shift is an hour shorter', () => {
    const record = recordOf({
      shifts: night('28.03.2026', '29.03.2026'),
      stops:
        'Von;Bis;Anlage;Grund\n29.03.2026 01:50;29.03.2026 03:05;Kleber;Stau\n29.03.2026 02:10;29.03.2026 02:20;Kleber;Motor\n',
    })
    expect(record.shifts[0]!.ends - record.shifts[0]!.begins).toBe(7 * 3600)
    // from 01:50 to 03:05 on the clock is a quarter of an hour
    expect(record.stops.map(({ begins, ends }) => ends - begins)).toEqual([900])
    expect(told(record)[0]).toEqual(['no-such-time', 'left-out', [3], 1, 0])
    expect(entry(record, 'no-such-time').fix).toContain('`zone`')
  })

  it('the hour that comes twice in autumn is told apart by the order of rows, and that is said', () => {
    const rows = ['01:50;01:55', '02:10;02:20', '02:50;02:55', '02:05;02:15', '02:40;03:10', '03:20;03:25']
    const text = rows.map(
      (row) =>
        `${row
          .split(';')
          .map((time) => `25.10.2026 ${time}`)
          .join(';')};Kleber;Stau\n`,
    )
    const first = Date.UTC(2026, 9, 24, 22) / 1000
    for (const order of [text, [...text].reverse()]) {
      const record = recordOf({
        shifts: night('24.10.2026', '25.10.2026'),
        stops: `Von;Bis;Anlage;Grund\n${order.join('')}`,
      })
      expect(record.shifts[0]!.ends - record.shifts[0]!.begins).toBe(9 * 3600)
      expect(record.stops.map(({ begins, ends }) => [(begins - first) / 60, (ends - begins) / 60])).toEqual([
        [110, 5],
        [130, 10],
        [170, 5],
        [185, 10],
        [220, 30],
        [260, 5],
      ])
      expect(entry(record, 'twice')).toMatchObject({ did: 'noted', count: 4 })
    }
  })

  it('a stop from the first to the second of the two hours ends after it begins', () => {
    const record = recordOf({
      shifts: night('24.10.2026', '25.10.2026'),
      stops: 'Von;Bis;Anlage;Grund\n25.10.2026 02:50;25.10.2026 02:10;Kleber;Stau\n',
    })
    expect(record.stops.map(({ begins, ends }) => (ends - begins) / 60)).toEqual([20])
  })
})
