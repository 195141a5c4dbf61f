/** What a study says of its own certainty: precision, requirements, warm-up; and the journal that it keeps. */
import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import type { Figure } from '../../src/catalogue/figure.js'
import { lineOf, readLine } from '../../src/cli/journal-lines.js'
import type { RunResult } from '../../src/questions/run/document.js'
import { call, smallLine } from './in-process.js'

const plainRun = ['run', '-', '--no-files', '--full', '--workers', '1']
const json = async (argv: string[], stdin = smallLine) => {
  const called = await call([...plainRun, '--json', ...argv], { stdin })
  return { ...called, result: (called.out ? JSON.parse(called.out) : null) as RunResult }
}

describe('--precision', () => {
  it('goes on until the figure is known that well, and says so', async () => {
    const { result, code } = await json(['--precision', '1 %', '--of', 'output'])
    expect(code).toBe(0)
    const { mean } = result.measures.output!
    const halfOf = ({ mean, low, high }: Figure) => Math.max(high! - mean!, mean! - low!)
    const [half, share] = [halfOf(result.measures.output!), 0.01]
    expect(half / mean!).toBeLessThanOrEqual(share / (1 + share))
    expect(result.made.shifts).toBeGreaterThanOrEqual(30)
    expect(result.precision).toMatchObject({ asked: 0.01, isMet: true, most: 10_000 })
    // one shift fewer was not enough
    const before = await json(['--shifts', String(result.made.shifts - 1)])
    const { output } = before.result.measures
    expect(halfOf(output!) / output!.mean!).toBeGreaterThan(share / (1 + share))
    expect(result.made.repeat).toContain(`--precision '1 %' --of output --shifts 10000`)
  })

  it('ends at the most shifts allowed and says what was reached', async () => {
    const { code, out } = await call([...plainRun, '--precision', '0.1 %', '--shifts', '15'], {
      stdin: smallLine,
    })
    expect(code).toBe(0)
    expect(out.replace(/\s+/g, ' ')).toMatch(
      /Required precision: within 0.1 %. Not reached in 15 shifts, the maximum: it is known throughput within [\d.]+ %. That would take about/,
    )
  })

  it.each([
    [['--precision', '0 %'], 'above 0 %'],
    [['--precision', '1'], 'needs a unit'],
    [['--of', 'output'], 'belongs to --precision: add it'],
    [['--precision', '1 %', '--of', 'thruput'], 'did you mean `throughput`?'],
    [['--precision', '1 %', '--of', 'jams'], 'did you mean `equipment.sealer.jams`?'],
    [['--require', 'precision'], '--require precision needs --precision'],
    [['--require', 'target-held >= 95'], 'needs a unit'],
    [['--resume'], '--resume needs a folder with results'],
  ])('%j is wrong usage: %s', async (argv, words) => {
    const { code, err } = await call([...plainRun, ...argv], { stdin: smallLine })
    expect(code).toBe(2)
    expect(err).toContain(words)
  })
})

describe('--require', () => {
  it('ends with 4 unless the whole interval says so', async () => {
    const judged = async (text: string) => {
      const { code, result } = await json(['--require', text])
      return [code, result.requirements[0]!.judgement]
    }
    const { result } = await json([])
    const perMinute = (value: number | null) => `${value! * 60} cases/min`
    const { mean, low, high } = result.measures.throughput!
    expect(await judged(`throughput >= ${perMinute(low! * 0.99)}`)).toEqual([0, 'met'])
    expect(await judged(`throughput >= ${perMinute(mean)}`)).toEqual([4, 'not-shown'])
    expect(await judged(`throughput >= ${perMinute(high! * 1.01)}`)).toEqual([4, 'not-met'])
    expect((await json(['--precision', '0.1 %', '--shifts', '12', '--require', 'precision'])).code).toBe(4)
  })

  it('is answered in words', async () => {
    const { out } = await call([...plainRun, '--require', 'target-held >= 99.9 %'], { stdin: smallLine })
    expect(out.replace(/\s+/g, ' ')).toMatch(/Required: target-held >= 99.9 %. Not (met|shown): it is/)
  })
})

describe('few shifts', () => {
  it('are told to know their own spread badly; thirty are not', async () => {
    const words = 'With fewer than 30 shifts the spread is not well known'
    const of = async (shifts: string) =>
      (await call([...plainRun, '--shifts', shifts], { stdin: smallLine })).out
    expect((await of('12')).replace(/\s+/g, ' ')).toContain(words)
    expect((await of('30')).replace(/\s+/g, ' ')).not.toContain(words)
  })
})

describe('--plain', () => {
  const stdin = smallLine.replace('shifts: 12', 'shifts: 120')

  it('gives the plain mean and a wider interval; without it the shrink is told', async () => {
    const [plain, usual] = [(await json(['--plain'], stdin)).result, (await json([], stdin)).result]
    const values = plain.outputs
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length
    expect(plain.measures.output!.mean).toBeCloseTo(mean, 9)
    expect(plain.measures.output!.shrink).toBeUndefined()
    const width = ({ measures }: RunResult) => measures.output!.high! - measures.output!.low!
    // both widths have their skewness in them besides
    expect(usual.measures.output!.shrink).toBeCloseTo(width(usual) / width(plain), 1)
    expect(usual.measures.output!.shrink).toBeLessThan(0.9)
    expect(usual.measures.output!.n).toBe(120)
  })
})

describe('start: steady', () => {
  const stdin = smallLine
    .replace('shift: {length: 1 h}', 'shift: {length: 20 h, start: steady}')
    .replace('shifts: 12', 'shifts: 10')

  it('leaves out the warm-up, and says where it ends', async () => {
    const { result, code } = await json([], stdin)
    expect(code).toBe(0)
    expect(result.warmUp!.isSettled).toBe(true)
    expect(result.warmUp!.countFrom).toBe(result.warmUp!.cut)
    expect(result.warmUp!.cases).toHaveLength(result.warmUp!.at.length)
  })

  it('is refused where cases only grow: 3', async () => {
    const growing = stdin.replace('6 s}}}}', '3.2 s}}, when-full: queue}}').replace('time: 3 s', 'time: 4 s')
    const { code, err } = await call([...plainRun], { stdin: growing })
    expect(code).toBe(3)
    expect(err).toContain('MSER-5 over the average')
    expect(err).toContain('length: 80 h')
  })

  it('has no run-out', async () => {
    const { code, err } = await call(plainRun, { stdin: stdin.replace('steady}', 'steady, run-out: 1 h}') })
    expect(code).toBe(3)
    expect(err).toContain('has no run-out')
  })
})

describe('the journal', () => {
  const folder = () => {
    const cwd = mkdtempSync(path.join(tmpdir(), 'tapeshift-test-'))
    writeFileSync(path.join(cwd, 'line.yaml'), smallLine)
    return cwd
  }
  const run = (cwd: string, ...argv: string[]) =>
    call(['run', 'line.yaml', '--full', '--workers', '1', ...argv], { cwd })
  const stopped = async (cwd: string) => {
    const { code } = await call(['run', 'line.yaml', '--full', '--workers', '1', '--shifts', '3000'], {
      cwd,
      interruptAfter: 150,
    })
    expect(code).toBe(130)
  }
  /** Lines of the journal, its header left out. */
  const shiftsKept = (cwd: string) =>
    readFileSync(path.join(cwd, 'out/line-run/journal.ndjson'), 'utf8').split('\n').length - 2
  const results = (cwd: string) =>
    ['result.json', 'shifts.csv', 'report.html'].map((name) =>
      readFileSync(path.join(cwd, 'out/line-run', name), 'utf8'),
    )

  it('goes on with --resume to the same bytes, and is gone then', async () => {
    const [cwd, other] = [folder(), folder()]
    await stopped(cwd)
    expect((await run(cwd, '--shifts', '3000', '--resume')).code).toBe(0)
    await run(other, '--shifts', '3000')
    expect(results(cwd)).toEqual(results(other))
    expect(existsSync(path.join(cwd, 'out/line-run/journal.ndjson'))).toBe(false)
  })

  it.each([
    ['another number of shifts', ['--shifts', '400']],
    ['fewer shifts than it keeps', ['--shifts', '2']],
    ['another confidence', ['--shifts', '400', '--confidence', '90 %']],
  ])('goes on with %s: its shifts are the same ones', async (_, argv) => {
    const [cwd, other] = [folder(), folder()]
    await stopped(cwd)
    expect(shiftsKept(cwd)).toBeGreaterThan(2)
    const { code, err } = await run(cwd, ...argv, '--resume')
    expect([code, err]).toEqual([0, ''])
    await run(other, ...argv)
    expect(results(cwd)).toEqual(results(other))
    expect(existsSync(path.join(cwd, 'out/line-run/journal.ndjson'))).toBe(false)
  })

  it('of the same study is not thrown away without a word', async () => {
    const cwd = folder()
    await stopped(cwd)
    const { code, err } = await run(cwd, '--shifts', '3000')
    expect(code).toBe(2)
    expect(err).toMatch(/has \d+ shifts of this same study: add --resume to continue/)
    // nor where another number of them is asked for
    expect(await run(cwd, '--shifts', '10')).toMatchObject({ code: 2, err })
  })

  it('of another seed or scenario is refused with both named', async () => {
    const cwd = folder()
    await stopped(cwd)
    const seed = await run(cwd, '--shifts', '3000', '--resume', '--seed', 'other')
    expect(seed.code).toBe(2)
    expect(seed.err).toMatch(/seed "tapeshift".*seed "other"/)
    const line = await run(cwd, '--shifts', '3000', '--resume', '--set', 'line.infeed.length=7 m')
    expect(line.code).toBe(2)
    expect(line.err).toMatch(/without its study [0-9a-f]{12}.*without its study [0-9a-f]{12}/)
    const file = path.join(cwd, 'out/line-run/journal.ndjson')
    const [header = '', ...rest] = readFileSync(file, 'utf8').split('\n')
    const older = lineOf({ ...readLine(header), version: '0.0.9' })
    writeFileSync(file, older + rest.join('\n'))
    const version = await run(cwd, '--shifts', '3000', '--resume')
    expect(version.code).toBe(2)
    expect(version.err).toMatch(/tapeshift 0\.0\.9.*tapeshift \d/)
  })

  it('that is none begins anew, and says so', async () => {
    const { code, err } = await run(folder(), '--resume')
    expect(code).toBe(0)
    expect(err).toContain('the study begins with the first shift')
  })

  it('of another program is left alone', async () => {
    const cwd = folder()
    await run(cwd)
    writeFileSync(path.join(cwd, 'out/line-run/journal.ndjson'), 'my notes\n')
    const { code, err } = await run(cwd)
    expect(code).toBe(2)
    expect(err).toContain('is not a journal of this program')
  })
})
