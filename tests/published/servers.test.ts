/** Servers side by side, against Erlang's delay formula. */
import { describe, expect, it } from 'vitest'
import { expectAround, simulate } from './run.js'

/** Erlang's loss formula by its recursion, and his delay formula from it: C = B / (1 - (a / c)(1 - B)). Erlang (1917). */
function delayChance(servers: number, load: number): number {
  let loss = 1
  for (let c = 1; c <= servers; c++) loss = (load * loss) / (c + load * loss)
  return loss / (1 - (load / servers) * (1 - loss))
}

describe('M/M/c: Wq = C / (c mu - lambda), L = lambda (Wq + 1 / mu)', () => {
  it.each([
    // Rios Insua et al. (2004), ex. 10.9, by way of the tests of the R package `queueing`: lambda 5, mu 10
    {
      between: '12 s',
      time: '6 s',
      servers: 2,
      length: '800 h',
      shifts: 10,
      wait: 0.4,
      held: 0.5333333,
      load: 0.5,
      power: 0.03,
    },
    // lecture slides of ETH Zurich, asserted in the GNU Octave package `queueing`: lambda 9, mu 5
    {
      between: '4 s',
      time: '7.2 s',
      servers: 2,
      length: '400 h',
      shifts: 20,
      wait: 30.694737,
      held: 9.4736842,
      load: 1.8,
      power: 0.03,
    },
    {
      between: '4 s',
      time: '7.2 s',
      servers: 4,
      length: '400 h',
      shifts: 10,
      wait: 0.4206557,
      held: 1.9051639,
      load: 1.8,
      power: 0.03,
    },
    // Banks, Carson, Nelson and Nicol, Discrete-Event System Simulation, the tool crib (from memory): lambda 2, mu 1.5 a minute
    {
      between: '30 s',
      time: '40 s',
      servers: 2,
      length: '2000 h',
      shifts: 10,
      wait: 32,
      held: 2.4,
      load: 4 / 3,
      power: 0.02,
    },
    // the chance to wait is printed as 0.554 in tables of Erlang's delay formula (from memory)
    {
      between: '1 s',
      time: '4 s',
      servers: 5,
      length: '100 h',
      shifts: 10,
      wait: 2.2165,
      held: 6.2165,
      load: 4,
      power: 0.03,
    },
  ])(
    '$servers servers, load $load',
    async ({ between, time, servers, length, shifts, wait, held, load, power }) => {
      // shifts of 100 000 services and more: the empty start does not count beside the half-width
      const result = await simulate({
        arrivals: `{street: {time-between: {exponential: {mean: ${between}}}, when-full: queue}}`,
        line: `{counter: {type: station, time: {exponential: {mean: ${time}}}, servers: ${servers}, waiting-room: unlimited}}`,
        length,
        shifts,
      })
      const { measures } = result.equipment.counter!
      expectAround(measures.wait, wait, power)
      expectAround(measures.held, held, power)
      expectAround(measures.utilisation, load / servers, 0.01)
    },
  )

  it('the delay formula gives the printed chances to wait', () => {
    // 0.1: ex. 10.9 above; 0.188 for 2 servers and 0.5 / 0.7 erlangs: tests of the R package `queueing`
    expect(delayChance(2, 0.5)).toBeCloseTo(0.1, 9)
    expect(delayChance(2, 0.5 / 0.7)).toBeCloseTo(0.188, 3)
    expect(delayChance(5, 4)).toBeCloseTo(0.554, 3)
  })
})
