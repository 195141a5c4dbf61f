/** Conveyors worked by hand from the kinematic relation: each log is the whole of what happens. */
import { describe, expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import { loadScenario } from '../../src/scenario/load.js'
import { trial } from '../line/gate.js'
import { reader } from '../line/shift.js'

const accumulating = (more = '') =>
  `{c: {type: conveyor, length: 6 m, speed: 30 m/min, spacing: 100 mm${more}}}`

describe('accumulating conveyor', () => {
  it('carries a case its length at its speed: 6 m at 0.5 m/s in 12 s', () => {
    const { log } = trial({ line: accumulating(), arrivals: [[0, 0]] })
    expect(log).toEqual([
      [0, 'case 0 in'],
      [12, 'case 0 out'],
    ])
  })

  it('lets the second in when the first has moved its length and the spacing: 0.5 m in 1 s', () => {
    const { log } = trial({
      line: accumulating(),
      arrivals: [
        [0, 0],
        [0.2, 0],
      ],
    })
    expect(log).toEqual([
      [0, 'case 0 in'],
      [1, 'case 0 in'],
      [12, 'case 0 out'],
      [13, 'case 0 out'],
    ])
  })

  it('closes up behind a case that stands; the second comes 0.5 m after the first has left at 20 s', () => {
    const { log } = trial({
      line: accumulating(),
      arrivals: [
        [0, 0],
        [4, 0],
      ],
      turns: [10, 20],
    })
    expect(log).toEqual([
      [0, 'case 0 in'],
      [4, 'case 0 in'],
      [20, 'case 0 out'],
      [21, 'case 0 out'],
    ])
  })

  it('adds the start delay for each case that follows from rest', () => {
    const { log } = trial({
      line: accumulating(', start-delay: 0.4 s'),
      arrivals: [
        [0, 0],
        [4, 0],
        [8, 0],
      ],
      turns: [10, 30],
    })
    expect(log.slice(3)).toEqual([
      [30, 'case 0 out'],
      [31.4, 'case 0 out'],
      [32.8, 'case 0 out'],
    ])
  })

  it('holds floor((6 + 0.1) / 0.5) = 12 cases and lets the next in when the first leaves', () => {
    const arrivals = Array.from({ length: 14 }, (): [number, number] => [0, 0])
    const { log, equipment } = trial({ line: accumulating(), arrivals, turns: [1, 100] })
    const ins = log.filter(([time, what]) => what.endsWith('in') && time < 100)
    expect(ins).toHaveLength(12)
    expect(log.find(([time, what]) => time >= 100 && what.endsWith('in'))).toEqual([100, 'case 0 in'])
    expect(equipment[0]!.stateTimes[2]).toBeCloseTo(100 - 12, 9)
  })

  it('waits, with mixed lengths, until the whole of the longer case will lie on it', () => {
    const cases =
      '{short: {length: 400 mm, width: 1 m, height: 1 m}, long: {length: 1 m, width: 1 m, height: 1 m}}'
    // 2.4 m: three short ones stand on 1.5 m, 0.9 m is left: none for the long one, enough for another short one
    const line = '{c: {type: conveyor, length: 2.4 m, speed: 30 m/min, spacing: 100 mm}}'
    const { log } = trial({
      cases,
      line,
      arrivals: [
        [0, 0],
        [2, 0],
        [4, 0],
        [6, 1],
      ],
      turns: [1, 50],
    })
    expect(log).toEqual([
      [0, 'case 0 in'],
      [2, 'case 0 in'],
      [4, 'case 0 in'],
      [50, 'case 0 out'],
      [50, 'case 1 in'],
      [51, 'case 0 out'],
      [52, 'case 0 out'],
      [54.8, 'case 1 out'],
    ])
  })

  it('goes on where it stood after each breakdown of 5 s', () => {
    const breakdowns = ', breakdowns: {after: 5 s, repair: 5 s}'
    const { log } = trial({ line: accumulating(breakdowns), arrivals: [[0, 0]] })
    // runs 5, stands 5, runs 5, stands 5, runs 2: 12 s of running and two stops
    expect(log).toEqual([
      [0, 'case 0 in'],
      [22, 'case 0 out'],
    ])
  })
})

describe('belt conveyor', () => {
  const belt = '{c: {type: conveyor, carries: belt, length: 6 m, speed: 30 m/min, spacing: 100 mm}}'

  it('keeps the distance of the cases', () => {
    const { log } = trial({
      line: belt,
      arrivals: [
        [0, 0],
        [4, 0],
      ],
    })
    expect(log).toEqual([
      [0, 'case 0 in'],
      [4, 'case 0 in'],
      [12, 'case 0 out'],
      [16, 'case 0 out'],
    ])
  })

  it('stands as a whole while the case at its end cannot leave: 4 s apart before and after', () => {
    const { log, equipment } = trial({
      line: belt,
      arrivals: [
        [0, 0],
        [4, 0],
        [15, 0],
      ],
      turns: [10, 20],
    })
    expect(log).toEqual([
      [0, 'case 0 in'],
      [4, 'case 0 in'],
      [20, 'case 0 out'],
      [20, 'case 0 in'],
      [24, 'case 0 out'],
      [32, 'case 0 out'],
    ])
    expect(equipment[0]!.stateTimes[2]).toBeCloseTo(8, 9)
  })
})

describe('cases that fill a conveyor to the last millimetre', () => {
  // three of 300 mm on 0.9 m, and of 400 mm on 1.2 m: the lengths added up come to a last digit less, and to one more. The first goes to the
  // table, which keeps it; three lie behind it, and the fifth waits at the end of the sealer's belts, which stand
  it.each([
    ['300 mm', '0.9 m', 'ahead'],
    ['300 mm', '0.9 m', 'events'],
    ['400 mm', '1.2 m', 'ahead'],
    ['400 mm', '1.2 m', 'events'],
  ] as const)('of %s on %s are three, %s', (length, room, engine) => {
    const { scenario } = loadScenario(`
cases: {a: {length: ${length}, width: 300 mm, height: 300 mm}}
arrivals: {p: {time-between: 5 s}}
line:
  sealer: {type: sealer, bed: 1.8 m, belt-speed: 0.4 m/s, flaps: {folded-by: machine, time: 0 s}, minimum-gap: 300 mm, heads: {top: {position: 1.2 m, cut: {wipe-travel: 0 mm, reset: 0 s}}}}
  lane: {type: conveyor, carries: accumulating, length: ${room}, speed: 0.5 m/s, spacing: 0 mm, start-delay: 0 s}
  table: {type: station, time: 20 min}
shift: {length: 5 min}`)
    const line = new Line(scenario, engine)
    const read = reader(line, line.simulate('full', 1))
    expect(read('equipment.lane.measures.held-largest')).toBe(3)
    // the fifth came at 25 s and is 1.8 m farther at 29.5 s
    expect(read('equipment.sealer.states.blocked')).toBeCloseTo((300 - 29.5) / 300, 9)
  })
})
