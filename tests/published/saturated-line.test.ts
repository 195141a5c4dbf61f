/** Stations in a row that never lack cases, with rooms of few places between them: what they put out. */
import { describe, expect, it } from 'vitest'
import type { RunResult } from '../../src/questions/run/document.js'
import { expectAround, simulate } from './run.js'

const exponential = (rate: number) => `{exponential: {mean: ${1 / rate} s}}`

/**
 * A row of stations with the given laws of service and the places before each but the first. A case is ready
 * every 10 ms and waits where it is, and the first station has two places before it, so that it never lacks
 * one. A station keeps a finished case until there is room for it (blocking after service). The first case
 * needs a few seconds to come through: nothing in the 16 h of a shift.
 */
const row = (times: readonly string[], rooms: readonly number[], shifts = 10): Promise<RunResult> => {
  const stations = times.map(
    (time, index) =>
      `s${index}: {type: station, time: ${time}, waiting-room: ${index === 0 ? 2 : rooms[index - 1]}}`,
  )
  return simulate({
    arrivals: '{stock: {time-between: 10 ms, when-full: wait}}',
    line: `{${stations.join(', ')}}`,
    length: '16 h',
    shifts,
  })
}

describe('two exponential stations', () => {
  // mu (B + 2) / (B + 3), and mu1 (1 - r^(B + 2)) / (1 - r^(B + 3)) with r = mu1 / mu2 for unequal rates;
  // Hunt, Operations Research 4 (1956) 674-683 (from memory)
  it.each([
    { rates: [1, 1], room: 0, throughput: 2 / 3 },
    { rates: [1, 1], room: 1, throughput: 3 / 4 },
    { rates: [1, 1], room: 2, throughput: 4 / 5 },
    { rates: [1, 1], room: 4, throughput: 6 / 7 },
    { rates: [1, 2], room: 0, throughput: 0.8571429 },
    { rates: [2, 1], room: 1, throughput: 0.9333333 },
    { rates: [1, 1.2], room: 2, throughput: 0.8656203 },
    { rates: [1.25, 1], room: 3, throughput: 0.9111805 },
  ])('rates $rates, $room places between', async ({ rates, room, throughput }) => {
    const result = await row(rates.map(exponential), [room])
    expectAround(result.measures.throughput, throughput, 0.005)
    // each works for throughput / rate of the time; the first never waits, the last is never blocked
    const [first, last] = [result.equipment.s0!.states, result.equipment.s1!.states]
    expectAround(first.working, throughput / rates[0]!, 0.01)
    expectAround(last.working, throughput / rates[1]!, 0.01)
    expectAround(first.blocked, 1 - throughput / rates[0]!, 0.04)
    expectAround(last.waiting, 1 - throughput / rates[1]!, 0.04)
  })
})

describe('three exponential stations', () => {
  // computed exactly from the published model (its Markov chain); 22/39 is printed by Hunt (1956) as 0.5641
  // (from memory)
  it.each([
    { rates: [1, 1, 1], room: 0, throughput: 22 / 39 },
    { rates: [1, 1, 1], room: 1, throughput: 0.6704662 },
    { rates: [1, 1, 1], room: 4, throughput: 0.8074859 },
    { rates: [1, 2, 1], room: 0, throughput: 0.6737968 },
    { rates: [2, 1, 2], room: 0, throughput: 0.7880184 },
    // a line gives as much with its stations in reverse order; Muth, Management Science 25 (1979) 152-158
    // (from memory)
    { rates: [1, 1.2, 1.4], room: 0, throughput: 0.6577502 },
    { rates: [1.4, 1.2, 1], room: 0, throughput: 0.6577502 },
  ])('rates $rates, $room places between', async ({ rates, room, throughput }) => {
    const result = await row(rates.map(exponential), [room, room])
    expectAround(result.measures.throughput, throughput, 0.005)
  })

  it('five of them without any places', async () => {
    const result = await row([1, 1, 1, 1, 1].map(exponential), [0, 0, 0, 0])
    expectAround(result.measures.throughput, 0.4857981, 0.005)
  })
})

describe('two stations without places between them, any law of service', () => {
  // 1 / E[max(S1, S2)]; Muth, International Journal of Production Research 11 (1973) 155-169 (from memory)
  it.each([
    { law: 'Erlang-2', time: '{erlang: {mean: 1 s, phases: 2}}', throughput: 8 / 11 },
    { law: 'uniform from 0', time: '{uniform: {low: 0 s, high: 2 s}}', throughput: 3 / 4 },
    { law: 'uniform from 0.5', time: '{uniform: {low: 0.5 s, high: 1.5 s}}', throughput: 6 / 7 },
  ])('$law', async ({ time, throughput }) => {
    const result = await row([time, time], [0])
    expectAround(result.measures.throughput, throughput, 0.005)
  })

  it('constant service: one case a second, exactly', async () => {
    // the first case is ready at 0.01 s and out at 2.01 s, then one each second: 57 598 by 57 600 s
    const result = await row(['1 s', '1 s'], [0], 2)
    expect(result.outputs).toEqual([57_598, 57_598])
  })
})
