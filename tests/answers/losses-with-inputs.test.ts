/** Uncertainty of the inputs in losses and in what each input does: the closed form of one station. */
import { describe, expect, it } from 'vitest'
import { loadScenario, run } from '../../src/index.js'
import { inputEndsChart } from '../../src/questions/run/inputs-charts.js'
import { runReport } from '../../src/questions/run/report.js'
import { cellText } from '../../src/report/cell.js'
import { standardNormal } from '../../src/statistics/quantile.js'
import { deviation, endsOf, oneStation, timesOf } from '../known-line.js'

const scenario = loadScenario(oneStation)
const draws = 200
const answer = await run(scenario, { draws, moment: false })
const { document } = answer
const times = timesOf(scenario, draws)
const seconds = 1800

describe('losses of a run whose inputs were drawn', () => {
  const machine = document.losses!.machines[0]!

  it('have what the machine could put out with its interval: the shift over what was drawn of its time', () => {
    const ends = endsOf(times.map((time) => seconds / time))
    const { mean, low, high, inputs } = machine.limit!
    expect([mean, low, high]).toEqual([machine.could, machine.could, machine.could])
    expect(machine.could).toBeCloseTo(300, 9)
    expect((inputs!.high! - mean!) / ends.above).toBeCloseTo(1, 9)
    expect((mean! - inputs!.low!) / ends.below).toBeCloseTo(1, 9)
  })

  it('have that of each step: waiting for the first case costs its seconds over the time of a case', () => {
    const waiting = machine.losses.find(({ key }) => key === 'waiting')!.cases
    // 2 s to the first arrival and 4 m less a case at 30 m/min
    const waited = (waiting.mean! / 300) * seconds
    expect(waited).toBeGreaterThan(2)
    expect(waited).toBeLessThan(12)
    const ends = endsOf(times.map((time) => waited / time))
    expect((waiting.inputs!.high! - waiting.mean!) / ends.above).toBeCloseTo(1, 6)
    expect((waiting.mean! - waiting.inputs!.low!) / ends.below).toBeCloseTo(1, 6)
  })

  it('adds up as before, and is as it was with inputs held fixed', async () => {
    const lost = machine.losses.reduce((sum, { cases }) => sum + cases.mean!, 0)
    expect(machine.could - lost - machine.leaves.mean!).toBeCloseTo(0, 9)
    const fixed = await run(scenario, { inputs: 'fixed', moment: false })
    const exact = await run(loadScenario(oneStation.replace('{guess: 6 s, between: [5 s, 7.2 s]}', '6 s')), {
      moment: false,
    })
    expect(fixed.document.losses).toEqual(exact.document.losses)
    expect(JSON.stringify(fixed.document.losses)).not.toContain('inputs')
    expect(document.losses!.output).toMatchObject(fixed.document.losses!.output)
  })

  it('is printed with both kinds', () => {
    const table = runReport(document).tables.find(
      ({ title }) => title === 'Where output is lost, cases a shift',
    )!
    const said = table.rows.map((row) => row.map((cell) => cellText(cell, 'metric')))
    const ends = endsOf(times.map((time) => seconds / time))
    expect(said[0]![2]).toBe(`300 ± ${Math.max(ends.below, ends.above).toFixed(0)}`)
    expect(table.note).toContain('uncertainty of the inputs')
  })
})

describe('what an input does to a figure', () => {
  const told = document.drawn!.contributions.find(({ measure }) => measure === 'throughput')!
  const [time] = told.shares

  it('is its value at 5 % and 95 % of the draws: of exp(-s z) straight lines make exp(s^2 / 2) (1 - s z)', () => {
    expect(time!.path).toBe('line.end.time')
    // the ends of the guess, as far as 200 draws tell a quantile: 0.15 s is four standard errors of 5 %
    const error = (4 * Math.sqrt((0.05 * 0.95) / draws)) / 0.103
    expect(Math.abs(Math.log(time!.low.input / 5))).toBeLessThan(error * deviation)
    expect(Math.abs(Math.log(time!.high.input / 7.2))).toBeLessThan(error * deviation)
    const middle = (60 / 6) * Math.exp(deviation ** 2 / 2)
    // four standard errors of a mean and a slope of 200 draws, and three cases of 300
    const near = (4 * deviation) / Math.sqrt(draws) + 0.01
    const ends = [-1, 1].map((side) => middle * (1 - side * standardNormal(0.95) * deviation))
    expect(Math.abs((told.middle * 60) / middle - 1)).toBeLessThan(near)
    expect(Math.abs((time!.low.figure * 60) / ends[0]! - 1)).toBeLessThan(2 * near)
    expect(Math.abs((time!.high.figure * 60) / ends[1]! - 1)).toBeLessThan(2 * near)
    // the longer the time the less comes out
    expect(time!.low.figure).toBeGreaterThan(told.middle)
    expect(time!.high.figure).toBeLessThan(told.middle)
  })

  it('of a share lies within none and all', () => {
    const held = document.drawn!.contributions.find(({ measure }) => measure === 'target-held')!
    for (const { low, high } of held.shares)
      for (const { figure } of [low, high]) {
        expect(figure).toBeGreaterThan(0)
        expect(figure).toBeLessThan(1)
      }
  })

  it('is drawn to both sides of the middle, and said beside it', () => {
    const chart = inputEndsChart(document, told)!
    expect(chart.alt).toMatch(
      /^Throughput at the ends of each input, [\d.]+ cases\/min in the middle: line\.end\.time at [\d.]+ s: 1[12]\.\d, at [\d.]+ s: 8\.\d, 9\d %\.$/,
    )
    const [low, high] = chart.config.data.datasets.slice(0, 2).map(({ data }) => data[0] as [number, number])
    expect(low![0]).toBeCloseTo(told.middle * 60, 9)
    expect(high![1]).toBeCloseTo(told.middle * 60, 9)
    expect(low![1]).toBeCloseTo(time!.low.figure * 60, 9)
    expect(high![0]).toBeCloseTo(time!.high.figure * 60, 9)
  })

  it('is nothing where no input moves it', () => {
    const still = {
      ...told,
      shares: told.shares.map((each) => ({
        ...each,
        low: { input: 5, figure: told.middle },
        high: { input: 7, figure: told.middle },
      })),
    }
    expect(inputEndsChart(document, still)).toBeNull()
  })
})
