/** Stations and breakdowns worked by hand. */
import { describe, expect, it } from 'vitest'
import { State } from '../../src/line/states.js'
import { trial } from '../line/gate.js'

const outs = (log: [number, string][]) => log.filter(([, what]) => what.endsWith('out')).map(([time]) => time)

describe('station', () => {
  it('works on one case after the other: 3 s each', () => {
    const { log } = trial({
      line: '{s: {type: station, time: 3 s, waiting-room: 1}}',
      arrivals: [
        [0, 0],
        [1, 0],
      ],
    })
    expect(log).toEqual([
      [0, 'case 0 in'],
      [1, 'case 0 in'],
      [3, 'case 0 out'],
      [6, 'case 0 out'],
    ])
  })

  it('without a waiting room takes the second when the first has gone', () => {
    const { log } = trial({
      line: '{s: {type: station, time: 3 s}}',
      arrivals: [
        [0, 0],
        [1, 0],
      ],
    })
    expect(log).toEqual([
      [0, 'case 0 in'],
      [3, 'case 0 out'],
      [3, 'case 0 in'],
      [6, 'case 0 out'],
    ])
  })

  it('holds a case that cannot leave, and books the time as blocked', () => {
    const { log, equipment } = trial({
      line: '{s: {type: station, time: 3 s}}',
      arrivals: [[0, 0]],
      turns: [1, 10],
    })
    expect(outs(log)).toEqual([10])
    expect(equipment[0]!.stateTimes[State.blocked]).toBeCloseTo(7, 9)
  })

  it('stops for 20 s after every second case, before the third begins', () => {
    const line = '{s: {type: station, time: 3 s, waiting-room: unlimited, every: {cases: 2, stop: 20 s}}}'
    const { log } = trial({
      line,
      arrivals: [
        [0, 0],
        [0, 0],
        [0, 0],
      ],
    })
    expect(outs(log)).toEqual([3, 6, 29])
  })

  it('serves two at a time with two servers', () => {
    const line = '{s: {type: station, time: 3 s, servers: 2, waiting-room: unlimited}}'
    const { log } = trial({
      line,
      arrivals: [
        [0, 0],
        [1, 0],
        [1, 0],
      ],
    })
    expect(outs(log)).toEqual([3, 4, 6])
  })
})

describe('breakdowns', () => {
  it('counted in running time strike after 4 s of work, and the case goes on with what was left', () => {
    const line = '{s: {type: station, time: 10 s, breakdowns: {after: 4 s, repair: 5 s}}}'
    // works 0-4, 9-13, 18-20
    expect(outs(trial({ line, arrivals: [[0, 0]] }).log)).toEqual([20])
    // the clock stands while no case is there: works 6-10, 15-19, 24-26
    expect(outs(trial({ line, arrivals: [[6, 0]] }).log)).toEqual([26])
  })

  it('counted in calendar time strike an idle station too', () => {
    const line =
      '{s: {type: station, time: 10 s, breakdowns: {after: 4 s, counted-in: calendar-time, repair: 5 s}}}'
    // down 4-9, 13-18, 22-27; works 9-13, 18-22, 27-29
    expect(outs(trial({ line, arrivals: [[6, 0]] }).log)).toEqual([29])
  })

  it('wait for somebody to come: walking and repair are booked apart', () => {
    const line = '{s: {type: station, time: 10 s, breakdowns: {after: 7 s, repair: 5 s}}}'
    const rest = 'crew: {fitter: {people: 1, walk: 30 s, does: [breakdowns]}}'
    const { log, equipment } = trial({ line, rest, arrivals: [[0, 0]] })
    expect(outs(log)).toEqual([45])
    expect(equipment[0]!.stateTimes[State.breakdownWaiting]).toBeCloseTo(30, 9)
    expect(equipment[0]!.stateTimes[State.breakdownRepair]).toBeCloseTo(5, 9)
  })

  it('of two machines wait for the same fitter, first come first served', () => {
    const piece = '{type: station, time: 10 s, breakdowns: {after: 8 s, repair: 20 s}}'
    const rest = 'crew: {fitter: {people: 1, does: [breakdowns]}}'
    const { log, equipment } = trial({
      line: `{a: ${piece}, b: ${piece}}`,
      rest,
      arrivals: [
        [0, 0],
        [0, 0],
      ],
    })
    // a works 0-8, is repaired 8-28, works 28-30; b takes the first at 30, works 30-38; a works on the second 30-36, is
    // repaired 36-56; b waits from 38 to 56, is repaired 56-76, works 76-78; a is done at 60 and stands blocked to 78
    expect(outs(log)[0]).toBe(78)
    expect(equipment[1]!.stopWaits[3]).toBeCloseTo(18, 9)
    expect(equipment[0]!.stateTimes[State.blocked]).toBeCloseTo(18, 9)
  })
})
