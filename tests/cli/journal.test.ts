/** A journal that somebody altered, one that is no file, and two studies in one folder. */
import { execFileSync, spawnSync } from 'node:child_process'
import { existsSync, mkdirSync, mkdtempSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs'
import { hostname, tmpdir } from 'node:os'
import path from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { lineOf, readLine } from '../../src/cli/journal-lines.js'
import { lock } from '../../src/cli/lock.js'
import { call, smallLine } from './in-process.js'

const names = ['result.json', 'shifts.csv', 'report.html']
const argv = ['run', 'line.yaml', '--workers', '1', '--quiet', '--out', 'out']

function place(): string {
  const cwd = mkdtempSync(path.join(tmpdir(), 'tapeshift-journal-'))
  writeFileSync(path.join(cwd, 'line.yaml'), smallLine)
  mkdirSync(path.join(cwd, 'out'))
  return cwd
}

let lines: string[]
let undisturbed: string[]

beforeAll(async () => {
  const whole = place()
  expect((await call(argv, { cwd: whole })).code).toBe(0)
  undisturbed = names.map((name) => readFileSync(path.join(whole, 'out', name), 'utf8'))
  const long = place()
  expect((await call([...argv, '--shifts', '100000'], { cwd: long, interruptAfter: 1500 })).code).toBe(130)
  lines = readFileSync(path.join(long, 'out', 'journal.ndjson'), 'utf8')
    .split(/(?<=\n)/)
    .slice(0, 6)
}, 120_000)

/** Goes on from such a journal: what is said, whether the bytes are those of an undisturbed study. */
async function resumed(journal: readonly string[]) {
  const cwd = place()
  writeFileSync(path.join(cwd, 'out', 'journal.ndjson'), journal.join(''))
  const { code, err } = await call([...argv, '--resume'], { cwd })
  const isUndisturbed =
    code === 0 &&
    names.every((name, index) => readFileSync(path.join(cwd, 'out', name), 'utf8') === undisturbed[index])
  return { code, err, isUndisturbed }
}

const altered = (alter: (line: string) => string): string[] =>
  lines.map((line, index) => (index === 3 ? alter(line) : line))

describe('a journal of which one line was altered', () => {
  it.each<[string, (line: string) => string]>([
    ['a value', (line) => line.replace('"values":[', '"values":[1')],
    ['a value removed', (line) => line.replace(/"values":\[[^,]*,/, '"values":[')],
    ['a value doubled', (line) => line.replace(/"values":\[([^,]*),/, '"values":[$1,$1,')],
    ['another shift number', (line) => line.replace('"shift":3', '"shift":9')],
    ['cut short', (line) => `${line.slice(0, 40)}\n`],
    ['no JSON', () => '{]\n'],
    ['nothing', () => '\n'],
  ])('%s: that shift is simulated anew and the rest kept, and it says so', async (_, alter) => {
    const journal = altered(alter)
    expect(journal[3]).not.toBe(lines[3])
    const { code, err, isUndisturbed } = await resumed(journal)
    expect([code, isUndisturbed]).toEqual([0, true])
    expect(err).toContain('1 line of')
    expect(err).toContain('damaged: their shifts are simulated again')
  })

  it('a line that stands twice is the same shift', async () => {
    expect(await resumed(altered((line) => line + line))).toEqual({ code: 0, err: '', isUndisturbed: true })
  })

  it('one with a checksum of its own but no shift is left out too', async () => {
    for (const wrong of [{ shift: 0 }, { shift: 2.5 }, { values: ['1'] }, { held: 3 }]) {
      const { err, isUndisturbed } = await resumed(
        altered((line) => lineOf({ ...readLine(line.trimEnd()), ...wrong })),
      )
      expect([isUndisturbed, err.includes('1 line of')], JSON.stringify(wrong)).toEqual([true, true])
    }
  })

  it('whose first line was altered is none of this program', async () => {
    const { code, err } = await resumed(
      lines.map((line, index) => (index === 0 ? line.replace('seed', 'seeds') : line)),
    )
    expect(code).toBe(2)
    expect(err).toContain('is not a journal of this program')
  })
})

describe('what stands in the place of a journal', () => {
  it('endless: refused at once', async () => {
    const cwd = place()
    symlinkSync('/dev/zero', path.join(cwd, 'out', 'journal.ndjson'))
    const { code, err } = await call(argv, { cwd })
    expect(code).toBe(2)
    expect(err).toContain('journal.ndjson is a link, not a file')
  })

  it('a pipe that nobody writes into: refused, not waited for', async () => {
    const cwd = place()
    execFileSync('mkfifo', [path.join(cwd, 'out', 'journal.ndjson')])
    const { code, err } = await call(argv, { cwd })
    expect(code).toBe(2)
    expect(err).toContain('journal.ndjson is not a file')
  })
})

describe('two studies in one folder', () => {
  const held = (cwd: string, holder: object) =>
    writeFileSync(path.join(cwd, 'out', 'journal.lock'), `${JSON.stringify(holder)}\n`)

  it('the second is refused while the first is at work, whose shifts stay', async () => {
    const cwd = place()
    const release = lock(path.join(cwd, 'out', 'journal.lock'))
    const { code, err } = await call(argv, { cwd })
    expect(code).toBe(2)
    expect(err).toContain(`another study is running in this folder: process ${process.pid} on ${hostname()}`)
    release()
    expect((await call(argv, { cwd })).code).toBe(0)
    expect(existsSync(path.join(cwd, 'out', 'journal.lock'))).toBe(false)
  })

  it('a process that has ended holds nothing, even where another one has its number now', async () => {
    const { pid } = spawnSync(process.execPath, ['-e', ''])
    const cwd = place()
    held(cwd, { pid, host: hostname(), begun: '1' })
    expect((await call(argv, { cwd })).code).toBe(0)
    held(cwd, { pid: process.ppid, host: hostname(), begun: 'long ago' })
    expect((await call(argv, { cwd })).code).toBe(0)
  })

  it('of another machine nothing is known: it is named, with what to do', async () => {
    const cwd = place()
    held(cwd, { pid: 1, host: 'packing-3', begun: null })
    const { code, err } = await call(argv, { cwd })
    expect(code).toBe(2)
    expect(err).toContain('process 1 on packing-3')
    expect(err).toContain('if it has ended, delete that file')
  })

  it('a lock that nobody finished is taken over', async () => {
    const cwd = place()
    writeFileSync(path.join(cwd, 'out', 'journal.lock'), '')
    expect((await call(argv, { cwd })).code).toBe(0)
  })
})

describe('a folder that cannot be', () => {
  it.each([
    ['/proc/tapeshift/here', 'cannot make the folder /proc/tapeshift: choose another --out'],
    ['line.yaml', 'line.yaml is a file, but results need a folder: choose another --out'],
    ['line.yaml/deep', 'line.yaml is a file, but results need a folder: choose another --out'],
  ])('%s', async (out, words) => {
    const { code, err } = await call([...argv.slice(0, -2), '--out', out], { cwd: place() })
    expect(code).toBe(5)
    expect(err).toContain(words)
  })
})
