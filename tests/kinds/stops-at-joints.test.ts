/** Stops of an accumulating conveyor while a case lies across its joint, worked by hand: nobody is at an end before the tail ahead lets it. */
import { describe, expect, it } from 'vitest'
import { type Log, trial } from '../line/gate.js'

const outs = (log: Log) => log.filter(([, what]) => what.endsWith('out')).map(([time]) => time)
const at = (...times: number[]): [number, number][] => times.map((time) => [time, 0])
const roller = (metres: number, more = '') =>
  `{type: conveyor, length: ${metres} m, speed: 30 m/min, spacing: 0 mm${more}}`
const fails = (after: number, repair: number) =>
  `, breakdowns: {after: ${after} s, counted-in: calendar-time, repair: ${repair} s}`

describe('a case that a sealer holds by its tail', () => {
  // cases of 900 mm, 1.2 m apart. The first is at the shut gate at 8.75 s; the second stands 0.1 m into q from 10.95 s, so the
  // third 0.2 m into p from 13.15 s, 0.7 m of it on the belts of s, which stand with it
  const cases = '{a: {length: 900 mm, width: 300 mm, height: 300 mm}}'
  const sealer = (more: string) => `{type: sealer, belt-speed: 24 m/min, minimum-gap: 300 mm${more}}`
  const rest = 'crew: {o: {walk: 0 s, does: [breakdowns, jams, roll-change]}}'

  it('is not drawn off when the one ahead of it goes', () => {
    // s is down from 20 to 50 s, the gate opens at 30 s: the second has 0.9 m to go then. The third has 0.8 m to the joint from
    // 50 s on, and 1 m of q
    const line = `{s: ${sealer(fails(20, 30))}, p: ${roller(1)}, q: ${roller(1)}}`
    const { log } = trial({ cases, line, rest, arrivals: at(0, 4, 8), turns: [1, 30], until: 60 })
    expect(outs(log)).toEqual([30, 31.8, 53.6])
  })

  it('is not offered by a conveyor that has been repaired before it can have come to its end', () => {
    // s is down from 20 to 50 s, p from 51 to 61 s, the gate opens at 100 s: the third follows 0.9 m behind the second
    const line = `{s: ${sealer(fails(20, 30))}, p: ${roller(1, fails(51, 10))}, q: ${roller(1)}}`
    const { log } = trial({ cases, line, rest, arrivals: at(0, 4, 8), turns: [1, 100], until: 104 })
    expect(outs(log)).toEqual([100, 101.8, 103.6])
  })
})

describe('a case behind one that stands across the joint', () => {
  it('jams when it is at the end, and those behind it stay behind that tail', () => {
    // 2 m and 1 m at 0.5 m/s. The first is at the shut gate at 6 s; the second stands 0.1 m into q, 0.8 m of it on p; so
    // four short ones stand in the 1.2 m behind it, the foremost of which always jams, and a fifth has no room
    const cases = `{large: {length: 900 mm, width: 300 mm, height: 300 mm, jam-factor: 0},
      bad: {length: 300 mm, width: 300 mm, height: 300 mm}, good: {length: 300 mm, width: 300 mm, height: 300 mm, jam-factor: 0}}`
    const jams = ', jams: {chance: 100 %, clear: 10 s, case-lost: 100 %}'
    const arrivals: [number, number][] = [
      [0, 0],
      [2, 0],
      [4, 1],
      [5, 2],
      [6, 2],
      [7, 2],
      [8, 2],
    ]
    const line = `{p: ${roller(2, jams)}, q: ${roller(1)}}`
    const { log } = trial({ cases, line, arrivals, turns: [1, 100], until: 200 })
    expect(log).toEqual([
      [0, 'case 0 in'],
      [2, 'case 0 in'],
      [4, 'case 1 in'],
      [5, 'case 2 in'],
      [6, 'case 2 in'],
      [7, 'case 2 in'],
      [100, 'case 0 out'],
      [100, 'case 2 in'],
      [101.8, 'case 0 out'],
      // the one that jams is at the end at 101.6 s, and is taken out at 111.6 s: the next has 0.3 m to the joint, and 1 m of q
      [114.2, 'case 2 out'],
      [114.8, 'case 2 out'],
      [115.4, 'case 2 out'],
      [116, 'case 2 out'],
    ])
  })

  // three of 900 mm: the first at the shut gate, the second 0.1 m into q, so the third stands 1.2 m into the 2 m of p from 10.4 s
  const three = '{a: {length: 900 mm, width: 300 mm, height: 300 mm}}'

  it('is where it stood when its conveyor runs again, though the tail has gone on meanwhile', () => {
    // p is down from 20 to 50 s, the gate opens at 30 s: q draws the second off; the third has 0.8 m to the joint from 50 s on, and 1 m of q
    const line = `{p: ${roller(2, fails(20, 30))}, q: ${roller(1)}}`
    const rest = 'crew: {o: {walk: 0 s, does: [breakdowns]}}'
    const { log } = trial({ cases: three, line, rest, arrivals: at(0, 4, 8), turns: [1, 30], until: 60 })
    expect(outs(log)).toEqual([30, 31.8, 53.6])
  })
})
