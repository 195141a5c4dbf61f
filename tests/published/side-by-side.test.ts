/**
 * Stations side by side, through the divert that comes with them, against published values of queues.
 *
 * M/M/2 has one queue. A divert to the shortest, without time of its own, before stations without a place to wait, makes exactly that:
 * whoever is next stands in the divert until one of them is free, and the rest queue before it.
 */
import { describe, expect, it } from 'vitest'
import { expectAround, simulate } from './run.js'

describe('M/M/2 by two stations side by side: L = lambda (Wq + 1 / mu)', () => {
  it.each([
    // Rios Insua et al. (2004), ex. 10.9, by way of the tests of an R package of queueing formulas: lambda 5, mu 10
    { between: 12, time: 6, hours: 800, shifts: 10, held: 0.5333333 },
    // Banks, Carson, Nelson and Nicol, Discrete-Event System Simulation, the tool crib (from memory): 2 and 1.5 a minute
    { between: 30, time: 40, hours: 2000, shifts: 10, held: 2.4 },
  ])('every $between s, $time s', async ({ between, time, held, hours, shifts }) => {
    const result = await simulate({
      arrivals: `{street: {time-between: {exponential: {mean: ${between} s}}, when-full: queue}}`,
      line: `{counter: {type: station, time: {exponential: {mean: ${time} s}}, side-by-side: 2}}`,
      length: `${hours} h`,
      shifts,
    })
    // all are in the line or before it: time in the line from the arrival on, by Little's law
    expectAround(result.measures['time-in-system'], held * between, 0.03)
    // the first that is free and named first has more to do; together they are busy lambda / mu of the time
    const [one, two] = ['counter 1', 'counter 2'].map((name) => result.equipment[name]!.states.working!.mean!)
    expect(one).toBeGreaterThan(two!)
    expect(one! + two!).toBeCloseTo(time / between, 1)
  })
})

describe('E2/M/1 by two stations in turn: each sees every second case of a Poisson stream, so Erlang-2 intervals', () => {
  // G/M/1: W = 1 / (mu (1 - r)), r the root in (0, 1) of r = A*(mu (1 - r)); of Erlang-2 intervals of rate lambda it is
  // r = (2 lambda / (2 lambda + mu (1 - r)))^2, a cubic over 1 - r: r^2 - (1 + 4 rho) r + 4 rho^2 = 0. Kleinrock,
  // Queueing Systems I (1975), ch. 6 (from memory)
  const root = (rho: number) => (1 + 4 * rho - Math.sqrt(1 + 8 * rho)) / 2

  it('the root solves the equation of the transform', () => {
    for (const rho of [0.2, 0.5, 0.8]) {
      const r = root(rho)
      expect((2 * rho) / (2 * rho + 1 - r)).toBeCloseTo(Math.sqrt(r), 12)
    }
  })

  it.each([{ rho: 0.5 }, { rho: 0.8 }])('load $rho', async ({ rho }) => {
    const between = 10
    // each server has a case every 20 s on the mean
    const time = rho * 2 * between
    const result = await simulate({
      arrivals: `{street: {time-between: {exponential: {mean: ${between} s}}, when-full: queue}}`,
      line: `{counter: {type: station, time: {exponential: {mean: ${time} s}}, waiting-room: unlimited, side-by-side: 2, divert: {rule: alternate}}}`,
      length: '1000 h',
      shifts: 10,
    })
    const r = root(rho)
    for (const name of ['counter 1', 'counter 2']) {
      const { measures } = result.equipment[name]!
      // Wq = r / (mu (1 - r))
      expectAround(measures.wait, (time * r) / (1 - r), 0.03)
      expectAround(measures.utilisation, rho, 0.01)
    }
  })
})
