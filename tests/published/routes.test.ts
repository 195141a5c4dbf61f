/** Ways that part, come back and follow one another, against closed formulas of queueing theory. */
import { describe, expect, it } from 'vitest'
import { expectAround, simulate } from './run.js'

const exponential = (mean: number) => `{exponential: {mean: ${mean} s}}`
const street = (lambda: number) => `{street: {time-between: ${exponential(1 / lambda)}, when-full: queue}}`
const room = 'waiting-room: unlimited'

describe('Poisson arrivals dealt out by turns: each server sees Erlang-2 arrivals, GI/M/1', () => {
  // sigma is the root below 1 of sigma = A*(mu (1 - sigma)), A*(s) = (2 r / (2 r + s))^2 for times of two phases of mean
  // 1 / (2 r), r the rate at each server; Wq = sigma / (mu (1 - sigma)), L = rho / (1 - sigma); Kleinrock, Queueing
  // Systems, vol. 1 (1975), sec. 6.4 (from memory). With rho = r / mu that is a quadratic equation:
  // sigma = ((1 + 4 rho) - sqrt(1 + 8 rho)) / 2
  const root = (rho: number) => (1 + 4 * rho - Math.sqrt(1 + 8 * rho)) / 2

  it.each([
    { rho: 0.5, sigma: 0.381966, wait: 0.618034, shifts: 10, power: 0.02 },
    { rho: 0.8, sigma: 0.7398529, wait: 2.84398, shifts: 16, power: 0.03 },
  ])('rho $rho: sigma $sigma, wait $wait services', async ({ rho, sigma, wait, shifts, power }) => {
    expect(root(rho)).toBeCloseTo(sigma, 6)
    expect(root(rho) / (1 - root(rho))).toBeCloseTo(wait, 5)
    // both servers have a mean service of 1 s, so that the street brings 2 rho cases a second
    const result = await simulate({
      arrivals: street(2 * rho),
      line: `{deal: {type: divert, rule: alternate, to: [left, right]},
        left: {type: station, time: ${exponential(1)}, ${room}, to: exit},
        right: {type: station, time: ${exponential(1)}, ${room}}}`,
      length: '50 h',
      shifts,
    })
    for (const side of ['left', 'right']) {
      const { measures } = result.equipment[side]!
      expectAround(measures.wait, wait, power)
      expectAround(measures.held, rho / (1 - sigma), power)
      expectAround(measures.utilisation, rho, 0.01)
    }
    expectAround(result.measures['time-in-system'], wait + 1, power)
  })
})

describe('Poisson arrivals sent to the shorter of two queues', () => {
  it('wait less than by turns and more than in one queue for both', async () => {
    const result = await simulate({
      arrivals: street(1.6),
      line: `{choose: {type: divert, rule: shortest, to: [left, right]},
        left: {type: station, time: ${exponential(1)}, ${room}, to: exit},
        right: {type: station, time: ${exponential(1)}, ${room}}}`,
      length: '50 h',
      shifts: 10,
    })
    // M/M/2 at rho 0.8: T = 1 / (1 - 0.64) = 2.7778; by turns 3.84398 (above); Winston, Journal of Applied Probability
    // 14 (1977): the shortest queue is the best choice among those of separate queues (from memory)
    const { low, high } = result.measures['time-in-system']!
    expect(low).toBeGreaterThan(2.7778)
    expect(high).toBeLessThan(3.84398)
  })
})

describe('M/M/1 with feedback: each case comes back with chance p', () => {
  // the flow into the server is lambda / (1 - p), and the number there is geometric as without feedback: L = rho / (1 -
  // rho); stay of a case through all its visits L / lambda; Jackson, Operations Research 5 (1957) (from memory)
  it.each([
    { lambda: 0.4, p: 0.2, shifts: 12 },
    { lambda: 0.4, p: 0.5, shifts: 20 },
    { lambda: 0.15, p: 0.75, shifts: 20 },
  ])('lambda $lambda, p $p', async ({ lambda, p, shifts }) => {
    const rho = lambda / (1 - p)
    const result = await simulate({
      arrivals: street(lambda),
      line: `{desk: {type: station, time: ${exponential(1)}, ${room}}, look: {type: inspect, chance: ${p * 100} %, rejects-to: desk}}`,
      length: '50 h',
      shifts,
    })
    const { desk, look } = result.equipment
    expectAround(desk!.measures.utilisation, rho, 0.01)
    expectAround(desk!.measures.held, rho / (1 - rho), 0.04)
    expectAround(result.measures['time-in-system'], rho / (1 - rho) / lambda, 0.04)
    expectAround(look!.measures.inspected, rho * 50 * 3600, 0.01)
    expectAround(look!.measures.rejected, p * rho * 50 * 3600, 0.01)
    expect(result.measures.rejected!.mean).toBe(0)
  })
})

describe('an open network of Jackson', () => {
  it('two stations with feedback between them: each stands as an M/M/1 of its own flow', async () => {
    // lambda 0.4; of what leaves the second, 20 % go back to the first: both see 0.5. Services 1 s and 1.6 s: rho 0.5 and
    // 0.8, L = 1 and 4, stay (1 + 4) / 0.4 = 12.5
    const result = await simulate({
      arrivals: street(0.4),
      line: `{first: {type: station, time: ${exponential(1)}, ${room}}, second: {type: station, time: ${exponential(1.6)}, ${room}},
        look: {type: inspect, chance: 20 %, rejects-to: first}}`,
      length: '50 h',
      shifts: 24,
    })
    expectAround(result.equipment.first!.measures.held, 1, 0.03)
    expectAround(result.equipment.second!.measures.held, 4, 0.04)
    expectAround(result.measures['time-in-system'], 12.5, 0.04)
  })

  it('a tandem: Poisson in, Poisson out', async () => {
    // Burke, Operations Research 4 (1956): the second sees Poisson arrivals too. rho 0.6 and 0.75: L = 1.5 and 3
    const result = await simulate({
      arrivals: street(0.6),
      line: `{first: {type: station, time: ${exponential(1)}, ${room}}, second: {type: station, time: ${exponential(1.25)}, ${room}}}`,
      length: '50 h',
      shifts: 20,
    })
    expectAround(result.equipment.first!.measures.held, 1.5, 0.03)
    expectAround(result.equipment.second!.measures.held, 3, 0.04)
    expectAround(result.measures['time-in-system'], 4.5 / 0.6, 0.03)
  })

  it('parted by chance and joined again: three stations, each of its own flow', async () => {
    // 0.8 a second; 25 % go by the side station: rho 0.8 x 0.5 = 0.4, 0.2 x 3 = 0.6, and 0.8 x 1 = 0.8 after the join
    const result = await simulate({
      arrivals: street(0.8),
      line: `{first: {type: station, time: ${exponential(0.5)}, ${room}}, look: {type: inspect, chance: 25 %, rejects-to: side, to: last},
        side: {type: station, time: ${exponential(3)}, ${room}, repairs: true}, last: {type: station, time: ${exponential(1)}, ${room}}}`,
      length: '50 h',
      shifts: 20,
    })
    expectAround(result.equipment.first!.measures.held, 0.4 / 0.6, 0.03)
    expectAround(result.equipment.side!.measures.held, 1.5, 0.04)
    expectAround(result.equipment.last!.measures.held, 4, 0.04)
    expect(result.measures.rejected!.mean).toBe(0)
  })
})
