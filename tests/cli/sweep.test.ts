/** `tapeshift sweep` in this process: curves, grids, inputs one at a time and plans, their files, and what goes on after an interrupt. */
import { existsSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { Readable, Writable } from 'node:stream'
import { describe, expect, it } from 'vitest'
import type { MeasureKey } from '../../src/catalogue/of-line.js'
import { lineOf, readLine } from '../../src/cli/journal-lines.js'
import { main } from '../../src/cli/program.js'
import type { RunResult } from '../../src/questions/run/document.js'
import type { SweepResult } from '../../src/questions/sweep/document.js'
import { call, smallLine } from './in-process.js'

const priced = `${smallLine}money: {currency: EUR, labour: 30 EUR/h, life: 8 yr, interest: 8 %, shifts: 480 per yr, capital: {line.infeed: 900 EUR/m}}\n`
const one = ['--full', '--workers', '1']
const quick = [...one, '--shifts', '6']

const sweep = (argv: string[], stdin = priced) =>
  call(['sweep', '-', '--no-files', ...quick, ...argv], { stdin })
async function json(argv: string[], stdin = priced) {
  const { code, out, err } = await sweep(['--json', ...argv], stdin)
  return { code, err, result: JSON.parse(out) as SweepResult }
}
const length = ['--vary', 'line.infeed.length=4..8/2 m']
const speed = ['--vary', 'line.sealer.belt-speed=16..24/4 m/min']

describe('a curve', () => {
  it('has a point a value with the figures that a run of it has, on the same random numbers', async () => {
    const { code, result } = await json(length)
    expect(code).toBe(0)
    expect(result).toMatchObject({ format: 'tapeshift-result/1', command: 'sweep', kind: 'curve' })
    expect(result.points.map(({ at, set }) => [at, set])).toEqual([
      [[4], { 'line.infeed.length': '4 m' }],
      [[6], { 'line.infeed.length': '6 m' }],
      [[8], { 'line.infeed.length': '8 m' }],
    ])
    const { out } = await call(
      ['run', '-', '--json', '--no-files', '--plain', ...quick, '--set', 'line.infeed.length=4 m'],
      { stdin: priced },
    )
    const run = JSON.parse(out) as RunResult
    for (const { name } of result.measures) {
      const { mean, low, high, unit } = run.measures[name as MeasureKey]!
      expect(result.points[0]!.measures[name]).toMatchObject({ mean, low, high, unit })
    }
  })

  it('knows the target, the cost and the scenario as it stands, in SI', async () => {
    const { result } = await json(length)
    expect(result.measures.map(({ name }) => name)).toEqual(['target-held', 'throughput', 'cost-per-1000'])
    expect(result.factors).toEqual([
      {
        ...{ path: 'line.infeed.length', unit: 'm', values: [4, 6, 8], base: 6 },
        ...{ si: { unit: 'm', values: [4, 6, 8] }, minutes: expect.any(Array) },
      },
    ])
    // the second point is the scenario: not simulated twice, and no different
    expect(result.points[1]!.measures).toEqual(result.base)
    expect(result.curve!.cost!.differences[1]).toMatchObject({ mean: 0, low: 0, high: 0, isShown: false })
    const [first, second] = result.curve!.measures.throughput!.steps
    const mean = (place: number) => result.points[place]!.measures.throughput!.mean!
    expect(first!.difference.mean).toBeCloseTo(mean(1) - mean(0), 12)
    expect(second!.difference.mean).toBeCloseTo(mean(2) - mean(1), 12)
    // 2 steps, 1 way to the last, 1 change of each of 3 measures, and 3 points against the scenario in cost
    expect(first!.difference.family).toBe(15)
  })

  it('leaves out the target and the cost where there are none, and takes other measures', async () => {
    const bare = smallLine.replace('target: 9 cases/min\n', '')
    expect((await json(length, bare)).result.measures.map(({ name }) => name)).toEqual(['throughput'])
    const { result } = await json([
      ...length,
      '--measure',
      'crew.operators.busy',
      '--measure',
      'tape-per-case',
    ])
    expect(result.measures.map(({ name }) => name)).toEqual(['crew.operators.busy', 'tape-per-case'])
  })

  it('gives the ceiling of the heads where the speed of belts is varied: one case a reset, 60 / 0.45 a minute', async () => {
    const { result } = await json(speed)
    expect(result.curve!.byHand!.ceiling! * 60).toBeCloseTo(60 / 0.45, 9)
    expect((await json(length)).result.curve!.byHand).toBeNull()
  })

  it('goes on without values that are no scenario, and says so', async () => {
    const { result, code } = await json(['--vary', 'line.sealer.belt-speed=20..28/4 m/min'])
    expect(code).toBe(0)
    expect(result.points.map(({ at }) => at)).toEqual([[20], [24]])
    expect(result.notes.join()).toMatch(
      /^1 of the 3 points cannot be simulated: line\.sealer\.belt-speed: faster than/,
    )
  })
})

describe('designs that lock up', () => {
  /** Desk and look hold one case each: rejected cases go back to the desk, and where all are, the line locks. */
  const looping = `cases: {a: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {p: {time-between: 4 s}}
shift: {length: 100 s}
line:
  desk: {type: station, time: 3 s}
  look: {type: inspect, time: 1 s, chance: 0 %, rejects-to: desk}
`

  it('are told with their fault, and the others go on', async () => {
    const { code, result } = await json(
      ['--vary', 'line.desk.time=2 s, 3 s', '--vary', 'line.look.chance=0 %, 100 %'],
      looping,
    )
    expect(code).toBe(0)
    expect(result.points.map(({ at }) => at)).toEqual([
      [2, 0],
      [3, 0],
    ])
    expect(result.leftOut.map(({ path: what }) => what)).toEqual([
      'line.desk.time = 2 s, line.look.chance = 100 %',
      'line.desk.time = 3 s, line.look.chance = 100 %',
    ])
    expect(result.leftOut[0]!.reason).toContain('the line is locked')
    const each = await json(['--each', '--vary', 'line.look.chance=0..100 %'], looping)
    expect(each.result.each!.inputs[0]!.differences.throughput!.high).toBeNull()
    expect(each.result.leftOut).toHaveLength(1)
  })

  it('leave nothing to say where fewer than two are left', async () => {
    const { code, err } = await sweep(['--vary', 'line.look.chance=0 %, 100 %'], looping)
    expect(code).toBe(2)
    expect(err).toContain(
      'fewer than two of the designs can be simulated to the end: line.desk: the line is locked',
    )
  })

  it('end it where the scenario itself is one', async () => {
    const { code } = await sweep(['--vary', 'line.desk.time=2 s, 3 s'], looping.replace('0 %', '100 %'))
    expect(code).toBe(3)
  })
})

describe('a grid', () => {
  it('has every combination and the contours of its measures', async () => {
    const { code, result } = await json([...length, ...speed])
    expect(code).toBe(0)
    expect(result.kind).toBe('grid')
    expect(result.points).toHaveLength(9)
    expect(Object.keys(result.grid!)).toEqual(['target-held', 'throughput', 'cost-per-1000'])
    expect(result.grid!['target-held']!.levels).toEqual([0.9, 0.95, 0.99])
    // free places over 9 cases/min rise with the length
    const minutes = result.factors[0]!.minutes!
    expect(minutes[0]).toBeGreaterThan(0)
    expect(minutes[2]).toBeGreaterThan(minutes[0]!)
    expect(result.factors[1]!.minutes).toBeNull()
  })
})

describe('one input at a time', () => {
  it('moves those that are named to their two ends', async () => {
    const { code, result } = await json([
      '--each',
      ...['--vary', 'line.infeed.length=4..8 m', '--vary', 'line.end.servers=1..2'],
    ])
    expect(code).toBe(0)
    expect(result.each!.inputs.map(({ path: at, base, low, high }) => [at, base, low, high])).toEqual([
      ['line.infeed.length', '6 m', '4 m', '8 m'],
      ['line.end.servers', '1', '1', '2'],
    ])
    const { low, high } = result.each!.inputs[0]!.differences.throughput!
    // 2 inputs, 2 ends, 3 measures
    expect([low!.family, high!.family]).toEqual([12, 12])
    const mean = (place: number) => result.points[place]!.measures.throughput!.mean!
    expect(low!.mean).toBeCloseTo(mean(0) - result.base.throughput!.mean!, 12)
  })

  it('moves all of them otherwise, whole numbers by one, and lists what stays', async () => {
    const { code, result } = await json(['--each', '--shifts', '2'])
    expect(code).toBe(0)
    const input = (at: string) => result.each!.inputs.find((each) => each.path === at)
    expect(input('line.infeed.length')).toMatchObject({ base: '6 m', low: '5.4 m', high: '6.6 m' })
    expect(input('arrivals.p.time-between')).toMatchObject({ base: 'mean 6 s', high: 'mean 6.6 s' })
    expect(input('crew.operators.people')).toMatchObject({ base: '1', low: null, high: '2' })
    expect(input('line.sealer.jams.tape-factor')).toMatchObject({ low: '0.9', high: '1.1' })
    const reasons = new Map(result.leftOut.map((each) => [each.path, each.reason]))
    expect(reasons.get('crew.operators.people')).toMatch(/lowered it breaks the scenario/)
    expect(reasons.get('line.sealer.heads.top.takes.0')).toBe('it only limits other values')
    expect(reasons.get('line.sealer.dwell-spoils')).toBe('it is 0, and 10 % of 0 is 0')
    // tape cannot be narrower than the heads take, but thinner
    expect(input('tape.width')).toMatchObject({ low: '43.2 mm', high: null })
    const { throughput } = result.each!.order
    // two cases at a time are twice as many; the rest moves by a tenth
    expect(throughput!.slice(0, 2)).toEqual(['arrivals.p.batch', 'arrivals.p.time-between'])
    expect(throughput).toHaveLength(result.each!.inputs.length)
  })
})

describe('a plan', () => {
  const three = [
    ...['--plan', '12'],
    ...[
      '--vary',
      'line.infeed.length=4..8 m',
      '--vary',
      'line.sealer.belt-speed=16..24 m/min',
      '--vary',
      'line.end.servers=1..3',
    ],
  ]

  it('fills the space, whole numbers stay whole, and fits a straight line', async () => {
    const { code, result } = await json([...three, '--shifts', '3'])
    expect(code).toBe(0)
    expect(result.points).toHaveLength(12)
    // one length in each twelfth of the range
    const strata = result.points.map(({ at }) => Math.floor(((at[0]! - 4) / 4) * 12)).sort((a, b) => a - b)
    expect(strata).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11])
    const servers = result.points.map(({ at }) => at[2]!)
    expect([1, 2, 3].map((value) => servers.filter((each) => each === value).length)).toEqual([4, 4, 4])
    const { effects, degreesOfFreedom, family } = result.plan!.throughput!
    expect(effects.map(({ path: at }) => at)).toEqual(result.factors.map(({ path: at }) => at))
    expect([degreesOfFreedom, family]).toEqual([8, 9])
  })
})

describe('files', () => {
  const folder = () => {
    const cwd = mkdtempSync(path.join(tmpdir(), 'tapeshift-sweep-'))
    writeFileSync(path.join(cwd, 'line.yaml'), priced)
    return cwd
  }
  const inFolder = (cwd: string, ...argv: string[]) =>
    call(['sweep', 'line.yaml', ...quick, ...argv], { cwd })
  const out = (cwd: string, name = '') => path.join(cwd, 'out/line-sweep', name)
  const names = ['result.json', 'designs.csv', 'differences.csv', 'scenario.yaml', 'report.html']
  const results = (cwd: string) => names.map((name) => readFileSync(out(cwd, name), 'utf8'))

  it('are the report, the rows, the pictures and the document that --json prints', async () => {
    const cwd = folder()
    const { code, out: text } = await inFolder(cwd, ...length)
    expect(code).toBe(0)
    expect(text).toMatch(/Report: out\/line-sweep\/report\.html\n$/)
    expect(readdirSync(out(cwd)).sort()).toEqual([...names, 'charts'].sort())
    expect(readdirSync(out(cwd, 'charts')).sort()).toEqual([
      'curve-cost-per-1000.png',
      'curve-target-held.png',
      'curve-throughput.png',
    ])
    const printed = await call(['sweep', 'line.yaml', '--json', '--no-files', ...quick, ...length], { cwd })
    expect(printed.out).toBe(readFileSync(out(cwd, 'result.json'), 'utf8'))
    expect(readFileSync(out(cwd, 'designs.csv'), 'utf8').split('\n')).toHaveLength(6)
  })

  it('are made again by the command that stands in them', async () => {
    const [cwd, other] = [folder(), folder()]
    await inFolder(cwd, '--each', '--vary', 'line.infeed.length=4..8 m', '--seed', 'again')
    const { made } = JSON.parse(results(cwd)[0]!) as SweepResult
    const argv = [...made.repeat.matchAll(/'([^']*)'|(\S+)/g)].map((match) => match[1] ?? match[2]!).slice(1)
    expect((await call([...argv, ...one], { cwd: other })).code).toBe(0)
    expect(results(other)).toEqual(results(cwd))
  })

  const long = ['--vary', 'line.infeed.length=4..100/0.5 m']
  const journal = (cwd: string) => out(cwd, 'journal.ndjson')
  const kept = (cwd: string) => readFileSync(journal(cwd), 'utf8').trimEnd().split('\n').slice(1)

  /** Presses Ctrl-C as soon as so many designs are kept; what the program then says. */
  async function interrupted(cwd: string, least: number): Promise<string> {
    let said = ''
    const into = new Writable({
      write(chunk: Buffer, _encoding, done) {
        said += chunk.toString()
        done()
      },
    })
    const code = await main(['sweep', 'line.yaml', ...quick, ...long], {
      ...{ stdin: Readable.from([]), stdout: into, stderr: into, env: {}, cwd },
      onInterrupt(listener) {
        const timer = setInterval(() => {
          if (kept(cwd).length < least) return
          clearInterval(timer)
          listener()
        }, 2)
        return () => clearInterval(timer)
      },
    })
    expect(code).toBe(130)
    return said
  }

  it('are the same bytes after an interrupt and --resume, with other values too', async () => {
    const [cwd, other] = [folder(), folder()]
    expect(await interrupted(cwd, 3)).toContain(
      `interrupted after ${kept(cwd).length} of 193 designs; they are saved in out/line-sweep/journal.ndjson`,
    )
    expect(readdirSync(out(cwd))).toEqual(['journal.ndjson'])
    // not without a word
    expect((await inFolder(cwd, ...length)).code).toBe(2)
    expect((await inFolder(cwd, ...length, '--resume')).code).toBe(0)
    expect((await inFolder(other, ...length)).code).toBe(0)
    expect(results(cwd)).toEqual(results(other))
    expect(existsSync(journal(cwd))).toBe(false)
  })

  it('take what is kept from the journal', async () => {
    const [cwd, other] = [folder(), folder()]
    await interrupted(cwd, 2)
    const lines = readFileSync(journal(cwd), 'utf8').trimEnd().split('\n')
    const entry = readLine(lines[1]!) as unknown as {
      outcome: { samples: Record<string, { values: number[] }> }
    }
    // figures that no simulation gives show that they were taken from there
    const { values } = entry.outcome.samples.throughput!
    entry.outcome.samples.throughput!.values = values.map((value) => value + 1)
    writeFileSync(journal(cwd), `${[lines[0], lineOf(entry).trimEnd(), ...lines.slice(2)].join('\n')}\n`)
    expect((await inFolder(cwd, ...length, '--resume')).code).toBe(0)
    await inFolder(other, ...length)
    const [mine, fresh] = [cwd, other].map((each) => JSON.parse(results(each)[0]!) as SweepResult)
    expect(mine!.base.throughput!.mean).toBeCloseTo(fresh!.base.throughput!.mean! + 1, 9)
    expect(mine!.points[0]!.measures).toEqual(fresh!.points[0]!.measures)
  })
})

describe('what it refuses', () => {
  it.each([
    [[], /nothing to vary: give --vary/],
    [['--each', '--plan', '9', ...length], /use either --each or --plan/],
    [['--plan', '9', ...length], /--plan takes three factors or more, not 1/],
    [['--vary', 'line.infeed.length=4..8 m'], /a range needs a step, such as 4\.\.8\/1 m/],
    [['--vary', 'line.infeed.length=4 m'], /at least two different values/],
    [['--vary', 'line.infeed.length=4 m, 6 ft'], /its values must have one unit, not m and ft/],
    [['--vary', 'line.infeed.carries=belt,gravity'], /`belt` is not a number with a known unit/],
    [['--vary', 'variant=a,b'], /for variants use tapeshift compare/],
    [[...length, ...length], /line\.infeed\.length is varied twice/],
    [
      [...length, ...speed, '--vary', 'line.end.servers=1,2'],
      /3 factors are too many for a curve or a grid: give --plan N/,
    ],
    [[...length, '--measure', 'output-p10'], /a quantile over shifts/],
    [[...length, '--measure', 'jams'], /did you mean `equipment\.sealer\.jams`/],
  ])('%j', async (argv, words) => {
    const { code, err, out } = await sweep(argv)
    expect([code, out]).toEqual([2, ''])
    expect(err).toMatch(words)
  })

  it('a path that leads nowhere as an invalid scenario, values of which none is a scenario as wrong usage', async () => {
    const nowhere = await sweep(['--vary', 'line.infeed.lenght=4..8/1 m'])
    expect(nowhere.code).toBe(3)
    expect(nowhere.err).toContain('did you mean `length`?')
    const fast = await sweep(['--vary', 'line.sealer.belt-speed=60 m/min, 70 m/min'])
    expect(fast.code).toBe(2)
    expect(fast.err).toContain('faster than the rating of the top head')
  })

  it('says its examples first in its help', async () => {
    const { out, code } = await call(['sweep', '--help'])
    expect(code).toBe(0)
    expect(out.startsWith('Examples:\n  tapeshift sweep line.yaml --vary')).toBe(true)
  })
})
