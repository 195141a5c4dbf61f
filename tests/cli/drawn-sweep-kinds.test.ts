/** Grids, inputs moved alone and plans of a scenario that says how well values are known: the closed form of one station. */
import { readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { loadScenario, sweep } from '../../src/index.js'
import type { SweepOptions } from '../../src/questions/sweep/asked.js'
import { SweepDraws, sweepDraws } from '../../src/questions/sweep/drawn.js'
import { threads } from '../../src/shifts/threads/pool.js'
import { endsOf, oneStation, timesOf } from '../known-line.js'
import { call } from './in-process.js'

const scenario = loadScenario(oneStation, { shifts: 4 })
const throughput = ['throughput']
const grid: SweepOptions = {
  vary: ['line.infeed.length=4 m,5 m', 'line.infeed.speed=24 m/min,30 m/min'],
  measure: throughput,
}
/** Three cases of 300 are lost at the ends of a shift. */
const asGood = 3 / 300
/**
 * What a shift puts out is the whole number of times in what is left of it after the first case came, 12 s or less of 1800: the spread of the draws is less by as
 * much, and rounding to whole cases of 300 adds (0.3 / 300 / 0.1)^2 of itself at most, in 30 draws not all alike. It moves their skewness by 3 x 0.01 x sqrt(3 / 30),
 * one standard error, and the ends by t / 6 of that, 0.0032 of the half: two of these.
 */
const isTheSame = (off: number, closed: number, { below, above }: { below: number; above: number }) => {
  // of the spread, whether the end is the near or the far one
  const half = (below + above) / 2
  expect((off - closed) / half).toBeGreaterThan(-12 / 1800 - 0.003 - 0.0064)
  expect((off - closed) / half).toBeLessThan(0.003 + 0.0064)
}

describe('a grid', () => {
  it('gives each cell what is not known of its inputs: Student times the spread of 60 / time over the draws', async () => {
    const { document } = await sweep(scenario, grid)
    expect(document.drawn).toEqual({ draws: 30, shifts: 4 })
    const ends = endsOf(timesOf(scenario, 30).map((time) => 1 / time))
    expect(document.points).toHaveLength(4)
    for (const { measures } of [...document.points, { measures: document.base }]) {
      const { mean, low, high, inputs } = measures.throughput!
      expect(high! - low!).toBe(0)
      expect(mean! / (1 / 6) - 1).toBeGreaterThanOrEqual(-asGood - 1e-9)
      expect(mean! / (1 / 6) - 1).toBeLessThanOrEqual(0)
      isTheSame(inputs!.high! - mean!, ends.above, ends)
      isTheSame(mean! - inputs!.low!, ends.below, ends)
    }
  })

  it('with inputs held fixed is as if nothing but the values were known', async () => {
    const exact = loadScenario(oneStation.replace('{guess: 6 s, between: [5 s, 7.2 s]}', '6 s'), {
      shifts: 4,
    })
    const fixed = await sweep(scenario, { ...grid, inputs: 'fixed' })
    const known = await sweep(exact, grid)
    expect(fixed.document.points).toEqual(known.document.points)
    expect(fixed.document).not.toHaveProperty('drawn')
    for (const name of ['designs.csv', 'differences.csv'])
      expect(fixed.rows().get(name)).toBe(known.rows().get(name))
  })

  it('of many cells takes fewer draws, and as many as are asked for', async () => {
    const asked = (options: SweepOptions, designs: number) =>
      sweepDraws(options, { kind: 'grid', varied: [], designs }, scenario, 100)
    expect(asked({}, 50)).toEqual({ draws: 30, shifts: 5 })
    expect(asked({}, 51)).toEqual({ draws: 20, shifts: 4 })
    expect(asked({ draws: 200 }, 2500)).toEqual({ draws: 200, shifts: 4 })
    expect(asked({ inputs: 'fixed' }, 4)).toBeNull()
    const { document } = await sweep(scenario, { ...grid, draws: 12 })
    expect(document.drawn).toEqual({ draws: 12, shifts: 4 })
  })

  it('says so, and in its rows', async () => {
    const asked = ['sweep', '-', '--no-files', '--full', '--workers', '1', '--shifts', '4']
    const { out } = await call([...asked, ...grid.vary!.flatMap((each) => ['--vary', each])], {
      stdin: oneStation,
    })
    expect(out.replace(/\s+/g, ' ')).toContain(
      'Plus-minus holds luck of the simulation and what is not known of the inputs: 30 draws of what the inputs may be, 4 shifts each, the same for all. What is varied is taken as it is varied.',
    )
    expect(out).not.toMatch(/NaN|undefined|Infinity/)
    const { rows } = await sweep(scenario, grid)
    expect(rows().get('designs.csv')!.split('\n')[0]).toContain('high of both kinds')
  })
})

describe('inputs moved alone', () => {
  const each: SweepOptions = {
    each: true,
    vary: ['arrivals.p.time-between=2..12 s', 'line.end.time=5..7 s'],
    measure: throughput,
  }

  it('hold what draws add to a difference: a station that waits puts out 5 a minute, whatever its time', async () => {
    const { document } = await sweep(scenario, each)
    const { high } = document.each!.inputs[0]!.differences.throughput!
    const ends = endsOf(
      timesOf(scenario, 30).map((time) => 1 / 12 - 1 / time),
      // two inputs of two ends
      1 - 0.05 / 4,
    )
    expect(high!.mean!).toBeCloseTo(1 / 12 - 1 / 6, 2)
    isTheSame(high!.inputs!.high! - high!.mean!, ends.above, ends)
    expect(high!.isShown).toBe(high!.inputs!.high! < 0)
  })

  it('hold the input that moves at both of what is compared, so that nothing of it is left open', async () => {
    const { document } = await sweep(scenario, each)
    const { low, high } = document.each!.inputs[1]!.differences.throughput!
    expect(low).not.toHaveProperty('inputs')
    expect(low!.mean!).toBeCloseTo(1 / 5 - 1 / 6, 2)
    expect([low!.isShown, high!.isShown]).toEqual([true, true])
    expect(document.base.throughput!.inputs!.share).toBe(1)
  })
})

describe('a plan', () => {
  it('holds in each effect what the draws make of it: a longer shift brings its time over the time of a case', async () => {
    const { document } = await sweep(scenario, {
      ...{ plan: 5, measure: ['output', 'target-held'] },
      vary: ['shift.length=0.5..1 h', 'line.infeed.length=4..5 m', 'line.infeed.speed=24..30 m/min'],
    })
    const { effects } = document.plan!.output!
    const [longer] = effects
    const ends = endsOf(
      timesOf(scenario, 30).map((time) => 1800 / time),
      1 - 0.05 / 6,
    )
    // counts are whole numbers
    expect(Math.abs(longer!.mean - 300)).toBeLessThan(2)
    // what the designs lie off a straight line by is next to nothing of it
    expect((longer!.inputs!.high! - longer!.mean) / ends.above).toBeCloseTo(1, 1)
    expect(longer!.isShown).toBe(longer!.inputs!.low! > 0)
    for (const { mean, inputs } of [...effects, ...document.plan!['target-held']!.effects]) {
      expect(inputs!.low!).toBeLessThanOrEqual(mean)
      expect(inputs!.high!).toBeGreaterThanOrEqual(mean)
    }
    for (const { measures } of document.points) expect(measures.output!.inputs!.share).toBe(1)
  })
})

describe('draws of a sweep', () => {
  it('are kept by names of their own for other shifts and other inputs held: none is taken for another', () => {
    const base = { set: {}, at: [], scenario: scenario.scenario, key: 'base' }
    const moved = { ...base, set: { 'line.end.time': '5 s' }, key: 'moved' }
    const jams = { ...scenario.evidence[0]!, path: 'line.infeed.length', at: ['line', 'infeed', 'length'] }
    const loaded = { evidence: [...scenario.evidence, jams] }
    const keys = (kind: 'each' | 'grid', shifts: number) =>
      new SweepDraws({ draws: 10, shifts }, kind, [], loaded).planned([base, moved]).map(({ key }) => key)
    // the base as drawn, the base with the time held, and the end that moves it
    const each = keys('each', 4)
    expect(each).toHaveLength(30)
    expect(new Set([...each, ...keys('each', 5)]).size).toBe(60)
    const planned = new SweepDraws({ draws: 10, shifts: 4 }, 'each', [], loaded).planned([base, moved])
    expect([...new Set(planned.map(({ drawOf }) => drawOf))].sort()).toEqual([0, 1])
    for (const { key, inputs } of planned as { key: string; inputs?: number[] }[])
      expect(inputs).toHaveLength(key.includes('holding') ? 1 : 2)
  })

  it('are the same with two threads', async () => {
    const executor = threads(2, new URL('../../.build/cli/worker.js', import.meta.url))
    try {
      const [one, two] = [await sweep(scenario, grid), await sweep(scenario, grid, { executor })]
      expect(two.document).toEqual(one.document)
      expect(two.rows()).toEqual(one.rows())
    } finally {
      await executor.close()
    }
  })

  it('go on from the journal to the same bytes', async () => {
    const argv = ['sweep', '-', '--full', '--workers', '1', '--shifts', '4', '--quiet']
    const vary = [...argv, ...grid.vary!.flatMap((each) => ['--vary', each])]
    const whole = await call(vary, { stdin: oneStation })
    const names = ['result.json', 'designs.csv', 'differences.csv']
    const bytes = (cwd: string) =>
      names.map((name) => readFileSync(path.join(cwd, 'out/stdin-sweep', name), 'utf8'))
    for (const interruptAfter of [20, 150]) {
      const { code, cwd } = await call(vary, { stdin: oneStation, interruptAfter })
      if (code === 0) continue
      const resumed = await call([...vary, '--resume'], { stdin: oneStation, cwd })
      expect(resumed.code).toBe(0)
      expect(bytes(cwd)).toEqual(bytes(whole.cwd))
    }
  })
})
