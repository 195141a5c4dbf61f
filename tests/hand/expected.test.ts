/** Expected output by hand: worked cases, closed forms of two machines, queues on the floor, and in words where there is none. */
import { describe, expect, it } from 'vitest'
import type { ExpectedOutput } from '../../src/hand/expected.js'
import { handCalculation } from '../../src/hand/hand.js'
import { varianceOf } from '../../src/scenario/law.js'
import { loadScenario } from '../../src/scenario/load.js'
import { shareKeptOut, twoMachineEfficiency } from '../../src/trade/buffer.js'
import { demos, loadDemo } from '../demo.js'
import { unbufferedEfficiency } from '../trade/yardsticks.js'
import { checkedWith } from './line.js'

const handOf = (arrivals: string, line: string, shift = '{length: 8 h}') =>
  handCalculation(
    loadScenario(
      `cases: {box: {length: 400 mm, width: 300 mm, height: 300 mm}}\narrivals: ${arrivals}\nline: ${line}\ncrew: {fitters: {people: 50, walk: 0 s, does: [breakdowns]}}\nshift: ${shift}\n`,
    ).scenario,
  )

const expectedOf = (arrivals: string, line: string, shift?: string): ExpectedOutput => {
  const { output, trouble } = handOf(arrivals, line, shift).expected
  expect(trouble).toBeNull()
  return output!
}

const fails = (up: number, repair: number) =>
  `breakdowns: {after: {exponential: {mean: ${up} s}}, repair: {exponential: {mean: ${repair} s}}}`

/** What is lost but for the cases that are still in the line at the end. */
const through = ({ throughput, left }: ExpectedOutput) => throughput + left

describe('worked by hand', () => {
  // a case every 4 s into a press of 2 s with 15 places; on average half of its own place is free too, and the next case of the packers is ready half
  // an interval after the last place is taken: 16 cases, 64 s. 300 cases are 1200 s of the flow, and the stop of 100 s is felt for 36 s:
  // 0.25 / (1 + 36 / 1200) = 0.242718
  it('an even stop past 64 s of room: 36 s of it, every 1200 s', () => {
    const press = '{press: {type: station, time: 2 s, waiting-room: 15, every: {cases: 300, stop: 100 s}}}'
    const output = expectedOf('{hall: {time-between: 4 s}}', press)
    expect(output.stops).toHaveLength(1)
    expect(output.stops[0]).toMatchObject({
      effect: 'blocks',
      stop: { key: 'planned-stops', piece: 'press' },
    })
    expect(output.stops[0]!.rest).toBeCloseTo(36, 3)
    expect(through(output)).toBeCloseTo(0.242718, 5)
    expect(output.stops[0]!.lost).toBeCloseTo(0.25 - 0.242718, 5)
  })

  // each stop for each case of the other too: 1 / (3 s (1 + 0.1 + 0.1)) = 0.277778 (Buzacott 1967; ratios 60 / 600)
  it('two machines without a place between them', () => {
    const line = `{one: {type: station, time: 3 s, waiting-room: 2, ${fails(600, 60)}}, two: {type: station, time: 3 s, ${fails(600, 60)}}}`
    const output = expectedOf('{stock: {time-between: 50 ms}}', line)
    expect(output.pace).toBe('one')
    expect(through(output)).toBeCloseTo(
      unbufferedEfficiency([
        { meanUp: 600, meanRepair: 60 },
        { meanUp: 600, meanRepair: 60 },
      ]) / 3,
      6,
    )
    expect(output.stops.map(({ effect }) => effect).sort()).toEqual(['blocks', 'own'])
  })

  // packers, exponential in the mean 5 s, put cases on a conveyor that is clear 1 s after the one before: 400 mm at 24 m/min. They wait
  // E[(1 - X)+] = 1 - 5 (1 - exp(-0.2)) = 0.093654 s a case: 1 / 5.093654 = 0.196323
  it('packers who wait for the entry to be clear', () => {
    const output = expectedOf(
      '{hall: {time-between: {exponential: {mean: 5 s}}}}',
      '{infeed: {type: conveyor, length: 8 m, speed: 24 m/min, spacing: 0 mm}, press: {type: station, time: 2 s}}',
    )
    expect(through(output)).toBeCloseTo(0.196323, 6)
    expect(output.entry).toBeCloseTo(0.2 - 0.196323, 6)
    // 20 s on the conveyor and 2 s in the press: so many of 8 h are still on their way
    expect(output.left).toBeCloseTo((0.196323 * 22) / 28_800, 6)
  })
})

describe('people who are busy elsewhere', () => {
  // each machine asks one person for 60 s in 660: at the other's stop that one is busy with chance 1 / 11 and then for 60 s more, of
  // exponential works (mean square over twice the mean). With stops of the line as counted over the shift
  it('make a stop longer by the chance that they are, times what is left of their task', () => {
    const line = `{one: {type: station, time: 3 s, waiting-room: 2, ${fails(600, 60)}}, two: {type: station, time: 3 s, ${fails(600, 60)}}}`
    const { scenario } = loadScenario(
      `cases: {box: {length: 400 mm, width: 300 mm, height: 300 mm}}\narrivals: {stock: {time-between: 50 ms}}\nline: ${line}\ncrew: {fitter: {people: 1, walk: 0 s, does: [breakdowns]}}\nshift: {length: 8 h}\n`,
    )
    const hand = handCalculation(scenario)
    const busy = hand.crews[0]!.busy / 2
    expect(hand.expected.output!.stops[0]!.stop.mean).toBeCloseTo(60 + busy * 60, 6)
  })
})

describe('closed forms', () => {
  // continuous material, running and stopped times exponential: shareKeptOut, derived in the model of Gershwin (1994)
  it('a flow into a machine twice as fast: what it keeps out', () => {
    const press = `{press: {type: station, time: 2 s, waiting-room: 15, ${fails(600, 60)}}}`
    const exact = 1 - shareKeptOut(64, { meanUp: 600, meanRepair: 60 }, 2)
    expect(through(expectedOf('{hall: {time-between: 4 s}}', press)) * 4).toBeCloseTo(exact, 3)
  })

  // two machines of one speed, either side of the optimum of the approximation: Gershwin (1994), the values of trade-buffer.test.ts.
  // Where both are always busy the one waits for the other in ways that the pace of one does not show: within 1.5 %
  it.each([
    [5, 600, 60, 600, 60],
    [20, 600, 60, 600, 60],
    [60, 600, 60, 600, 60],
    [200, 600, 60, 600, 60],
    [20, 900, 60, 600, 90],
    [20, 600, 90, 900, 60],
  ])('two machines always busy, %d places: %d s and %d s, %d s and %d s', (room, up1, down1, up2, down2) => {
    const line = `{one: {type: station, time: 3 s, waiting-room: 2, ${fails(up1, down1)}}, two: {type: station, time: 3 s, waiting-room: ${room}, ${fails(up2, down2)}}}`
    const exact = twoMachineEfficiency(
      room * 3,
      { meanUp: up1, meanRepair: down1 },
      { meanUp: up2, meanRepair: down2 },
    )
    const output = expectedOf('{stock: {time-between: 50 ms}}', line)
    expect(Math.abs((through(output) * 3) / exact - 1)).toBeLessThan(0.015)
  })

  it('endless room between them: that of the worse one alone, which no buffer exceeds', () => {
    const line = `{one: {type: station, time: 3 s, waiting-room: 2, ${fails(600, 60)}}, two: {type: station, time: 3 s, waiting-room: unlimited, ${fails(600, 90)}}}`
    expect(through(expectedOf('{stock: {time-between: 50 ms}}', line)) * 3).toBeCloseTo(1 / 1.15, 6)
  })
})

describe('cases that wait on the floor', () => {
  const press = `{press: {type: station, time: 2 s, waiting-room: 15, ${fails(600, 60)}}}`

  it('are not lost, but for those that are left at the end of the shift', () => {
    const output = expectedOf('{hall: {time-between: 4 s, when-full: queue}}', press)
    expect(output.stops).toEqual([])
    expect(output.throughput + output.left).toBeCloseTo(0.25, 9)
    expect(output.left).toBeGreaterThan(0)
  })

  // 1 s a case and 2.2 s on average with stops: 0.5 / 1.1 come through, the rest is left over
  it('are left over where more comes than the line does', () => {
    const output = expectedOf('{hall: {time-between: 1 s, when-full: queue}}', press)
    expect(output.throughput + output.left).toBeCloseTo(0.5 / 1.1, 6)
    expect(output.slower + output.stops[0]!.lost).toBeCloseTo(1 - 0.5 / 1.1, 6)
  })

  it('that are left at the end may leave in the run-out', () => {
    const [none, some] = ['{length: 8 h}', '{length: 8 h, run-out: 1 h}'].map((shift) =>
      expectedOf('{hall: {time-between: 4 s, when-full: queue}}', press, shift),
    )
    expect(some!.left).toBe(0)
    expect(none!.throughput).toBeLessThan(some!.throughput)
  })
})

describe('all steps', () => {
  it.each(demos)('of %s add up to what arrives, and a demo without a figure says why', async (name) => {
    const scenario = await loadDemo(name)
    const { line, expected } = handCalculation(scenario)
    if (expected.output === null) {
      expect(expected.trouble).toMatch(/^(sources|some of|cases|.* sends cases)/)
      return
    }
    const { throughput, spoilt, slower, entry, left, stops } = expected.output
    const lost = stops.reduce((sum, each) => sum + each.lost, spoilt + slower + entry + left)
    expect(throughput + lost).toBeCloseTo(line.arriving, 9)
    expect(throughput).toBeLessThanOrEqual(line.throughput * (1 + 1e-9))
  })

  it('by hours: what the busiest brings too much is not made up where packers wait', () => {
    const arrivals = (rates: string) => `{hall: {by-hour: {cases: [${rates}], spaced: evenly}}}`
    const press = '{press: {type: station, time: 4 s, waiting-room: 2}}'
    const even = expectedOf(arrivals('800 cases/h'), press)
    const peaked = expectedOf(
      arrivals(
        '1200 cases/h, 400 cases/h, 1200 cases/h, 400 cases/h, 1200 cases/h, 400 cases/h, 1200 cases/h, 400 cases/h',
      ),
      press,
    )
    expect(through(even) * 3600).toBeCloseTo(800, 6)
    // 900 an hour are the most that the press does
    expect(through(peaked) * 3600).toBeCloseTo((900 + 400) / 2, 6)
    expect(peaked.slower * 3600).toBeCloseTo(150, 6)
  })
})

describe('in words where the line is no series', () => {
  it.each([
    [
      '{a: {time-between: 8 s, when-full: queue}, b: {time-between: 8 s}}',
      '{press: {type: station, time: 2 s}}',
      /^some of the cases without room/,
    ],
    ['{a: {time-between: 8 s, when-full: turn-away}}', '{press: {type: station, time: 2 s}}', /turned away$/],
    [
      '{a: {time-between: 8 s}, b: {time-between: 8 s, to: press}}',
      '{early: {type: station, time: 1 s}, press: {type: station, time: 2 s}}',
      /^sources feed more than one place$/,
    ],
    [
      '{a: {time-between: 8 s}}',
      '{gate: {type: divert, rule: alternate, to: [one, two], time: 0 s}, one: {type: station, time: 2 s, to: exit}, two: {type: station, time: 2 s}}',
      /^gate sends cases more than one way$/,
    ],
  ])('%s, %s', (arrivals, line, trouble) => {
    const { expected } = handOf(arrivals, line)
    expect(expected.output).toBeNull()
    expect(expected.trouble).toMatch(trouble)
  })

  it('then no target is called missed', () => {
    const { findings } = checkedWith(['arrivals.packing.when-full=turn-away', 'target=14.99 cases/min'])
    expect(findings.filter(({ code }) => /expected/.test(code))).toEqual([])
  })
})

describe('spread of a time', () => {
  // Johnson, Kotz & Balakrishnan, Continuous Univariate Distributions 1 and 2 (from memory): mean^2 / phases, (high - low)^2 / 12,
  // Weibull of shape 1 exponential, triangular (a^2 + b^2 + c^2 - ab - ac - bc) / 18, half normal sd^2 (1 - 2 / pi)
  it.each([
    [{ law: 'constant', value: 5 }, 0],
    [{ law: 'exponential', mean: 5 }, 25],
    [{ law: 'lognormal', mean: 5, cv: 0.4 }, 4],
    [{ law: 'erlang', mean: 6, phases: 4 }, 9],
    [{ law: 'weibull', shape: 1, scale: 3 }, 9],
    [{ law: 'uniform', low: 2, high: 8 }, 3],
    [{ law: 'triangular', low: 0, mode: 0, high: 6 }, 2],
    [{ law: 'normal', mean: 0, sd: 2, atLeast: 0 }, 4 * (1 - 2 / Math.PI)],
    [{ law: 'observed', file: '', column: '', unit: 's', values: [1, 3, 5] }, 8 / 3],
  ] as const)('%o: %d', (law, variance) =>
    expect(varianceOf(law as Parameters<typeof varianceOf>[0])).toBeCloseTo(variance, 9),
  )
})
