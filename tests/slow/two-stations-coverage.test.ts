/** Intervals of a terminating shift: two stations from empty, with stock or packers before them, whose output is known exactly. */
import { describe, expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import { expected } from './markov.js'
import { cover, expectCovers, scenarioOf } from './studies.js'
import { room, twoStations } from './two-stations.js'

/**
 * Length of a shift, s, some 150 services. Counts of so many are all but normal: a Poisson count of them has skewness
 * 0.08, and shifts of the cases held 0.2 (by the chain), which costs less coverage than can be seen here.
 */
const length = 200

const chain = twoStations(room)
const mean = (reward: (state: number) => number) => expected(chain, 0, reward, length).integral / length
const output = mean((past) => (past > 0 ? 1 : 0))
/** What is done but stands on the first station is not yet at the second. */
const held = mean((past) => Math.min(past, room + 1))
const blocked = mean((past) => (past === room + 2 ? 1 : 0))

const time = '{exponential: {mean: 1 s}}'

describe('95 % intervals of 2 000 studies of two stations that start empty', () => {
  it('stock before the first: its arrivals are constant, so that there is nothing to control', () => {
    const line = new Line(
      scenarioOf(
        // a case every 2 ms, and two that stand ready: the first station lacks none
        '{stock: {time-between: 2 ms, when-full: wait}}',
        `{first: {type: station, time: ${time}, waiting-room: 2}, second: {type: station, time: ${time}, waiting-room: ${room}}}`,
        `${length} s`,
      ),
    )
    const pairs = cover(line, [
      { name: 'throughput', truth: output },
      { name: 'equipment.second.held', truth: held },
      { name: 'equipment.first.states.blocked', truth: blocked },
    ])
    for (const { plain, controlled } of pairs) {
      expectCovers(plain)
      plain.expectCentred()
      expect(controlled.shrink, `${controlled}`).toBe(1)
      expect(controlled.share).toBe(plain.share)
    }
  })

  it('packers in its place, who wait while the line is full: the same line, with their times to control', () => {
    const line = new Line(
      scenarioOf(
        `{packers: {time-between: ${time}, when-full: wait}}`,
        `{second: {type: station, time: ${time}, waiting-room: ${room}}}`,
        `${length} s`,
      ),
    )
    const pairs = cover(line, [
      { name: 'throughput', truth: output },
      { name: 'equipment.second.held', truth: held },
      { name: 'arrivals.packers.blocked', truth: blocked },
    ])
    for (const { plain, controlled } of pairs) {
      expectCovers(plain)
      plain.expectCentred()
      expectCovers(controlled)
      controlled.expectCentred()
      expect(controlled.shrink, `${controlled}`).toBeLessThan(1)
    }
  })
})
