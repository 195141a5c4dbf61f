/** How often the tests of validate are wrong: records of plants that are the model, and of such as are off by just the margin. */
import { mean } from 'simple-statistics'
import { beforeAll, expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import { daysAmongRuns, goodOf, regressionOf } from '../../src/questions/validate/judged.js'
import type { SimulatedDay } from '../../src/questions/validate/simulated.js'
import { loadScenario } from '../../src/scenario/load.js'

const records = 200
const daysOfEach = 12
const runs = 39

const line = (jams: string) => `cases: {a: {length: 400 mm, width: 300 mm, height: 250 mm}}
arrivals: {packing: {time-between: {exponential: {mean: 6 s}}}}
line: {sealer: {type: sealer, jams: {chance: ${jams}, clear: {exponential: {mean: 60 s}}}}}
shift: {length: 15 min}
`

/** Good cases of shift after shift. */
function outputsOf(jams: string, seed: string) {
  const simulated = new Line(loadScenario(line(jams)).scenario)
  let shift = 0
  return () => simulated.simulate(seed, ++shift).outputs[0]!
}

interface Judged {
  within: number
  outside: number
  refused: number
  inside: number
}

let alike: Judged
let off: Judged
let wide: Judged

beforeAll(() => {
  const [model, plant, other] = [
    outputsOf('2 %', 'model'),
    outputsOf('2 %', 'plant'),
    outputsOf('4 %', 'other'),
  ]
  const tried = Array.from({ length: records }, (_, number) => {
    const days = Array.from({ length: daysOfEach }, (__, index) => ({
      ...{ day: `day ${number}-${index}`, shifts: [0], drivenBy: 'law' as const, stops: [], picked: null },
      runs: Array.from({ length: runs }, model),
    }))
    const with_ = (good: () => number): SimulatedDay[] => days.map((day) => ({ ...day, good: good() }))
    return { alike: with_(plant), off: with_(other) }
  })
  // the margin by which the other plant is truly off, to a few thousandths of itself
  const long = Array.from({ length: 20_000 }, other)
  const all = tried.flatMap((each) => each.alike.flatMap((day) => day.runs))
  const truly = Math.abs(mean(all) - mean(long)) / mean(long)
  const judged = (of: 'alike' | 'off', margin: number): Judged => {
    const found: Judged = { within: 0, outside: 0, refused: 0, inside: 0 }
    for (const [number, each] of tried.entries()) {
      const days = daysAmongRuns(each[of], String(number))
      const { verdict } = goodOf(days, { margin, confidence: 0.95, seed: String(number) })
      if (verdict === 'within') found.within++
      if (verdict === 'outside') found.outside++
      if ((regressionOf(each[of])?.p ?? 1) < 0.05) found.refused++
      found.inside += days.filter(({ isInside }) => isInside).length
    }
    return found
  }
  alike = judged('alike', truly)
  off = judged('off', truly)
  wide = judged('alike', 4 * truly)
})

/** The most of so many that a chance gives, four standard errors up. */
const most = (chance: number, of: number) => of * chance + 4 * Math.sqrt(of * chance * (1 - chance))

it('a plant that is off by just the margin is seldom shown within, and as seldom outside', () => {
  // each is a one-sided test at 5 %
  expect(off.within).toBeLessThanOrEqual(most(0.05, records))
  expect(off.outside).toBeLessThanOrEqual(most(0.05, records))
})

it('a plant that is the model is hardly ever shown outside, and nearly always within a margin that is wide', () => {
  expect(alike.outside).toBeLessThanOrEqual(most(0.05, records))
  expect(wide.within).toBeGreaterThan(0.95 * records)
})

it('its days lie where 38 of 40 do', () => {
  const days = records * daysOfEach
  const error = Math.sqrt((0.95 * 0.05) / days)
  expect(Math.abs(alike.inside / days - 0.95)).toBeLessThan(4 * error)
  // those of the other do not
  expect(off.inside).toBeLessThan(alike.inside)
})

it('difference on sum refuses it in one of twenty records', () => {
  expect(alike.refused).toBeLessThanOrEqual(most(0.05, records))
  expect(alike.refused).toBeGreaterThan(0)
})
