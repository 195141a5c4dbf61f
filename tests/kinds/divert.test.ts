/** Diverts worked by hand: by case, by turns, to where fewest cases are. */
import { describe, expect, it } from 'vitest'
import { State, stateKeys } from '../../src/line/states.js'
import { into, tell } from '../line/story.js'

const box = 'length: 400 mm, width: 300 mm, height: 300 mm'

const twoWays = (divert: string, a: string, b: string, length = 100) => `cases: {a: {${box}}}
arrivals: {p: {time-between: 10 s}}
line:
  split: {type: divert, ${divert}}
  a: {type: station, ${a}, to: exit}
  b: {type: station, ${b}}
shift: {length: ${length} s}`

describe('a divert by turns', () => {
  it('sends cases strictly in turn: 10 s to a, 20 s to b, 30 s to a', () => {
    const story = tell(twoWays('to: [a, b]', 'time: 1 s', 'time: 1 s', 45))
    expect(into(story, 'a').map(([time]) => time)).toEqual([10, 30])
    expect(into(story, 'b').map(([time]) => time)).toEqual([20, 40])
    expect(story.read('measures.output')).toBe(4)
    expect(story.read('equipment.split.measures.to-a')).toBe(2)
  })

  it('gives two turns to a target that is named twice', () => {
    const story = tell(twoWays('to: [a, a, b]', 'time: 1 s', 'time: 1 s', 65))
    expect(into(story, 'a').map(([, item]) => item)).toEqual([1, 2, 4, 5])
    expect(into(story, 'b').map(([, item]) => item)).toEqual([3, 6])
    expect(story.read('equipment.split.measures.to-a')).toBe(4)
  })

  it('waits for the one whose turn it is, though the other is free', () => {
    // a holds case 1 from 10 to 35; case 3 is at the divert at 30 and waits there 5 s; b has been free since 21
    const story = tell(twoWays('to: [a, b]', 'time: 25 s', 'time: 1 s', 39))
    expect(into(story, 'a')).toEqual([
      [10, 1],
      [35, 3],
    ])
    expect(story.read(`equipment.split.states.${stateKeys[State.blocked]}`)).toBeCloseTo(5 / 39, 12)
  })

  it('takes its time over a case, and holds one: 4 s each', () => {
    const text = twoWays('to: [a, b], time: 4 s', 'time: 1 s', 'time: 1 s', 40).replace('10 s', '3 s')
    // the packers bring one at 3 s; the next ones wait 7 - 3, then 3 s after each is taken the next stands there
    expect(into(tell(text), 'split').map(([time]) => time)).toEqual([3, 7, 11, 15, 19, 23, 27, 31, 35, 39])
    expect(into(tell(text), 'a').map(([time]) => time)).toEqual([7, 15, 23, 31, 39])
  })

  it('goes on after a breakdown with what was left of its time', () => {
    // works 10-13, stands 13-18, works 18-19
    const text = twoWays(
      'to: [a, b], time: 4 s, breakdowns: {after: 3 s, repair: 5 s}',
      'time: 1 s',
      'time: 1 s',
      19.5,
    )
    expect(into(tell(text), 'a')).toEqual([[19, 1]])
  })
})

describe('a divert by case', () => {
  const text = (to: string) => `cases: {bars: {${box}}, flakes: {${box}}}
arrivals: {p: {orders: [{case: bars, quantity: 2, time-between: 10 s}, {case: flakes, quantity: 1, time-between: 10 s}]}}
line:
  split: {type: divert, rule: by-case, to: ${to}}
  a: {type: station, time: 1 s, to: exit}
  b: {type: station, time: 1 s}
shift: {length: 100 s}`

  it('sends each case its way: two bars to b, one of flakes to a', () => {
    const story = tell(text('{bars: b, flakes: a}'))
    expect(into(story, 'b').map(([time]) => time)).toEqual([10, 20])
    expect(into(story, 'a').map(([time]) => time)).toEqual([30])
  })

  it('may send a case straight out of the line, as far as something else comes to every piece', () => {
    const story = tell(text('{bars: exit, flakes: a}').replace('  b: {type: station, time: 1 s}\n', ''))
    expect(into(story, 'out')).toEqual([
      [10, 1],
      [20, 2],
      [31, 3],
    ])
  })
})

describe('a divert to the shortest', () => {
  const room = 'waiting-room: unlimited'

  it('sends to the one that holds fewest, the first named among equals', () => {
    // 10: both empty, a. 20: b. 30: one each, a. 40: 2 and 1, b; b is done with the first at 45. 50: 2 and 1, b.
    // 60: 2 and 2, a
    const story = tell(
      twoWays('rule: shortest, to: [a, b]', `time: 100 s, ${room}`, `time: 25 s, ${room}`, 65),
    )
    expect(into(story, 'a')).toEqual([
      [10, 1],
      [30, 3],
      [60, 6],
    ])
    expect(into(story, 'b')).toEqual([
      [20, 2],
      [40, 4],
      [50, 5],
    ])
  })

  it('passes over one that cannot take it: a station that is full holds fewer than a queue', () => {
    // a holds 1 of 1 and is full; b holds 1, then 2: still b
    const story = tell(twoWays('rule: shortest, to: [a, b]', 'time: 200 s', `time: 200 s, ${room}`, 45))
    expect(into(story, 'a')).toEqual([[10, 1]])
    expect(into(story, 'b')).toEqual([
      [20, 2],
      [30, 3],
      [40, 4],
    ])
  })

  it('waits while none can take it, and goes to the first that can', () => {
    // a takes case 1 at 10 until 60, b case 2 at 20 until 45; case 3 waits from 30 to 45; case 4 from 55 to 60
    const story = tell(twoWays('rule: shortest, to: [a, b]', 'time: 50 s', 'time: 25 s', 61))
    expect(into(story, 'b')).toEqual([
      [20, 2],
      [45, 3],
    ])
    expect(into(story, 'a')).toEqual([
      [10, 1],
      [60, 4],
    ])
  })
})
