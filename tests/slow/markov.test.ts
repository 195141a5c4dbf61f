/** The exact answers of the slow checks against published ones: the method first, then what is judged by it. */
import { describe, expect, it } from 'vitest'
import { birthDeath, type Chain, expected, momentsOfAverage } from './markov.js'
import { inQueue, queueChain, shiftLength } from './queue.js'
import { held, hunt, isWorking, room, shiftLength as stationsShift, twoStations } from './two-stations.js'

describe('number in a queue that starts empty', () => {
  // E[L(t)], services at rate 1; the textbook transient of M/M/1 (Gross & Harris, Fundamentals of Queueing Theory, ch. 2),
  // values computed independently of this file
  it.each([
    { arrivals: 0.5, at: [1, 2, 5, 10, 20], values: [0.3347447, 0.5081243, 0.7510833, 0.8959425, 0.9748458] },
    {
      arrivals: 0.8,
      at: [1, 2, 5, 10, 20, 50, 100],
      values: [0.5515519, 0.8775838, 1.469461, 2.030282, 2.647635, 3.405039, 3.791873],
    },
    { arrivals: 0.9, at: [10, 50, 100], values: [2.530695, 5.12248, 6.443921] },
  ])('arrivals at rate $arrivals', ({ arrivals, at, values }) => {
    for (const [index, time] of at.entries()) {
      const { atEnd } = expected(birthDeath(arrivals, 1, 400), 0, inQueue, time)
      expect(Math.abs(atEnd / values[index]! - 1), `t ${time}`).toBeLessThan(3e-7)
    }
  })

  it('comes to rho / (1 - rho)', () => {
    expect(expected(queueChain, 0, inQueue, 2000).atEnd).toBeCloseTo(1, 9)
  })
})

describe('mean of the first delays in a queue that starts empty', () => {
  // Law, Simulation Modeling and Analysis, ch. 9, prints 2.12 for 25 delays, arrivals at rate 1, services of 0.9 (from
  // memory); more digits, and the other numbers, from Lindley's and Spitzer's sum over the random walk.
  // Whoever comes waits for all services of those in the queue, so the delays of the first n who come are expected to sum
  // to the integral of arrival rate x number in the queue x mean service, as long as fewer than n have come.
  it.each([
    { n: 5, mean: 0.6682502 },
    { n: 10, mean: 1.180087 },
    { n: 25, mean: 2.124489 },
  ])('$n delays: $mean', ({ n, mean }) => {
    const [arrivals, services] = [1, 1 / 0.9]
    // state = number that have come x (n + 1) + number in the queue
    const chain: Chain = {
      states: (n + 1) * (n + 1),
      moves: (state) => {
        const [come, inside] = [Math.floor(state / (n + 1)), state % (n + 1)]
        return [
          ...(come < n ? [{ to: state + n + 2, rate: arrivals }] : []),
          ...(inside > 0 ? [{ to: state - 1, rate: services }] : []),
        ].filter(({ to }) => to < (n + 1) * (n + 1))
      },
    }
    const reward = (state: number) =>
      Math.floor(state / (n + 1)) < n ? (arrivals * (state % (n + 1))) / services : 0
    // by then all have come, but for less than 1e-20
    expect(expected(chain, 0, reward, 150).integral / n).toBeCloseTo(mean, 6)
  })
})

describe('average over a shift', () => {
  it('is the same by Runge-Kutta steps as by uniformisation, and has the skewness that the shift was chosen for', () => {
    const { mean, skewness, excess } = momentsOfAverage(queueChain, 0, inQueue, shiftLength, 8 * shiftLength)
    expect(mean).toBeCloseTo(expected(queueChain, 0, inQueue, shiftLength).integral / shiftLength, 9)
    expect(skewness).toBeCloseTo(0.807, 3)
    expect(excess).toBeCloseTo(1.526, 3)
  })

  it('of many shifts in a row varies as published', () => {
    // asymptotic variance of the time-average of M/M/1, services at rate 1: 2 rho (1 + rho) / (1 - rho)^4 a second, here 24;
    // Whitt, Management Science 35 (1989) 1341-1366 (from memory). The start takes off a multiple of 1/time^2.
    const variance = (time: number) => momentsOfAverage(queueChain, 0, inQueue, time, 8 * time).sd ** 2
    const growth = (variance(800) * 800 ** 2 - variance(400) * 400 ** 2) / 400
    expect(growth).toBeCloseTo(24, 6)
  })
})

describe('two exponential stations, the first one saturated', () => {
  // Hunt, Operations Research 4 (1956) 674-683 (from memory): with room for B between them, equal rates, the line makes
  // (B + 2) / (B + 3) of what a station alone makes
  it.each([0, 1, 2, 5, 10])('room for %d', (between) => {
    const [first, second] = [10_000, 20_000].map(
      (time) => expected(twoStations(between), 0, isWorking, time).integral,
    ) as [number, number]
    expect((second - first) / 10_000).toBeCloseTo(hunt(between), 9)
  })

  it('cases held at the second one: the skewness that the shift was chosen for', () => {
    const length = stationsShift
    const { mean, skewness } = momentsOfAverage(twoStations(room), 0, held, length, 8 * length)
    expect(mean).toBeCloseTo(expected(twoStations(room), 0, held, length).integral / length, 9)
    expect(Math.abs(skewness)).toBeLessThan(0.2)
  })
})
