/** `tapeshift fit` of records that are bad, odd or hostile: refused with file, rows and mend, or told of; never a fit that hides it. */
import { execFileSync } from 'node:child_process'
import { existsSync, mkdirSync, readFileSync, symlinkSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import type { FitResult } from '../../src/questions/fit/document.js'
import { line, type Stop, shiftRows, stopRows } from '../questions/fits.js'
import { recordText } from '../record/texts.js'
import { fitted, folderOf } from './fit-folder.js'
import { call } from './in-process.js'

const read = (...names: string[]) => readFileSync(path.join(...names), 'utf8')

describe('a bad record', () => {
  const jam: Stop = [1, 30_000, 60]
  const backwards = (rows: number) =>
    `Von;Bis;Anlage;Grund\n${'2026-01-01 07:10;2026-01-01 07:02;Kleber;Stau\n'.repeat(rows)}`

  it.each<[string, Record<string, string | Uint8Array>, number, string[]]>([
    [
      'stops that end before they begin',
      {
        'stops.csv':
          backwards(1) +
          stopRows([jam]).split('\n').slice(1).join('\n') +
          backwards(3).split('\n').slice(1).join('\n'),
      },
      3,
      ['stops.csv, row 2, 4, 5, 6: 4 stops of 5', 'end before the beginning', 'right columns'],
    ],
    [
      'a column that is missing',
      { 'stops.csv': stopRows([jam]).replace('Grund', 'Gründe') },
      3,
      ['stops.csv, row 1: there is no column `Grund`', 'fix:   did you mean `Gründe`?'],
    ],
    [
      'days that do not exist',
      { 'stops.csv': stopRows([jam, jam]).replaceAll('2026-01-01', '2026-02-30') },
      3,
      ['stops.csv: 2 rows of 2 hold no readable time', 'correct `times`'],
    ],
    [
      'two patterns',
      {
        'stops.csv': `${stopRows([jam, [2, 30_000, 60]])}${'01.02.2026 06:00;01.02.2026 06:01;Kleber;Stau\n'.repeat(2)}`,
      },
      3,
      ['2 rows of 4 hold no readable time'],
    ],
    ['an empty file', { 'shifts.csv': '' }, 3, ['shifts.csv: the file is empty', 'header line']],
    [
      'a header alone',
      { 'shifts.csv': shiftRows(0) },
      3,
      ['shifts.csv: the file has a header line but no rows'],
    ],
    [
      'bytes that are no text',
      { 'stops.csv': new Uint8Array(2000).fill(7).fill(0, 500) },
      3,
      ['stops.csv', 'not text', 'save it as CSV'],
    ],
    ['no YAML', { 'plant.yaml': 'record: [' }, 3, ['plant.yaml:1:', 'not YAML']],
    ['a scenario', { 'plant.yaml': line }, 3, ['this is a scenario']],
    [
      'a key that it does not know',
      { 'plant.yaml': `${recordText()}  reasons: {}\n` },
      3,
      ['plant.yaml:', 'record.reasons', 'did you mean'],
    ],
    [
      'a file that is not there',
      { 'plant.yaml': recordText().replace('stops.csv', 'stop.csv') },
      3,
      ['stop.csv', 'no such file'],
    ],
    [
      'a file outside its folder',
      { 'plant.yaml': recordText().replace('stops.csv', '../stops.csv') },
      3,
      ['is outside the folder of the record'],
    ],
  ])('with %s is refused, and nothing is written', async (_, files, exit, words) => {
    const cwd = folderOf(files)
    const { code, out, err } = await fitted(cwd)
    expect([code, out], err).toEqual([exit, ''])
    for (const each of words) expect(err).toContain(each)
    expect(err).toMatch(/\n {4}fix: {3}\S/)
    expect(err).not.toContain('·')
    expect(existsSync(path.join(cwd, 'out'))).toBe(false)
  })

  it('that is not there, or a folder, is refused: 5 and 2', async () => {
    const cwd = folderOf()
    mkdirSync(path.join(cwd, 'folder.yaml'))
    expect((await call(['fit', 'none.yaml'], { cwd })).code).toBe(5)
    const folder = await call(['fit', 'folder.yaml'], { cwd })
    expect(folder.code).toBe(2)
    expect(folder.err).toContain('is a folder: give the path of the record file in it')
  })

  it.each(['a pipe', 'a folder', 'a device'])('whose log is %s is refused at once', async (what) => {
    const cwd = folderOf({ 'plant.yaml': recordText({ times: 'iso' }).replace('stops.csv', 'odd.csv') })
    const odd = path.join(cwd, 'odd.csv')
    if (what === 'a pipe') execFileSync('mkfifo', [odd])
    else if (what === 'a folder') mkdirSync(odd)
    else symlinkSync('/dev/zero', odd)
    const { code, err } = await fitted(cwd)
    expect(code).toBe(3)
    expect(err).toMatch(/odd\.csv: `odd\.csv` (is not a file|leads outside the folder)/)
  })

  it('without an end is refused at once', async () => {
    const { code, err } = await call(['fit', '/dev/zero'])
    expect([code, err]).toEqual([2, 'error: /dev/zero is not a file: give the path of the record file\n'])
  })
})

describe('an odd record', () => {
  it('of overlapping stops and two pieces in one row tells of each with its row', async () => {
    const stops: Stop[] = [
      [1, 30_000, 300],
      [1, 30_100, 100],
      [2, 30_000, 60, 'Stau', 'Kleber'],
      [2, 31_000, 60, 'Stau', 'Palettierer'],
      [3, 30_000, 60, 'Stau', 'Kleber/Palettierer'],
    ]
    const { code, out } = await fitted(folderOf({ 'stops.csv': stopRows(stops) }), '--json', '--no-files')
    expect(code).toBe(0)
    const { account, inputs } = JSON.parse(out) as FitResult
    const told = (code: string) => account.find((each) => each.code === code)
    expect(told('overlap')).toMatchObject({ did: 'changed', rows: [3], seconds: 100 })
    expect(told('two-pieces')).toMatchObject({ did: 'left-out', rows: [6], seconds: 60 })
    expect(inputs[0]).toMatchObject({ path: 'line.sealer.jams.chance', events: 3 })
  })

  it('of one row says how little that is', async () => {
    const { code, out } = await fitted(
      folderOf({ 'shifts.csv': shiftRows(1), 'stops.csv': stopRows([[1, 30_000, 60]]) }),
      '--no-files',
      '--full',
    )
    expect(code).toBe(0)
    expect(out.replace(/\s+/g, ' ')).toContain(
      'Based on 1 event: the true rate may be 0.025 to 5.6 times this',
    )
  })

  it('with names that would like to be more prints them harmless, in the terminal and in the page', async () => {
    const evil = [
      '__proto__',
      'constructor',
      '<img src=x onerror=alert(1)>',
      '\u001b[31mred\u001b]0,title\u0007',
      '\u202eturned',
      'x'.repeat(10_000),
    ]
    const stops = evil.flatMap((name, n): Stop[] => [
      [1 + n, 30_000, 60, 'Stau', name],
      [1 + n, 40_000, 60, name, 'Kleber'],
    ])
    const cwd = folderOf({
      'plant.yaml': recordText({ times: 'iso', title: '"</title><script>alert(1)</script> \\e[31m"' }),
      'stops.csv': stopRows(stops),
    })
    const { code, out, err } = await fitted(cwd, '--full')
    expect([code, err]).toEqual([0, ''])
    // biome-ignore lint/suspicious/noControlCharactersInRegex: that none is printed is what this looks for
    expect(out).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202e]/)
    expect(out).toContain('__proto__')
    expect(out).not.toContain('x'.repeat(300))
    const page = read(cwd, 'out/plant-fit/report.html')
    expect(page).not.toContain('<script>alert')
    expect(page).not.toContain('<img src=x')
    expect(page).not.toContain('\u202e')
    expect((JSON.parse(read(cwd, 'out/plant-fit/result.json')) as FitResult).inputs[0]!.events).toBe(6)
    const again = await call(['report', 'out/plant-fit/result.json', '--out', 'again.html'], { cwd })
    expect(again.code, again.err).toBe(0)
    expect(read(cwd, 'again.html') === page).toBe(true)
  })
})
