/** A study that is killed at any moment goes on with --resume and ends with the bytes of one that nobody disturbed. */
import { type ChildProcess, spawn } from 'node:child_process'
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, watch, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { beforeAll, describe, expect, it } from 'vitest'
import { Stream } from '../../src/engine/stream.js'
import { smallLine } from '../cli/in-process.js'
import { expectTried } from '../tried.js'

const program = fileURLToPath(new URL('../../.build/cli/main.js', import.meta.url))

/** Simulates for about as long as the program takes to load, and to draw its pictures: a kill strikes each of them. */
const line = smallLine.replace('length: 1 h', 'length: 3 h')
const kills = 50
const mostKillsPerStudy = 6

const cwd = mkdtempSync(path.join(tmpdir(), 'tapeshift-kill-'))

function start(out: string, ...more: string[]): ChildProcess {
  const argv = ['run', 'line.yaml', '--shifts', '300', '--workers', '2', '--quiet', '--out', out, ...more]
  return spawn('node', [program, ...argv], { cwd, stdio: ['ignore', 'ignore', 'pipe'] })
}

interface Ended {
  /** Null where it was killed. */
  code: number | null
  err: string
}

function ended(child: ChildProcess): Promise<Ended> {
  let err = ''
  child.stderr!.on('data', (data: Buffer) => {
    err += data.toString()
  })
  return new Promise((resolve) => child.on('close', (code) => resolve({ code, err })))
}

/** Starts the study, the second time to go on with it, and kills it after `delay` ms. */
async function killed(out: string, isFirst: boolean, delay: number): Promise<Ended> {
  const began = performance.now()
  const child = start(out, ...(isFirst ? [] : ['--resume']))
  const timer = setTimeout(() => child.kill('SIGKILL'), delay)
  const end = await ended(child)
  clearTimeout(timer)
  // a machine that others leave alone by now is quicker: later kills come sooner
  if (end.code === 0 && isFirst) whole = Math.min(whole, performance.now() - began)
  return end
}

/** Every file below a folder of results, by its path there. */
function files(out: string): Map<string, Buffer> {
  const folder = path.join(cwd, out)
  const names = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => path.relative(folder, path.join(entry.parentPath, entry.name)))
  return new Map(names.sort().map((name) => [name, readFileSync(path.join(folder, name))]))
}

/** Whole lines of the journal of a study, its header left out; 0 without one. */
function shiftsKept(out: string): number {
  const file = path.join(cwd, out, 'journal.ndjson')
  return existsSync(file) ? Math.max(0, readFileSync(file, 'utf8').split('\n').length - 2) : 0
}

let undisturbed: Map<string, Buffer>
/** How long such a study takes when nobody kills it, ms. */
let whole: number

function expectUndisturbed(out: string): void {
  const written = files(out)
  expect([...written.keys()]).toEqual([...undisturbed.keys()])
  for (const [name, bytes] of written) expect(bytes.equals(undisturbed.get(name)!), name).toBe(true)
}

beforeAll(async () => {
  writeFileSync(path.join(cwd, 'line.yaml'), line)
  for (const out of ['undisturbed', 'again']) {
    const began = performance.now()
    expect(await ended(start(out))).toEqual({ code: 0, err: '' })
    // the first time the program is read from the disk
    whole = performance.now() - began
  }
  undisturbed = files('undisturbed')
  expect([...undisturbed.keys()]).toEqual(
    expect.arrayContaining(['result.json', 'shifts.csv', 'report.html', 'scenario.yaml']),
  )
  expect([...undisturbed.keys()].filter((name) => /journal|tmp/.test(name))).toEqual([])
})

describe('a study killed again and again', () => {
  it(`ends as if nothing had happened, after ${kills} kills at random`, async () => {
    // moments as shares of an undisturbed run, so that they strike loading, simulating, drawing and writing on any machine
    const moments = new Stream('kill', 'moment')
    moments.begin('kill', 1)
    const tally = { killed: 0, midway: 0, tooLate: 0, studies: 0 }
    for (let kill = 0; kill < kills; ) {
      const out = `study-${++tally.studies}`
      let code: number | null = null
      for (let of = 0; code === null && of < mostKillsPerStudy && kill < kills; of++, kill++) {
        const end = await killed(out, of === 0, whole * (0.1 + 0.85 * moments.next()))
        code = end.code
        expect([null, 0], end.err).toContain(code)
        if (code === 0) tally.tooLate++
        else tally.killed++
        const kept = shiftsKept(out)
        if (kept > 0 && kept < 300) tally.midway++
      }
      if (code === null) {
        const end = await ended(start(out, '--resume'))
        expect(end.code, end.err).toBe(0)
      }
      expectUndisturbed(out)
    }
    console.log(`${JSON.stringify(tally)}, undisturbed ${(whole / 1000).toFixed(2)} s`)
    // else nothing was tried
    expect(tally.killed).toBeGreaterThanOrEqual(kills / 2)
    expect(tally.midway).toBeGreaterThanOrEqual(3)
    expectTried('kills at random', tally.killed + tally.tooLate)
  })

  it('leaves no temporary files behind when it is killed while it writes its results', async () => {
    const out = 'writing'
    const folder = path.join(cwd, out)
    mkdirSync(folder)
    const child = start(out)
    let temporary: string | null = null
    const watcher = watch(folder, (_, name) => {
      if (temporary !== null || !name?.endsWith('.tmp')) return
      temporary = name
      child.kill('SIGKILL')
    })
    await ended(child)
    watcher.close()
    expect(temporary).not.toBeNull()
    // where it was quick enough to tidy up, the file stands for one that it was not quick enough to rename
    if (!existsSync(path.join(folder, temporary!))) writeFileSync(path.join(folder, temporary!), 'half of it')
    const end = await ended(start(out, '--resume'))
    expect(end.code, end.err).toBe(0)
    expectUndisturbed(out)
  })
})
