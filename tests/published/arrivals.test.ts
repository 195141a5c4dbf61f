/** Queues with other arrivals than Poisson, and short shifts that begin with an empty line. */
import { describe, expect, it } from 'vitest'
import { expectAround, simulate } from './run.js'

const station = '{desk: {type: station, time: {exponential: {mean: 1 s}}, waiting-room: unlimited}}'

describe('GI/M/1: Wq = sigma / (mu (1 - sigma))', () => {
  // sigma solves sigma = A*(mu (1 - sigma)) with the transform A* of the time between arrivals; Kleinrock,
  // Queueing Systems, vol. 1 (1975), sec. 6.4 (from memory). The number held is lambda (Wq + 1).
  it.each([
    { between: '2 s', rho: 0.5, wait: 0.255001 },
    { between: '1.25 s', rho: 0.8, wait: 1.692731 },
    { between: '{erlang: {mean: 1.25 s, phases: 2}}', rho: 0.8, wait: 2.84398 },
    { between: '{uniform: {low: 0 s, high: 2.5 s}}', rho: 0.8, wait: 2.520778 },
  ])('one every $between', async ({ between, rho, wait }) => {
    // 50 h: the empty start lowers a mean by far less than the half-width, as for Poisson arrivals
    const result = await simulate({
      arrivals: `{street: {time-between: ${between}, when-full: queue}}`,
      line: station,
      length: '50 h',
      shifts: 16,
    })
    expectAround(result.equipment.desk!.measures.wait, wait, 0.04)
    expectAround(result.equipment.desk!.measures.held, rho * (wait + 1), 0.03)
  })

  it('the wait lies below the bound of Kingman', async () => {
    // Wq <= lambda (var A + var S) / (2 (1 - rho)); Kingman, Proc. Camb. Phil. Soc. 58 (1962) (from memory)
    const result = await simulate({
      arrivals: '{street: {time-between: {gamma: {mean: 1.25 s, cv: 1.5}}, when-full: queue}}',
      line: '{desk: {type: station, time: {lognormal: {mean: 1 s, cv: 0.7}}, waiting-room: unlimited}}',
      length: '50 h',
      shifts: 8,
    })
    const bound = (0.8 * (1.875 ** 2 + 0.7 ** 2)) / (2 * 0.2)
    const { low, high } = result.equipment.desk!.measures.wait!
    expect(high).toBeLessThan(bound)
    // and narrowly known, so that this says something
    expect(high! - low!).toBeLessThan(0.1 * bound)
  })
})

describe('M/M/1 from an empty start: number held, averaged over a short shift', () => {
  // computed exactly from the published model: the birth-and-death equations solved in time (uniformisation),
  // the mean number integrated over the shift. At rho 0.9 the mean at 100 s is 6.443921, far from the 9 of
  // the long run.
  it.each([
    { rho: 0.5, seconds: 20, held: 0.8103177 },
    { rho: 0.8, seconds: 100, held: 3.1211097 },
    { rho: 0.9, seconds: 100, held: 4.7241965 },
  ])('rho $rho over $seconds s', async ({ rho, seconds, held }) => {
    const result = await simulate({
      arrivals: `{street: {time-between: {exponential: {mean: ${1 / rho} s}}, when-full: queue}}`,
      line: station,
      length: `${seconds} s`,
      shifts: 5000,
    })
    expectAround(result.equipment.desk!.measures.held, held, 0.04)
  })

  it('a run-out lets the queue empty: what came goes out', async () => {
    // arrivals over 20 s, then 1000 s in which two or three waiting cases are sure to leave. So the output of
    // a shift is the number of arrivals, which is Poisson: mean 0.8 x 20.
    const result = await simulate({
      arrivals: '{street: {time-between: {exponential: {mean: 1.25 s}}, when-full: queue}}',
      line: station,
      length: '20 s',
      shift: 'run-out: 1000 s',
      shifts: 2000,
    })
    expectAround(result.measures.output, 16, 0.02)
    // and its variance equals its mean; the standard error of a variance is about mean x sqrt(2 / n) = 3 %
    expect(Math.abs(result.measures.output!.sd! ** 2 / 16 - 1)).toBeLessThan(0.12)
    expect(result.measures.output!.mean).toBe(result.arrivals.street!.arrived!.mean)
  })
})
