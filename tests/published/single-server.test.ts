/** One server with an unlimited waiting room, against the closed formulas of M/M/1 and M/G/1. */
import { describe, expect, it } from 'vitest'
import type { RunResult } from '../../src/questions/run/document.js'
import { expectAround, simulate } from './run.js'

/**
 * A station with Poisson arrivals, a mean service of about 1 s and an unlimited waiting room. The 50 h of a
 * shift are so long that its empty start does not count: an M/M/1 queue forgets it within some (1 + rho) / (1
 * - rho)^2 services, 190 s at rho 0.9. So it lowers a mean by 0.1 % at most, while the half-widths are 1 to 3
 * %.
 */
const queue = (lambda: number, time: string, shifts = 16, more = ''): Promise<RunResult> =>
  simulate({
    arrivals: `{street: {time-between: {exponential: {mean: ${1 / lambda} s}}, when-full: queue}}`,
    line: `{desk: {type: station, time: ${time}, waiting-room: unlimited${more}}}`,
    length: '50 h',
    shifts,
  })

const desk = (result: RunResult) => result.equipment.desk!.measures

describe('M/M/1', () => {
  // Wq = rho / (mu - lambda), L = rho / (1 - rho); Kleinrock, Queueing Systems, vol. 1 (1975), sec. 3.2 (from
  // memory)
  it.each([
    { rho: 0.5, shifts: 16, wait: 1, held: 1, power: 0.02 },
    { rho: 0.8, shifts: 20, wait: 4, held: 4, power: 0.03 },
    { rho: 0.9, shifts: 24, wait: 9, held: 9, power: 0.04 },
  ])('rho $rho: wait, number held and stay', async ({ rho, shifts, wait, held, power }) => {
    const result = await queue(rho, '{exponential: {mean: 1 s}}', shifts)
    expectAround(desk(result).wait, wait, power)
    expectAround(desk(result).held, held, power)
    expectAround(desk(result).utilisation, rho, 0.005)
    // the stay is exponential with mean 1 / (mu - lambda), so its 95th percentile is that times -ln 0.05
    expectAround(result.measures['time-in-system'], 1 / (1 - rho), power)
    // its histogram has bins 1 % wide
    const p95 = result.measures['time-in-system-p95']!.mean!
    expect(Math.abs(p95 / (-Math.log(0.05) / (1 - rho)) - 1)).toBeLessThan(0.01 + power)
  })

  it('rho 0.5: the number held is geometric, so that 4 is its 95th percentile', async () => {
    // P(N <= n) = 1 - rho^(n + 1): 0.9375 for 3, 0.96875 for 4
    const result = await queue(0.5, '{exponential: {mean: 1 s}}', 4)
    expect(desk(result)['held-p95']!.mean).toBe(4)
  })

  it('arrivals 1/4, services 1/3: wait 9, held 3', async () => {
    // Rios Insua et al. (2004), ex. 10.3, by way of the tests of an R package of queueing formulas
    const result = await simulate({
      arrivals: '{street: {time-between: {exponential: {mean: 4 s}}, when-full: queue}}',
      line: '{desk: {type: station, time: {exponential: {mean: 3 s}}, waiting-room: unlimited}}',
      length: '150 h',
      shifts: 20,
    })
    expectAround(desk(result).wait, 9, 0.03)
    expectAround(desk(result).held, 3, 0.03)
  })
})

describe('M/G/1: Wq = lambda E[S^2] / (2 (1 - rho)), L = lambda (Wq + E[S])', () => {
  // Pollaczek (1930) and Khinchine (1932); Kleinrock, vol. 1, sec. 5.6 (from memory)
  it.each([
    { time: '1 s', lambda: 0.5, wait: 0.5, held: 0.75 },
    { time: '1 s', lambda: 0.8, wait: 2, held: 2.4 },
    { time: '1 s', lambda: 0.9, wait: 4.5, held: 4.95 },
    { time: '{erlang: {mean: 1 s, phases: 2}}', lambda: 0.8, wait: 3, held: 3.2 },
    { time: '{lognormal: {mean: 1 s, cv: 1}}', lambda: 0.8, wait: 4, held: 4 },
    // E[S^2] = 1 + 1/12
    { time: '{uniform: {low: 0.5 s, high: 1.5 s}}', lambda: 0.8, wait: 2.1666667, held: 2.5333333 },
    // E[S^2] = (a^2 + b^2 + c^2 + ab + ac + bc) / 6 = 7/6
    { time: '{triangular: {low: 0 s, mode: 1 s, high: 2 s}}', lambda: 0.8, wait: 2.3333333, held: 2.6666667 },
    // shape 2: E[S] = scale x gamma(1.5) = 0.8862269 s, E[S^2] = scale^2, so rho is 0.7089815
    { time: '{weibull: {shape: 2, scale: 1 s}}', lambda: 0.8, wait: 1.3744833, held: 1.8085681 },
  ])('service $time, lambda $lambda', async ({ time, lambda, wait, held }) => {
    const result = await queue(lambda, time)
    expectAround(desk(result).wait, wait, 0.04)
    expectAround(desk(result).held, held, 0.04)
  })

  it('gamma service with cv 2: E[S^2] = 5', async () => {
    const result = await queue(0.8, '{gamma: {mean: 1 s, cv: 2}}', 24)
    expectAround(desk(result).wait, 10, 0.05)
    expectAround(desk(result).held, 8.8, 0.05)
  })

  it('a planned stop after each case counts as a part of its service', async () => {
    // X + V, both exponential, means 0.5 and 0.3 s, lambda 1: rho 0.8, E[S^2] = 2 x 0.25 + 2 x 0.15 + 2 x
    // 0.09 = 0.98
    const stop = ', every: {cases: 1, stop: {exponential: {mean: 0.3 s}}}'
    const result = await queue(1, '{exponential: {mean: 0.5 s}}', 16, stop)
    expectAround(desk(result).wait, 2.45, 0.03)
    // but the case has gone when the stop begins: L = 1 x (2.45 + 0.5)
    expectAround(desk(result).held, 2.95, 0.03)
  })
})
