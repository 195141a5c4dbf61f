/** A disk that is full in the middle of a file: what was there before stays, and the message names the file and the reason. */
import { spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { beforeAll, describe, expect, it } from 'vitest'
import { smallLine } from '../cli/in-process.js'
import { expectTried } from '../tried.js'

const program = fileURLToPath(new URL('../../.build/cli/main.js', import.meta.url))
const cwd = mkdtempSync(path.join(tmpdir(), 'tapeshift-full-'))
const reason = 'a limit on the size of files is reached'

/** A limit on the size of files is counted in blocks of so many bytes: POSIX.1-2017, Shell and Utilities, `ulimit -f`. */
const block = 512

/** How often the program met a limit. */
let tried = 0

/** Runs the program where no file may grow beyond `limit` bytes, in whole blocks; what it prints goes `into` a file where one is named. */
function called(limit: number | null, argv: readonly string[], into?: string) {
  if (limit !== null) tried++
  const words = [program, ...argv].map((word) => `'${word}'`).join(' ')
  const script = [
    ...(limit === null ? [] : [`ulimit -f ${Math.floor(limit / block)}`]),
    `exec node ${words}${into === undefined ? '' : ` > ${into}`}`,
  ].join('; ')
  const { status, signal, stdout, stderr } = spawnSync('sh', ['-c', script], { cwd, encoding: 'utf8' })
  // a process that the limit kills could not say anything
  expect(signal).toBeNull()
  return { code: status, out: stdout, err: stderr }
}

const run = (limit: number | null, out: string, shifts: number, ...more: string[]) =>
  called(limit, [
    ...['run', 'line.yaml', '--shifts', String(shifts), '--workers', '2', '--quiet', '--out', out],
    ...more,
  ])

/** Every file below a folder, by its path there. */
function files(out: string): Map<string, Buffer> {
  const folder = path.join(cwd, out)
  const names = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => path.relative(folder, path.join(entry.parentPath, entry.name)))
  return new Map(names.sort().map((name) => [name, readFileSync(path.join(folder, name))]))
}

/** The folder holds these files and, where `beside` names them, others, and nothing else. */
function expectFiles(
  out: string,
  expected: ReadonlyMap<string, Buffer>,
  beside: readonly string[] = [],
): void {
  const found = files(out)
  expect([...found.keys()]).toEqual([...expected.keys(), ...beside].sort())
  for (const [name, bytes] of expected) expect(found.get(name)!.equals(bytes), name).toBe(true)
}

const failure = (file: string) => ({
  code: 5,
  out: '',
  err: `error: cannot write ${file}: ${reason}\n`,
})

/** So few that their journal is shorter than a picture. */
const few = 12
const many = 300
const journal = 'journal.ndjson'

let earlier: Map<string, Buffer>
let undisturbed: Map<string, Buffer>
let undisturbedMany: Map<string, Buffer>

beforeAll(() => {
  writeFileSync(path.join(cwd, 'line.yaml'), smallLine)
  for (const [out, shifts, ...more] of [
    ['earlier', few, '--seed', 'earlier'],
    ['undisturbed', few],
    ['undisturbed-many', many],
  ] as [string, number, ...string[]][])
    expect(run(null, out, shifts, ...more)).toEqual({ code: 0, out: '', err: '' })
  earlier = files('earlier')
  undisturbed = files('undisturbed')
  undisturbedMany = files('undisturbed-many')
  for (const [name, bytes] of undisturbed) if (bytes.equals(earlier.get(name)!)) throw new Error(name)
})

/** A folder of its own that holds the results of an earlier run. */
function withEarlier(out: string): string {
  for (const [name, bytes] of earlier) {
    const file = path.join(cwd, out, name)
    mkdirSync(path.dirname(file), { recursive: true })
    writeFileSync(file, bytes)
  }
  return out
}

const at = (out: string, name: string) => path.join(cwd, out, name)

describe('a disk that is full', () => {
  it('when the results are written: the earlier ones stay to the last byte, and --resume writes the new ones', () => {
    const sizes = [...undisturbed].map(([name, bytes]) => ({ name, size: bytes.length }))
    const largest = sizes.find(({ name }) => name === 'try.html')!
    const others = Math.max(...sizes.filter((each) => each !== largest).map(({ size }) => size))
    const out = withEarlier('results')
    // all others before it are written by then, under their temporary names
    expect(others + block).toBeLessThan(largest.size)
    expect(run(others + block, out, few)).toEqual(failure(at(out, 'try.html')))
    expectFiles(out, earlier, [journal])
    const goneOn = run(others + block, out, few, '--resume')
    expect(goneOn).toEqual(failure(at(out, 'try.html')))
    expectFiles(out, earlier, [journal])
    expect(run(null, out, few, '--resume')).toEqual({ code: 0, out: '', err: '' })
    expectFiles(out, undisturbed)
  })

  it('when a picture is written: the earlier results stay to the last byte', () => {
    const out = withEarlier('pictures')
    const [first] = [...undisturbed.keys()].filter((name) => name.endsWith('.png'))
    const size = undisturbed.get(first!)!.length
    const { code, err } = run(size / 2, out, few)
    expect(code).toBe(5)
    expect(err).toMatch(
      /^error: cannot write .*\/pictures\/charts\/\w+\.png: a limit on the size of files is reached\n$/,
    )
    expectFiles(out, earlier, [journal])
  })

  it('when the journal is written: whole shifts are kept, and --resume ends as if nothing had happened', () => {
    const out = withEarlier('journal')
    // a shift takes somewhat more than 1 kB there: about half of them
    const limit = (many / 2) * 1300
    expect(run(limit, out, many)).toEqual(failure(at(out, journal)))
    expectFiles(out, earlier, [journal])
    const kept = readFileSync(at(out, journal), 'utf8')
    expect(kept.length).toBeLessThanOrEqual(limit)
    expect(kept.endsWith('\n')).toBe(true)
    const shifts = kept.split('\n').length - 2
    expect(shifts).toBeGreaterThan(many / 4)
    expect(shifts).toBeLessThan(many)
    // still full: the same words, and nothing kept is lost
    expect(run(limit, out, many, '--resume')).toEqual(failure(at(out, journal)))
    expect(readFileSync(at(out, journal), 'utf8').startsWith(kept)).toBe(true)
    expect(run(null, out, many, '--resume')).toEqual({ code: 0, out: '', err: '' })
    expectFiles(out, undisturbedMany)
  })

  it('when the journal is begun: nothing is in the way of the next run', () => {
    const out = withEarlier('begun')
    expect(run(0, out, few)).toEqual(failure(at(out, 'journal.lock')))
    expectFiles(out, earlier)
    expect(run(null, out, few)).toEqual({ code: 0, out: '', err: '' })
    expectFiles(out, undisturbed)
  })

  it('when standard output is a file there: 5, not half of the document and 0', () => {
    const argv = ['run', 'line.yaml', '--shifts', String(few), '--no-files', '--json']
    expect(called(null, argv, 'whole.json')).toMatchObject({ code: 0, err: '' })
    const whole = readFileSync(path.join(cwd, 'whole.json'))
    expect(JSON.parse(whole.toString()).made.shifts).toBe(few)
    expect(called(whole.length / 2, argv, 'half.json')).toEqual({
      code: 5,
      out: '',
      err: `error: cannot write standard output: ${reason}\n`,
    })
  })

  it('when a starter is written: there is no half of one, in the way of the next attempt', () => {
    expect(called(block, ['new', 'starter.yaml'])).toEqual(failure(path.join(cwd, 'starter.yaml')))
    expect(readdirSync(cwd)).not.toContain('starter.yaml')
    expect(called(null, ['new', 'starter.yaml']).code).toBe(0)
  })

  it('each is counted', () => expectTried('full disks', tried))
})
