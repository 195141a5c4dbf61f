/** Conveyors with zones and gravity conveyors, worked by hand from the kinematic relation with the zone as the pitch. */
import { describe, expect, it } from 'vitest'
import { loadScenario } from '../../src/scenario/load.js'
import { wholeZones, zonesFor } from '../../src/trade/zones.js'
import { trial } from '../line/gate.js'

// 6 m in zones of 800 mm are 7 zones, 5.6 m; 0.5 m/s
const zoned = (more = '') => `{c: {type: conveyor, length: 6 m, speed: 30 m/min, zone: 800 mm${more}}}`
const at0 = (count: number) => Array.from({ length: count }, (): [number, number] => [0, 0])
const times = (log: [number, string][], word: string) =>
  log.filter(([, what]) => what.endsWith(word)).map(([time]) => time)

describe('a conveyor with zones', () => {
  it('is as long as its whole zones: 5.6 m at 0.5 m/s in 11.2 s', () => {
    expect(trial({ line: zoned(), arrivals: [[0, 0]] }).log).toEqual([
      [0, 'case 0 in'],
      [11.2, 'case 0 out'],
    ])
  })

  it('lets the next in when the first zone is free: 0.8 m in 1.6 s', () => {
    const { log } = trial({ line: zoned(), arrivals: at0(3) })
    expect(times(log, 'in')).toEqual([0, 1.6, 3.2])
    expect(times(log, 'out')).toEqual([11.2, 12.8, 14.4])
  })

  it('holds one case a zone: 7, then one for each that leaves', () => {
    const { log } = trial({ line: zoned(), arrivals: at0(9), turns: [1, 100, 101, 200] })
    expect(times(log, 'in').filter((time) => time < 100)).toHaveLength(7)
    // the last one stands one zone in, so that the next comes as soon as the first leaves
    expect(times(log, 'in').slice(7)).toEqual([100, 200])
    expect(times(log, 'out').slice(0, 2)).toEqual([100, 200])
  })

  it('starts as a wave with a start delay: each zone waits until the one ahead is empty, 1.6 s', () => {
    const { log } = trial({ line: zoned(', start-delay: 1.6 s'), arrivals: at0(3), turns: [1, 100] })
    // each next one begins 1.6 s after the one ahead and rides 1.6 s
    expect(times(log, 'out')).toEqual([100, 103.2, 106.4])
  })

  it('gives a case that is longer than a zone as many whole zones as it needs', () => {
    const cases =
      '{short: {length: 400 mm, width: 1 m, height: 1 m}, long: {length: 1 m, width: 1 m, height: 1 m}}'
    // long ones take 2 of 7 zones: three fit, and one short one
    const { log } = trial({
      cases,
      line: zoned(),
      arrivals: [
        [0, 1],
        [0, 1],
        [0, 1],
        [0, 0],
        [0, 0],
      ],
      turns: [1, 100],
    })
    expect(log.filter(([time, what]) => time < 100 && what.endsWith('in'))).toEqual([
      [0, 'case 1 in'],
      [3.2, 'case 1 in'],
      [6.4, 'case 1 in'],
      [9.6, 'case 0 in'],
    ])
    // the last comes in at 100 s, when two zones are free, and rides 11.2 s
    expect(times(log, 'out')).toEqual([100, 103.2, 106.4, 109.6, 111.2])
  })

  it('counts zones without losing one to rounding', () => {
    expect(wholeZones(3.048, 0.762)).toBe(4)
    expect(wholeZones(0.3, 0.1)).toBe(3)
    expect(wholeZones(2.9, 1)).toBe(2)
    expect(zonesFor(0.762, 0.762)).toBe(1)
    expect(zonesFor(0.3, 0.1)).toBe(3)
    expect(zonesFor(0.301, 0.1)).toBe(4)
  })
})

describe('a gravity conveyor', () => {
  it('accumulates at its speed, without a drive', () => {
    const { log } = trial({
      line: '{c: {type: conveyor, carries: gravity, length: 6 m, speed: 30 m/min, spacing: 0 mm}}',
      arrivals: [
        [0, 0],
        [4, 0],
      ],
      turns: [10, 20],
    })
    // the second stands right behind the first: 0.4 m in 0.8 s
    expect(log).toEqual([
      [0, 'case 0 in'],
      [4, 'case 0 in'],
      [20, 'case 0 out'],
      [20.8, 'case 0 out'],
    ])
  })
})

describe('findings', () => {
  const load = (conveyor: string) => () =>
    loadScenario(
      `cases: {a: {length: 1 m, width: 300 mm, height: 300 mm}}\narrivals: {p: {rate: 5 cases/min}}\nline: {c: {type: conveyor, ${conveyor}}}\nshift: {length: 1 h}`,
    )
  it.each([
    ['length: 3 m, zone: 800 mm, carries: belt', 'only an accumulating conveyor has zones'],
    ['length: 3 m, zone: 800 mm, carries: gravity', 'only an accumulating conveyor has zones'],
    ['length: 1.2 m, zone: 800 mm', 'takes 2 zones, and 1 fit'],
    ['length: 1.2 m, zone: 1 mm', 'must be at least 0.01'],
    [
      'length: 3 m, carries: gravity, breakdowns: {after: 10 h, repair: 10 min}',
      'a gravity conveyor has no drive that could fail',
    ],
  ])('%s', (conveyor, rule) => {
    expect(load(conveyor)).toThrow(rule)
  })
})
