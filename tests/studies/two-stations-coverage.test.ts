/** Intervals of a terminating shift: two stations from empty, with stock or packers before them, whose output is known exactly. */
import { describe, expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import { expected, type Reward } from '../slow/markov.js'
import { cover, expectCovers, scenarioOf } from '../slow/studies.js'
import { held, isWorking, room, shiftLength, twoStations } from '../slow/two-stations.js'

const chain = twoStations(room)
const mean = (reward: Reward) => expected(chain, 0, reward, shiftLength).integral / shiftLength
const output = mean(isWorking)
const atSecond = mean(held)
const blocked = mean((past) => (past === room + 2 ? 1 : 0))

const time = '{exponential: {mean: 1 s}}'

describe('95 % intervals of 2 000 studies of two stations that start empty', () => {
  it('stock before the first: its arrivals are constant, so that there is nothing to control', () => {
    const line = new Line(
      scenarioOf(
        // a case every 2 ms, and two that stand ready: the first station lacks none
        '{stock: {time-between: 2 ms, when-full: wait}}',
        `{first: {type: station, time: ${time}, waiting-room: 2}, second: {type: station, time: ${time}, waiting-room: ${room}}}`,
        `${shiftLength} s`,
      ),
    )
    const pairs = cover(line, [
      { name: 'throughput', truth: output },
      { name: 'equipment.second.held', truth: atSecond },
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
        `${shiftLength} s`,
      ),
    )
    const pairs = cover(line, [
      { name: 'throughput', truth: output },
      { name: 'equipment.second.held', truth: atSecond },
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
