/** Comparisons by any number of workers, interrupted and resumed: always the same bytes. */
import { execFile } from 'node:child_process'
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { promisify } from 'node:util'
import { describe, expect, it } from 'vitest'
import { lineOf, readLine } from '../../src/cli/journal-lines.js'
import { folder, one } from './compare-line.js'
import { call } from './in-process.js'
import { interrupted, journalOf, keptIn } from './interrupting.js'

const program = fileURLToPath(new URL('../../.build/cli/main.js', import.meta.url))

const names = ['result.json', 'shifts.csv', 'differences.csv', 'scenario.yaml', 'report.html']
const results = (cwd: string) =>
  names.map((name) => readFileSync(path.join(cwd, 'out/line-compare', name), 'utf8'))

describe('any number of workers', () => {
  it.each([
    [['--shifts', '37']],
    [
      [
        '--best',
        'throughput',
        '--within',
        '0.1 cases/min',
        '--shifts',
        '300',
        '--among',
        'target-held <= 90 %',
      ],
    ],
  ])('as a process: the same bytes for 1 and 2, %j', async (argv) => {
    const execute = promisify(execFile)
    const written: string[][] = []
    for (const workers of ['1', '2']) {
      const cwd = folder()
      const { stdout } = await execute(
        'node',
        [program, 'compare', 'line.yaml', '--json', '--workers', workers, ...argv],
        { cwd, maxBuffer: 1e8 },
      )
      written.push([stdout, ...results(cwd)])
    }
    expect(written[0]![0]!.length).toBeGreaterThan(10_000)
    expect(written[1]).toEqual(written[0])
  })
})

describe('the journal', () => {
  const many = ['--shifts', '200']
  const inFolder = (cwd: string, ...argv: string[]) =>
    call(['compare', 'line.yaml', ...one, ...argv], { cwd })
  const journal = (cwd: string) => journalOf(cwd, 'line-compare')
  const kept = (cwd: string) => keptIn(journal(cwd))

  /** Presses Ctrl-C as soon as so many shifts are kept; the number that the program then tells. */
  async function stopped(cwd: string, least: number, ...argv: string[]): Promise<number> {
    const err = await interrupted(cwd, journal(cwd), least, ['compare', 'line.yaml', ...one, ...argv])
    const told = /interrupted after (\d+) of \d+ shifts; they are saved in out\/line-compare\/journal/.exec(
      err,
    )
    return Number(told?.[1])
  }

  it('keeps what an interrupt leaves, and --resume ends with the same bytes', async () => {
    const [cwd, other] = [folder(), folder()]
    const done = await stopped(cwd, 30, ...many)
    expect(done).toBeGreaterThanOrEqual(30)
    expect(kept(cwd)).toHaveLength(done)
    expect(readdirSync(path.join(cwd, 'out/line-compare'))).toEqual(['journal.ndjson'])
    // not without a word
    const { code, err } = await inFolder(cwd, ...many)
    expect(code).toBe(2)
    expect(err).toMatch(/has \d+ shifts of this same study: add --resume to continue/)
    expect((await inFolder(cwd, ...many, '--resume')).code).toBe(0)
    await inFolder(other, ...many)
    expect(results(cwd)).toEqual(results(other))
    expect(existsSync(journal(cwd))).toBe(false)
  })

  it('a what-if that is added goes on with the shifts that are kept', async () => {
    const [cwd, other] = [folder(), folder()]
    await stopped(cwd, 30, ...many)
    const added = ['--shifts', '40', '--what-if', 'wide: line.infeed.length=9 m', '--resume']
    // a kept shift that no simulation gives shows that it was taken from there
    const lines = readFileSync(journal(cwd), 'utf8').split('\n')
    const entry = readLine(lines[1]!) as { shift: number; values: number[] }
    entry.values = entry.values.map(() => 12345)
    writeFileSync(journal(cwd), [lines[0], lineOf(entry).trimEnd(), ...lines.slice(2)].join('\n'))
    expect((await inFolder(cwd, ...added)).code).toBe(0)
    await inFolder(other, ...added.slice(0, -1))
    const [mine, fresh] = [cwd, other].map((each) =>
      readFileSync(path.join(each, 'out/line-compare/shifts.csv'), 'utf8').split('\n'),
    )
    const unlike = mine!.flatMap((row, index) => (row === fresh![index] ? [] : [row]))
    expect(unlike).toHaveLength(1)
    expect(unlike[0]).toMatch(new RegExp(`^base,${entry.shift},12345,`))
    expect(mine!.filter((row) => row.startsWith('wide,'))).toHaveLength(40)
  })

  it('of a search for the best: the shifts told of are those that are kept, and it ends with the same bytes', async () => {
    const [cwd, other] = [folder(), folder()]
    const search = [
      '--variants',
      'longer',
      '--best',
      'throughput',
      '--within',
      '0.00001 cases/min',
      '--shifts',
      '400',
    ]
    const first = await stopped(cwd, 90, ...search)
    expect(kept(cwd)).toHaveLength(first)
    const second = await stopped(cwd, first + 50, ...search, '--resume')
    expect(second).toBeGreaterThanOrEqual(first + 50)
    expect(kept(cwd)).toHaveLength(second)
    const { code } = await inFolder(cwd, ...search, '--resume')
    expect((await inFolder(other, ...search)).code).toBe(code)
    expect(results(cwd)).toEqual(results(other))
  })
})
