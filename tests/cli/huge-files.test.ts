/** Files of a gigabyte in place of each that is read: refused in few words, in the memory of a small machine. */
import { spawnSync } from 'node:child_process'
import { appendFileSync, copyFileSync, mkdtempSync, truncateSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { beforeAll, describe, expect, it } from 'vitest'
import { expectTried } from '../tried.js'
import { smallLine } from './in-process.js'

const program = fileURLToPath(new URL('../../.build/cli/main.js', import.meta.url))
const cwd = mkdtempSync(path.join(tmpdir(), 'tapeshift-huge-'))
const record = 'scenarios/lindmoor-record'

/** Of memory, kB: what the system gave at most. */
const most = 300_000
const telling = `process.on('exit', () => process.stderr.write('\\n' + process.resourceUsage().maxRSS))`

/** Calls the program; what a code of a fault says, and the memory that it took, kB. */
function called(argv: readonly string[], input?: Buffer) {
  const { status, signal, stdout, stderr } = spawnSync(
    process.execPath,
    [
      '--max-old-space-size=300',
      `--import=data:text/javascript,${encodeURIComponent(telling)}`,
      program,
      ...argv,
    ],
    { cwd, input, encoding: 'utf8' },
  )
  expect(signal).toBeNull()
  const end = stderr.lastIndexOf('\n')
  return { code: status, said: stdout + stderr.slice(0, end), memory: Number(stderr.slice(end + 1)) }
}

/** A gigabyte that begins so and goes on with nothing: it takes no room on the disk. */
function huge(name: string, begin = ''): void {
  writeFileSync(path.join(cwd, name), begin)
  truncateSync(path.join(cwd, name), 1e9)
}

const withTimes = (name: string, times: string) =>
  writeFileSync(path.join(cwd, name), smallLine.replace('time-between: {exponential: {mean: 6 s}}', times))

beforeAll(() => {
  huge('line.yaml')
  huge('comment.yaml', '# a line\n')
  huge('result.json', '{"format":"tapeshift-result/1"')
  huge('log.csv', 'at\n1\n2\n')
  huge('empty.csv')
  withTimes('observed.yaml', 'time-between: {observed: {file: log.csv, column: at, unit: s}}')
  withTimes('logged.yaml', 'log: {file: log.csv, time: at, unit: s}')
  withTimes('empty.yaml', 'log: {file: empty.csv, time: at, unit: s}')
  // 30 MB of short rows, which would be a gigabyte of cells
  withTimes('rows.yaml', 'time-between: {observed: {file: rows.csv, column: at, unit: s}}')
  writeFileSync(path.join(cwd, 'rows.csv'), `at\n${'1\n'.repeat(4_000_000)}`)
  for (const name of ['record.yaml', 'shifts.csv', 'cases.csv', 'stops.csv'])
    copyFileSync(`${record}/${name}`, path.join(cwd, name))
  appendFileSync(path.join(cwd, 'stops.csv'), '"')
  truncateSync(path.join(cwd, 'stops.csv'), 1e9)
  huge('long.yaml', 'record: {}\n')
  writeFileSync(path.join(cwd, 'small.yaml'), smallLine)
})

const attacks: [string, string[], number, string][] = [
  ['a scenario', ['check', 'line.yaml'], 3, '[too-large]'],
  ['a scenario that begins as one', ['run', 'comment.yaml', '--no-files'], 3, '[too-large]'],
  ['a result', ['report', 'result.json'], 2, 'far more than any result'],
  ['a CSV file of observed times', ['check', 'observed.yaml'], 3, 'longer than 30 MB'],
  ['a recorded log', ['check', 'logged.yaml'], 3, 'is not a CSV file'],
  ['a recorded log of nothing', ['check', 'empty.yaml'], 3, 'is not a CSV file'],
  ['a CSV file of millions of rows', ['check', 'rows.yaml'], 3, 'more than 1 million rows'],
  ['a log of a record', ['fit', 'record.yaml', '--no-files'], 3, 'stops.csv'],
  ['a record', ['fit', 'long.yaml', '--no-files'], 3, '[too-large]'],
]

describe('a file of a gigabyte in place of', () => {
  it.each(attacks)('%s', (_, argv, code, words) => {
    const end = called(argv)
    expect(end.code, end.said).toBe(code)
    expect(end.said).toContain(words)
    // a foreign file is not repeated
    expect(end.said.length).toBeLessThan(3000)
    expect(end.memory).toBeGreaterThan(0)
    expect(end.memory).toBeLessThan(most)
  })

  it('a journal', () => {
    // one that begins as it should, for the study goes on with it
    const out = path.join(cwd, 'out')
    const study = ['run', 'small.yaml', '--shifts', '2', '--workers', '1', '--quiet', '--out', out]
    expect(called(study).code).toBe(0)
    huge('out/journal.ndjson', '{"format":"tapeshift-journal/2"\n')
    const end = called([...study, '--resume'])
    expect([end.code, end.said]).toEqual([2, expect.stringContaining('is not a journal of this program')])
    expect(end.memory).toBeLessThan(most)
  })

  it('standard input, which does not end', () => {
    const endless = Buffer.alloc(100_000_000, '{"a":1}\n')
    for (const [command, code] of [
      ['report', 5],
      ['check', 3],
    ] as const) {
      const end = called([command, '-'], endless)
      expect(end.code, end.said).toBe(code)
      expect(end.memory).toBeLessThan(most)
    }
  })

  it('each is counted', () => expectTried('huge files', attacks.length + 3))
})
