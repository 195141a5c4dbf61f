/** Recorded logs from their file: replayed exactly, hashed, copied while they are short, read in bounded memory. */

import { spawnSync } from 'node:child_process'
import {
  closeSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  openSync,
  readFileSync,
  writeFileSync,
  writeSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { setFlagsFromString } from 'node:v8'
import { runInNewContext } from 'node:vm'
import { beforeAll, describe, expect, it } from 'vitest'
import { FilesBeside } from '../../src/cli/files.js'
import type { RunResult } from '../../src/questions/run/document.js'
import { loadScenario } from '../../src/scenario/load.js'
import { call } from './in-process.js'

const one = ['--workers', '1']

const scenario = (length = '1 min') => `title: A replayed shift
cases: {bars: {length: 400 mm, width: 300 mm, height: 300 mm}, flakes: {length: 600 mm, width: 300 mm, height: 300 mm}}
arrivals: {dock: {log: {file: arrivals.csv, time: seconds, case: kind, unit: s}, when-full: queue}}
line: {sealer: {type: sealer, jams: {chance: 5 %, clear: {exponential: {mean: 3 s}}}}}
shift: {length: ${length}, run-out: 5 min}
study: {shifts: 4}
`

function folderWith(csv: string | Uint8Array, text = scenario()): string {
  const folder = mkdtempSync(path.join(tmpdir(), 'tapeshift-log-'))
  writeFileSync(path.join(folder, 'arrivals.csv'), csv)
  writeFileSync(path.join(folder, 'line.yaml'), text)
  return folder
}

const short = 'seconds,lot,kind\n1,7,flakes\n2,7,bars\n2,8,bars\n30.5,8,flakes\n59,9,bars\n61,9,bars\n'

async function run(cwd: string, ...options: string[]): Promise<RunResult> {
  const { code, out, err } = await call(['run', 'line.yaml', '--json', ...one, ...options], { cwd })
  expect(code, err).toBe(0)
  return JSON.parse(out) as RunResult
}

async function refusal(csv: string | Uint8Array): Promise<string> {
  const { code, out, err } = await call(['run', 'line.yaml', ...one], { cwd: folderWith(csv) })
  expect([code, out]).toEqual([3, ''])
  return err
}

describe('a log', () => {
  it('brings the same cases in every shift: those of its rows that lie in the shift', async () => {
    const result = await run(folderWith(short), '--no-files')
    expect(result.arrivals.dock!.arrived).toMatchObject({ mean: 5, sd: 0 })
    expect(result.measures.output!.mean).toBe(5)
    // shifts differ all the same: jams are drawn
    expect(result.measures['time-in-system']!.sd).toBeGreaterThan(0)
  })

  it('is copied beside the report, where the written scenario gives the same again, hash included', async () => {
    const cwd = folderWith(short)
    const first = await run(cwd)
    const out = path.join(cwd, 'out/line-run')
    expect(readFileSync(path.join(out, 'arrivals.csv'), 'utf8')).toBe(short)
    const again = await call(['run', 'scenario.yaml', '--json', '--no-files', ...one], { cwd: out })
    const second = JSON.parse(again.out) as RunResult
    expect(second.measures).toEqual(first.measures)
    expect(second.made.scenario.sha256).toBe(first.made.scenario.sha256)
  })

  it('is part of the hash of the scenario', async () => {
    const [first, same, other] = await Promise.all(
      [short, short, short.replace('59,', '58,')].map((csv) => run(folderWith(csv), '--no-files')),
    )
    expect(same!.made.scenario.sha256).toBe(first!.made.scenario.sha256)
    expect(other!.made.scenario.sha256).not.toBe(first!.made.scenario.sha256)
  })

  it('may have a byte order mark, CRLF, quotes, empty lines and no last line end', async () => {
    const odd = `\uFEFF"seconds",kind\r\n1,"flakes"\r\n\r\n 2 ,bars\r\n3,bars`
    const result = await run(folderWith(odd), '--no-files')
    expect(result.arrivals.dock!.arrived!.mean).toBe(3)
  })

  it('is shared by several threads with the same result', () => {
    const cwd = folderWith(short)
    const program = fileURLToPath(new URL('../../.build/cli/main.js', import.meta.url))
    const [alone, both] = ['1', '2'].map((workers) => {
      const called = spawnSync(
        process.execPath,
        [program, 'run', 'line.yaml', '--json', '--no-files', '--workers', workers],
        { cwd, encoding: 'utf8' },
      )
      expect(called.status, called.stderr).toBe(0)
      return called.stdout
    })
    expect(both).toBe(alone)
  })
})

describe('orders', () => {
  it('end, and the report says so beside how many are done', async () => {
    const cwd = folderWith('')
    writeFileSync(
      path.join(cwd, 'line.yaml'),
      scenario().replace(/\{log: .*unit: s\}/, '{orders: [{case: bars, quantity: 3, time-between: 5 s}]'),
    )
    const { code, out, err } = await call(['run', 'line.yaml', '--no-files', '--full', ...one], { cwd })
    expect([code, err]).toEqual([0, ''])
    expect(out).toContain('After the last order of dock no more cases arrive from there in a shift.')
    expect(out).toMatch(/orders completed 1\b/)
    expect(out).not.toMatch(/NaN|undefined|Infinity/)
  })
})

describe('a log that cannot be replayed is a finding', () => {
  it.each([
    [
      'a time that goes back',
      'seconds,kind\n5,bars\n4,bars\n',
      /row 3 of column seconds is earlier than the row before: `4`/,
    ],
    ['no time', 'seconds,kind\n5,bars\nsix,bars\n', /row 3 of column seconds is not a time: `six`/],
    [
      'a case that does not exist',
      'seconds,kind\n5,bars\n6,flake\n',
      /row 3 of column kind does not name a case: `flake`[\s\S]*did you mean `flakes`/,
    ],
    [
      'a missing column',
      'second,kind\n5,bars\n',
      /has no column `seconds`; it has second, kind[\s\S]*did you mean `second`/,
    ],
    ['no rows', 'seconds,kind\n', /the file holds no rows/],
    ['an empty file', '', /the file holds no rows/],
    ['a row too long', 'seconds,kind\n5,bars,7\n', /is not a CSV file: .*line 2/],
    ['a quote that is never closed', 'seconds,kind\n5,"bars\n6,bars\n', /a quote is opened and never closed/],
    ['one row without an end', `seconds,kind\n5,"${'bars\n'.repeat(400_000)}`, /is not a CSV file/],
    [
      'times of the clock',
      'seconds,kind\n1795000000,bars\n',
      /when the shift is over: times count from the start of the shift/,
    ],
  ])('%s', async (_, csv, message) => {
    expect(await refusal(csv)).toMatch(message)
  })

  it('bytes that are no text', async () => {
    const bytes = Uint8Array.from({ length: 300_000 }, (_, index) => (index * 7919 + (index >> 3)) % 256)
    const err = await refusal(bytes)
    expect(err).toContain('arrivals.dock.log')
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these must not reach the terminal
    expect(err).not.toMatch(/[\u0000-\u0009\u000b-\u001f]/)
  })

  it('a folder, a file that is not there, a file elsewhere', async () => {
    const cwd = folderWith(short)
    mkdirSync(path.join(cwd, 'folder'))
    for (const [file, message] of [
      ['folder', /is not a file/],
      ['nowhere.csv', /there is no such file/],
      ['../arrivals.csv', /is outside the folder/],
    ] as const) {
      writeFileSync(path.join(cwd, 'line.yaml'), scenario().replace('arrivals.csv', file))
      const { code, err } = await call(['run', 'line.yaml', ...one], { cwd })
      expect(code).toBe(3)
      expect(err).toMatch(message)
    }
  })
})

describe('a log of two million rows', () => {
  const rows = 2_000_000
  let folder: string

  beforeAll(() => {
    folder = folderWith('')
    const handle = openSync(path.join(folder, 'arrivals.csv'), 'w')
    writeSync(handle, 'seconds,kind\n')
    for (let from = 0; from < rows; from += 10_000)
      writeSync(
        handle,
        Array.from(
          { length: 10_000 },
          (_, index) => `${((from + index) / 100).toFixed(2)},${index % 3 ? 'bars' : 'flakes'}\n`,
        ).join(''),
      )
    closeSync(handle)
  })

  it('is read in parts: the heap rises by less than its text is long', () => {
    setFlagsFromString('--expose-gc')
    const collect = runInNewContext('gc') as () => void
    collect()
    const before = process.memoryUsage().heapUsed
    let most = before
    let seen = 0
    const beside = new FilesBeside(folder)
    const { scenario: loaded } = loadScenario(scenario(), {
      readRows: (file, taker) =>
        beside.readRows(file, {
          header: (names) => taker.header(names),
          row: (cells) => {
            if (seen++ % 20_000 === 0) most = Math.max(most, process.memoryUsage().heapUsed)
            return taker.row(cells)
          },
        }),
    })
    const { times, kinds } = loaded.arrivals.dock!.log!
    expect(seen).toBe(rows)
    expect([times.length, kinds!.length]).toEqual([rows, rows])
    expect(times[1_234_567]).toBeCloseTo(12_345.67, 9)
    expect([...kinds!.slice(0, 4)]).toEqual([1, 0, 0, 1])
    // rows as objects would take 200 MB and more; with this reader some 15 MB of it come and go
    expect(most - before).toBeLessThan(60e6)
    collect()
    expect(process.memoryUsage().heapUsed - before).toBeLessThan(5e6)
    // threads share the numbers and do not copy them
    expect(times.buffer).toBeInstanceOf(SharedArrayBuffer)
  })

  it('travels in no page to try the line in, and that is said', async () => {
    const { code, err } = await call(['try', 'line.yaml'], { cwd: folder })
    expect(code).toBe(2)
    expect(err).toMatch(
      /^error: a page carries logs of at most 10 MB, and the scenario reads arrivals\.csv \(\d+ MB\): cut the log to fewer days, or simulate the line with `tapeshift run`/,
    )
    expect(existsSync(path.join(folder, 'out/line-try'))).toBe(false)
  })

  it('is not copied beside the report, and that is said', async () => {
    // two million cases in a shift are more than any sealer takes, which check calls an error
    const argv = ['run', 'line.yaml', '--shifts', '2', '--anyway', ...one]
    // a page of a study before would be of another line
    mkdirSync(path.join(folder, 'out/line-run'), { recursive: true })
    writeFileSync(path.join(folder, 'out/line-run/try.html'), 'of a study before')
    const { code, err, out } = await call(argv, { cwd: folder })
    expect(code).toBe(0)
    expect(out).toContain('Report: out/line-run/report.html')
    expect(err).toMatch(/^note: arrivals\.csv \(\d+ MB\) was not copied: put it beside scenario\.yaml/)
    expect(err).toContain(
      'note: try.html was not written: a page carries logs of at most 10 MB; cut the log to',
    )
    expect(existsSync(path.join(folder, 'out/line-run/arrivals.csv'))).toBe(false)
    expect(existsSync(path.join(folder, 'out/line-run/try.html'))).toBe(false)
  })

  it('is read once for all variants', () => {
    let reads = 0
    const text = `${scenario()}variants: {long: {set: {line.sealer.bed: 2 m}}, queue: {set: {arrivals.dock.when-full: turn-away}}}\n`
    const { scenario: loaded } = loadScenario(text, {
      variant: 'queue',
      readRows: (_, taker) => {
        reads++
        taker.header(['seconds', 'kind'])
        taker.row(['1', 'bars'])
      },
    })
    expect(reads).toBe(1)
    expect([...loaded.arrivals.dock!.log!.times]).toEqual([1])
  })
})
