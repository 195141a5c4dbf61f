/** Sizings that are interrupted and resumed: always the same bytes, and never what another search found. */
import { execFile } from 'node:child_process'
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { promisify } from 'node:util'
import { describe, expect, it } from 'vitest'
import { lineOf, readLine } from '../../src/cli/journal-lines.js'
import { call } from './in-process.js'
import { interrupted, journalOf, keptIn } from './interrupting.js'
import { choose, folder, one } from './size-line.js'

const program = fileURLToPath(new URL('../../.build/cli/main.js', import.meta.url))
const results = (cwd: string) =>
  ['result.json', 'designs.csv', 'report.html', 'scenario.yaml'].map((name) =>
    readFileSync(path.join(cwd, 'out/line-size', name), 'utf8'),
  )
/** No design holds this: of the nearest few more shifts are simulated, and of one fresh ones. */
const none = [...choose, '--holds', '9 cases/min in 98 % of shifts', '--shifts', '250']

describe('any number of workers', () => {
  it.each([
    ['with a pick', [...choose, '--holds', '9 cases/min in 60 % of shifts within 6 %', '--shifts', '300'], 0],
    ['without one', none, 4],
  ])('as a process: the same bytes for 1 and 2, %s', async (_, argv, code) => {
    const written: string[][] = []
    for (const workers of ['1', '2']) {
      const cwd = folder()
      const words = [program, 'size', 'line.yaml', '--quiet', '--workers', workers, ...argv]
      const ended = await promisify(execFile)('node', words, { cwd }).then(
        () => 0,
        (error: { code: number }) => error.code,
      )
      expect(ended).toBe(code)
      written.push(results(cwd))
    }
    expect(written[1]).toEqual(written[0])
  })
})

describe('the journal', () => {
  const many = [...choose, '--holds', '9 cases/min in 60 % of shifts within 6 %', '--shifts', '300']
  const inFolder = (cwd: string, ...argv: string[]) => call(['size', 'line.yaml', ...one, ...argv], { cwd })
  const journal = (cwd: string) => journalOf(cwd, 'line-size')
  const kept = (cwd: string) => keptIn(journal(cwd))

  /** Presses Ctrl-C as soon as what came of so many designs is kept. */
  const stopped = (cwd: string, least: number, argv: string[]) =>
    interrupted(cwd, journal(cwd), least, ['size', 'line.yaml', ...one, ...argv])

  it('keeps what came of designs; --resume ends with the same bytes and does not simulate them again', async () => {
    const [cwd, other] = [folder(), folder()]
    const told = await stopped(cwd, 2, many)
    expect(told).toMatch(
      /interrupted after \d+ of 6 designs; they are saved in out\/line-size\/journal\.ndjson/,
    )
    const before = kept(cwd)
    expect(before.length).toBeGreaterThanOrEqual(2)
    expect(readdirSync(path.join(cwd, 'out/line-size'))).toEqual(['journal.ndjson'])
    // not without a word
    const anew = await inFolder(cwd, ...many)
    expect(anew.code).toBe(2)
    expect(anew.err).toMatch(/has \d+ designs of this same study: add --resume to continue/)
    expect((await inFolder(cwd, ...many, '--resume')).code).toBe(0)
    expect((await inFolder(other, ...many)).code).toBe(0)
    expect(results(cwd)).toEqual(results(other))
    expect(existsSync(journal(cwd))).toBe(false)
  })

  it('without a pick too, interrupted at the last design: fresh shifts are not kept, and come out the same', async () => {
    const [cwd, other] = [folder(), folder()]
    expect((await inFolder(other, ...none)).code).toBe(4)
    const { spent } = JSON.parse(results(other)[0]!) as { spent: { designs: number } }
    await stopped(cwd, spent.designs, none)
    expect(kept(cwd)).toHaveLength(spent.designs)
    expect((await inFolder(cwd, ...none, '--resume')).code).toBe(4)
    expect(results(cwd)).toEqual(results(other))
  })

  it('resumed and interrupted again it keeps each design once', async () => {
    const cwd = folder()
    await stopped(cwd, 1, many)
    const before = kept(cwd).length
    await stopped(cwd, before + 1, [...many, '--resume'])
    const designs = kept(cwd).map((line) => (JSON.parse(line) as { design: string }).design)
    expect(designs.length).toBeGreaterThan(before)
    expect(new Set(designs).size).toBe(designs.length)
  })

  it('an outcome that no simulation gives shows that it was taken from there', async () => {
    const cwd = folder()
    await stopped(cwd, 1, many)
    const [head, first, ...rest] = readFileSync(journal(cwd), 'utf8').split('\n')
    const entry = readLine(first!) as { outcome: { shifts: number } }
    entry.outcome.shifts = 12345
    writeFileSync(journal(cwd), [head, lineOf(entry).trimEnd(), ...rest].join('\n'))
    await inFolder(cwd, ...many, '--resume')
    expect(results(cwd)[1]).toContain(',12345,')
  })

  it.each([
    [['--shifts', '400']],
    [['--confidence', '90 %']],
    [['--every-design']],
    [['--holds', '8 cases/min in 60 % of shifts within 3 %']],
    [['--rising', 'line.infeed.length']],
    [['--order', 'line.end.servers']],
    [['--set', 'money.labour=31 EUR/h']],
  ])('of another course is not gone on with: %j', async (other) => {
    // each was found with a share of the risk that hangs on all of these
    const cwd = folder()
    await stopped(cwd, 1, many)
    const { code, err } = await inFolder(cwd, ...many, ...other, '--resume')
    expect([code, err]).toEqual([2, expect.stringContaining('is from another study')])
  })

  it('two designs that differ in price only are kept apart', async () => {
    const [cwd, other] = [folder(), folder()]
    // the price comes first: the same line twice, at another cost
    const priced = [
      ...['--choose', 'money.labour=20 EUR/h,40 EUR/h', '--choose', 'line.end.servers=1,2'],
      ...['--holds', '9 cases/min in 60 % of shifts within 3 %'],
    ]
    await stopped(cwd, 3, [...priced, '--every-design', '--shifts', '60'])
    await inFolder(cwd, ...priced, '--every-design', '--shifts', '60', '--resume')
    await inFolder(other, ...priced, '--every-design', '--shifts', '60')
    expect(results(cwd)).toEqual(results(other))
  })
})
