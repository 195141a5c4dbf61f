/** Servers side by side, against Erlang's delay formula. */
import { describe, expect, it } from 'vitest'
import { expectAround, simulate } from './run.js'

/**
 * Chance to wait: Erlang's loss B by its recursion, then his delay formula C = B / (1 - (a / c)(1 - B));
 * Erlang (1917).
 */
function delayChance(servers: number, load: number): number {
  let loss = 1
  for (let c = 1; c <= servers; c++) loss = (load * loss) / (c + load * loss)
  return loss / (1 - (load / servers) * (1 - loss))
}

describe('M/M/c: Wq = C / (c mu - lambda), L = lambda (Wq + 1 / mu)', () => {
  it.each([
    // Rios Insua et al. (2004), ex. 10.9, by way of the tests of an R package of queueing formulas: lambda 5,
    // mu 10
    { between: 12, time: 6, servers: 2, hours: 800, shifts: 10, wait: 0.4, held: 0.5333333 },
    // lecture slides of ETH Zurich, by way of the tests of an Octave package: lambda 9, mu 5; L 9.474 and
    // 1.905
    { between: 4, time: 7.2, servers: 2, hours: 400, shifts: 16, wait: 30.694737, held: 9.4736842 },
    { between: 4, time: 7.2, servers: 4, hours: 400, shifts: 10, wait: 0.4206557, held: 1.9051639 },
    // Banks, Carson, Nelson and Nicol, Discrete-Event System Simulation, the tool crib (from memory): 2 and
    // 1.5 a minute
    { between: 30, time: 40, servers: 2, hours: 2000, shifts: 10, wait: 32, held: 2.4 },
    // the chance to wait is printed as 0.554 in tables of Erlang's delay formula (from memory)
    { between: 1, time: 4, servers: 5, hours: 100, shifts: 10, wait: 2.2164502, held: 6.2164502 },
  ])(
    '$servers servers, every $between s, $time s',
    async ({ between, time, servers, wait, held, hours, shifts }) => {
      // shifts of 100 000 services and more: the empty start does not count beside the half-width
      const room = `servers: ${servers}, waiting-room: unlimited`
      const result = await simulate({
        arrivals: `{street: {time-between: {exponential: {mean: ${between} s}}, when-full: queue}}`,
        line: `{counter: {type: station, time: {exponential: {mean: ${time} s}}, ${room}}}`,
        length: `${hours} h`,
        shifts,
      })
      const { measures } = result.equipment.counter!
      expectAround(measures.wait, wait, 0.03)
      expectAround(measures.held, held, 0.03)
      expectAround(measures.utilisation, time / between / servers, 0.01)
      const mu = 1 / time
      expect(delayChance(servers, time / between) / (servers * mu - 1 / between)).toBeCloseTo(wait, 6)
    },
  )

  it('the delay formula gives the printed chances to wait', () => {
    // 0.1: ex. 10.9 above; 0.188 for 2 servers and 0.5 / 0.7 erlangs: the same tests
    expect(delayChance(2, 0.5)).toBeCloseTo(0.1, 9)
    expect(delayChance(2, 0.5 / 0.7)).toBeCloseTo(0.188, 3)
    expect(delayChance(5, 4)).toBeCloseTo(0.554, 3)
  })
})
