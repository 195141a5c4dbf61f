/** The share of lost output that a buffer brings back: worked by hand, in words where it cannot be, and against simulated lines. */
import { describe, expect, it } from 'vitest'
import { handCalculation } from '../../src/hand/hand.js'
import type { BufferedPair } from '../../src/hand/pairs.js'
import { loadScenario } from '../../src/scenario/load.js'
import { efficiencyBound, shareKeptOut, shareOfFlowRecovered } from '../../src/trade/buffer.js'
import { loadDemo } from '../demo.js'
import { expectAround, simulate } from '../published/run.js'
import { unbufferedEfficiency } from '../trade/yardsticks.js'

const crew = '{fitters: {people: 2, walk: 0 s, does: [breakdowns]}}'

const station = (time: string, room: number | string, up: number, repair: number) =>
  `{type: station, time: ${time}, waiting-room: ${room}, breakdowns: {after: {exponential: {mean: ${up} s}}, repair: {exponential: {mean: ${repair} s}}}}`

/** The pair that ends in `second`. */
function pairOf(second: string, arrivals: string, line: string): BufferedPair {
  const { scenario } = loadScenario(
    `cases: {box: {length: 400 mm, width: 300 mm, height: 300 mm}}\narrivals: ${arrivals}\nline: ${line}\ncrew: ${crew}\nshift: {length: 8 h}\n`,
  )
  return handCalculation(scenario).pairs.find((pair) => pair.second === second)!
}

describe('worked by hand', () => {
  // p = 1/600, r = 1/60, s = 2, N = 15 places x 4 s: k = -0.015, exp(kN) = 0.40657, I = 39.562;
  // kept out 24.394 / (79.124 + 24.394 + 1200) = 0.018714, without places 60 / 1260 = 0.047619
  it('a flow of a case every 4 s into a machine twice as fast, with 15 places: 60.7 %', () => {
    const pair = pairOf('press', '{hall: {time-between: 4 s}}', `{press: ${station('2 s', 15, 600, 60)}}`)
    expect([pair.first, pair.between, pair.firstStops]).toEqual([['hall'], ['press'], null])
    expect([pair.places, pair.lasts]).toEqual([15, 60])
    // at what comes the machine works half of the time: it runs 1200 s from one repair to the next breakdown
    expect(pair.secondStops.meanUp).toBeCloseTo(1200, 9)
    expect(pair.secondStops.meanRepair).toBeCloseTo(60, 9)
    expect(pair.share).toBeCloseTo(0.607, 4)
  })

  // machines alike, r (2 + N (r + p)) / (2 (r + 2 p) + N (r + p)^2) with N = 20 places x 3 s: 0.858726; without places
  // 1 / 1.2, with endless ones 1 / 1.1: 0.025393 of 0.075758. Closed form: Gershwin, Manufacturing Systems Engineering (1994)
  it('two machines alike with 20 places of 3 s between them: 33.5 %', () => {
    const line = `{one: ${station('3 s', 0, 600, 60)}, two: ${station('3 s', 20, 600, 60)}}`
    const pair = pairOf('two', '{hall: {time-between: 1 s}}', line)
    expect([pair.first, pair.between, pair.how]).toEqual([['one'], ['two'], 'two machines of one speed'])
    expect(pair.share).toBeCloseTo(0.33518, 4)
  })

  it('two machines with nothing but a belt between them: nothing', () => {
    const line = `{one: ${station('3 s', 0, 600, 60)}, belt: {type: conveyor, carries: belt, length: 5 m}, two: ${station('3 s', 0, 600, 60)}}`
    const pair = pairOf('two', '{hall: {time-between: 4 s}}', line)
    expect([pair.share, pair.lasts, pair.how]).toEqual([0, 0, 'nothing can wait between them'])
  })

  it('two machines with endless room between them: all', () => {
    const line = `{one: ${station('3 s', 0, 600, 60)}, two: ${station('3 s', 'unlimited', 600, 60)}}`
    expect(pairOf('two', '{hall: {time-between: 4 s}}', line).share).toBe(1)
  })

  // a planned stop of 60 s after 300 cases, 1200 s at what comes, beside breakdowns of 30 s every 1200 s of the calendar:
  // together every 600 s, of 45 s
  it('weighs stops by how often they come', () => {
    const line = `{press: {type: station, time: 2 s, waiting-room: 15, every: {cases: 300, stop: 60 s}, breakdowns: {after: 1200 s, counted-in: calendar-time, repair: 30 s}}}`
    const { secondStops } = pairOf('press', '{hall: {time-between: 4 s}}', line)
    expect(secondStops.meanUp).toBeCloseTo(600, 9)
    expect(secondStops.meanRepair).toBeCloseTo(45, 9)
  })
})

describe('in words where the formula does not hold', () => {
  const press = `{press: ${station('2 s', 15, 600, 60)}}`

  it.each([
    ['{hall: {time-between: 4 s, when-full: queue}}', press, /^nothing is lost/],
    [
      '{a: {time-between: 8 s, when-full: queue}, b: {time-between: 8 s}}',
      press,
      /^not calculated: some of the cases/,
    ],
    ['{hall: {time-between: 1 s}}', press, /^not calculated: press does not keep up/],
    [
      '{hall: {time-between: 4 s}}',
      `{gate: {type: divert, rule: alternate, to: [press, other], time: 0 s}, press: ${station('2 s', 15, 600, 60)}, other: {type: station, time: 2 s}}`,
      /^not calculated: gate sends cases more than one way$/,
    ],
    [
      '{hall: {time-between: 8 s}, side: {time-between: 8 s, to: press}}',
      `{early: {type: station, time: 1 s}, press: ${station('2 s', 15, 600, 60)}}`,
      /^not calculated: cases come together at press$/,
    ],
  ])('%s', (arrivals, line, how) => {
    const pair = pairOf('press', arrivals, line)
    expect(pair.share).toBeNull()
    expect(pair.how).toMatch(how)
  })

  it('the demo: the infeed of 79 s brings back less than half, the belt nothing', async () => {
    const { pairs } = handCalculation(await loadDemo('soap-works'))
    expect(pairs.map(({ first, second }) => [...first, second])).toEqual([
      ['packing', 'sealer'],
      ['sealer', 'palletiser'],
    ])
    // rare stops, a buffer that is empty again before the next one: 1 - exp(-79.1 / 140) = 43 %, a little less with both
    expect(pairs[0]!.share).toBeGreaterThan(0.38)
    expect(pairs[0]!.share).toBeLessThan(1 - Math.exp(-pairs[0]!.lasts / pairs[0]!.secondStops.meanRepair))
    expect(pairs[1]!.share).toBe(0)
  })
})

describe('a flow into a machine', () => {
  const machine = { meanUp: 600, meanRepair: 60 }

  it('is kept out by what is down for want of places, and by what it cannot make at all', () => {
    // slower than the flow, with its stops: output s / (1 + 60 / 600)
    expect(shareKeptOut(0, machine, 0.5 + 1e-12)).toBeCloseTo(1 - 0.5 / 1.1, 9)
    expect(shareKeptOut(0, machine, 2)).toBeCloseTo(60 / 1260, 12)
    expect(shareKeptOut(Infinity, machine, 1.05)).toBeCloseTo(1 - 1.05 / 1.1, 12)
    expect(shareKeptOut(1e6, machine, 1.05)).toBeCloseTo(1 - 1.05 / 1.1, 9)
    expect(shareKeptOut(1e6, machine, 2)).toBeCloseTo(0, 12)
    expect(shareKeptOut(50, { meanUp: Infinity, meanRepair: 60 }, 0.9)).toBeCloseTo(0.1, 12)
  })

  it('goes over smoothly where the spare speed just makes up for the stops', () => {
    const [below, at, above] = [1.1 - 1e-6, 1.1, 1.1 + 1e-6].map((speed) => shareKeptOut(100, machine, speed))
    expect(below).toBeCloseTo(at!, 5)
    expect(above).toBeCloseTo(at!, 5)
  })

  it('is lost less with more room, and of a machine no faster than it nothing is brought back', () => {
    const shares = [0, 30, 60, 120, 600].map((buffer) => shareOfFlowRecovered(buffer, machine, 1.5))
    expect(shares).toEqual([...shares].sort((a, b) => a - b))
    expect(shares[0]).toBe(0)
    expect(shareOfFlowRecovered(600, machine, 1)).toBe(0)
  })
})

describe('against simulated lines', () => {
  it('a flow into a machine a third faster, with 80 places', async () => {
    const parts = {
      arrivals: '{hall: {time-between: 1 s}}',
      line: `{press: ${station('0.75 s', 80, 600, 60)}}`,
    }
    const { share } = pairOf('press', parts.arrivals, parts.line)
    const result = await simulate({ ...parts, crew, length: '100 h', shifts: 10 })
    // down 60 s for every 800 s in which the flow passes; a place more or less is worth 0.03 % of the output
    const lost = (60 / 860) * (1 - share!)
    expectAround(result.measures.throughput, 1 - lost, 0.003)
  })

  it('two machines that stop and mend unlike each other, with 20 places', async () => {
    const parts = {
      arrivals: '{stock: {time-between: 50 ms}}',
      line: `{one: ${station('3 s', 2, 900, 60)}, two: ${station('3 s', 20, 600, 90)}}`,
    }
    const { share } = pairOf('two', parts.arrivals, parts.line)
    const machines = [
      { meanUp: 900, meanRepair: 60 },
      { meanUp: 600, meanRepair: 90 },
    ]
    const [least, most] = [unbufferedEfficiency(machines), efficiencyBound(machines)]
    const result = await simulate({ ...parts, crew, length: '100 h', shifts: 20 })
    expectAround(result.measures.throughput, (least + share! * (most - least)) / 3, 0.01)
  })
})
