/** Logs of millions of rows: read in little room, and refused as soon as they are too long. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { readLogOf } from '../../src/cli/rows.js'
import type { LogTaker } from '../../src/record/dialect.js'
import { loggedInputs } from '../../src/record/inputs.js'
import { isUsable, readRecord } from '../../src/record/read.js'
import { mostCases } from '../../src/record/read-cases.js'
import { recordText } from '../record/texts.js'

const shifts = 'Beginn;Ende;Gut\n12.01.2026 06:00;12.01.2026 14:00;4000\n'
const stops = 'Von;Bis;Anlage;Grund\n12.01.2026 06:10;12.01.2026 06:14;Kleber;Stau\n'

describe('very long files', () => {
  /** Ten million rows, none of which is kept by whoever makes them. */
  const cases = (count: number, given: { rows: number }) => (taker: LogTaker) => {
    taker.header(['Zeit'])
    for (let row = 2; row < count + 2; row++) {
      given.rows++
      const second = row % 60
      if (
        !taker.row(
          [`12.01.2026 07:${row % 50 < 10 ? '0' : ''}${row % 50}:${second < 10 ? '0' : ''}${second}`],
          row,
        )
      )
        break
    }
    taker.written({ delimiter: ';', encoding: 'utf-8' })
  }

  it('of more rows than a record needs are refused as soon as that is known', () => {
    const given = { rows: 0 }
    const record = readRecord(
      recordText({ cases: '{file: cases.csv, at: Zeit, times: "dd.MM.yyyy HH:mm:ss"}' }),
      {
        name: 'plant.yaml',
        readLog: (file, taker) => {
          if (file === 'cases.csv') cases(10_000_000, given)(taker)
          else {
            const [head, ...rows] = (file === 'shifts.csv' ? shifts : stops).trim().split('\n')
            taker.header(head!.split(';'))
            for (const [index, row] of rows.entries()) taker.row(row.split(';'), index + 2)
          }
        },
      },
    )
    expect(given.rows).toBe(mostCases + 1)
    expect(isUsable(record)).toBe(false)
    expect(record.account[0]).toMatchObject({
      code: 'too-many-rows',
      did: 'refused',
      file: 'cases.csv',
      words: 'the file has more than 5000000 rows',
    })
    expect(record.account[0]!.fix).toContain('shorter period')
    expect(record.cases).toBeNull()
  })

  it('of a million rows are read', () => {
    const folder = mkdtempSync(path.join(os.tmpdir(), 'tapeshift-record-'))
    const two = (number: number) => `${number}`.padStart(2, '0')
    // a case every 6 s for 8 h a day: 4800 a day, the first at 06:00:00 and the last at 13:59:54
    const days = Array.from({ length: 208 }, (_, n) => new Date(Date.UTC(2026, 0, 1 + n)))
    const dates = days.map((day) => `${two(day.getUTCDate())}.${two(day.getUTCMonth() + 1)}.2026`)
    const rows = (date: string) =>
      Array.from(
        { length: 4800 },
        (_, n) =>
          `${date} ${two(6 + Math.floor(n / 600))}:${two(Math.floor(n / 10) % 60)}:${two((n % 10) * 6)}\n`,
      ).join('')
    try {
      writeFileSync(
        path.join(folder, 'shifts.csv'),
        `Beginn;Ende;Gut\n${dates.map((date) => `${date} 06:00;${date} 14:00;4800\n`).join('')}`,
      )
      writeFileSync(path.join(folder, 'stops.csv'), stops)
      writeFileSync(path.join(folder, 'cases.csv'), `Zeit\n${dates.map(rows).join('')}`)
      const record = readRecord(
        recordText({ cases: '{file: cases.csv, at: Zeit, times: "dd.MM.yyyy HH:mm:ss"}' }),
        {
          readLog: (file, taker) => readLogOf(path.join(folder, file), file, taker, () => {}),
        },
      )
      expect(isUsable(record)).toBe(true)
      expect(record.cases!.times).toHaveLength(998_400)
      const between = loggedInputs(record).find(({ what }) => what === 'time-between')!
      // one stop of 4 min lies over 40 gaps, and the one that ends as it begins is whole
      expect(between).toMatchObject({
        count: 208 * 4799 - 40,
        leftOut: 40,
        sample: { seen: [{ clocked: 6 }] },
      })
    } finally {
      rmSync(folder, { recursive: true })
    }
  })
})
