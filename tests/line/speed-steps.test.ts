/** Speeds of drives by level, worked by hand: when a step holds and when it is left, where cases are meanwhile, and the gap of a sealer. */
import { describe, expect, it } from 'vitest'
import type { Line } from '../../src/line/line.js'
import { build } from './arriving.js'

const micro = (value: number) => Math.round(value * 1e6) / 1e6

/** Cases of 400 mm come at these times. */
const lineOf = (arrivals: number[], line: string): Line =>
  build('{log: {file: x.csv, time: t, unit: s}, when-full: queue}', '{length: 100 s}', {
    cases: '{a: {length: 400 mm, width: 300 mm, height: 300 mm}}',
    line,
    rows: [['t'], ...arrivals.map((time) => [String(time)])],
  })

/** Speeds in m/min, what is passed on to whom, and what leaves. */
function storyOf(line: Line): string[] {
  const told: string[] = []
  line.observe(({ time, event, at, case: item, speed, from }) => {
    if (event === 'leaves') told.push(`${micro(time)} case ${item} leaves`)
    if (event === 'taken' && from !== 'p') told.push(`${micro(time)} case ${item} to ${at}`)
    if (event === 'on-belts') told.push(`${micro(time)} case ${item} on belts`)
    if (event === 'runs-at') told.push(`${micro(time)} ${at} at ${micro(speed! * 60)}`)
  })
  line.simulate('hand', 1)
  line.observe(null)
  return told
}

describe('a belt whose speed follows the level of the conveyor before it', () => {
  it('runs faster from above one bound until below the other, and what is on it with it', () => {
    // a: 0.2 m/s, 2 m, pitch 400 mm: one case is 20 %. b: 2 m at 0.1 m/s, 0.2 m/s while a is above 50 %, until it is below 30 %.
    // Cases at 0, 2, 4: a holds three, 60 %, at 4. It gives 1 to b at 10 (40 %, stays), 2 at 12 (20 %, back).
    // On b, 1 has gone 0.4 m by 12, when b is back at 0.1 m/s and 2 comes: the entrance is clear (400 mm), and 3 has to wait at 14 until
    // b has gone 400 mm more, at 16. 1 is at the end 16 s after 12, 2 at 32, 3 at 36.
    const line = lineOf(
      [0, 2, 4],
      '{a: {type: conveyor, length: 2 m, speed: 12 m/min, spacing: 0 mm}, b: {type: conveyor, carries: belt, length: 2 m, speed: 6 m/min, spacing: 0 mm, speeds: [{of: a, above: 50 %, at: 12 m/min, back-below: 30 %}]}}',
    )
    expect(storyOf(line)).toEqual([
      ...['4 b at 12', '10 case 1 to b', '12 case 2 to b'],
      ...['12 b at 6', '16 case 3 to b', '28 case 1 leaves', '32 case 2 leaves', '36 case 3 leaves'],
    ])
  })

  it('leaves a step 10 points lower where nothing is said, and takes the last one of several that hold', () => {
    // one case is 20 %, two 40 %, three 60 %
    const line = lineOf(
      [0, 2, 4],
      '{a: {type: conveyor, length: 2 m, speed: 12 m/min, spacing: 0 mm}, b: {type: conveyor, carries: belt, length: 2 m, speed: 12 m/min, speeds: [{of: a, above: 30 %, at: 15 m/min}, {of: a, above: 50 %, at: 18 m/min}]}}',
    )
    // back below 40 % and 20 %: at 40 % the upper step stays, at 20 % the upper one is left and the lower one stays
    expect(storyOf(line).filter((what) => what.includes('b at'))).toEqual([
      ...['2 b at 15', '4 b at 18', '12 b at 15', '14 b at 12'],
    ])
  })
})

describe('a sealer whose speed follows the level of its infeed', () => {
  it('keeps the gap that its speed asks for', () => {
    // The gap is 100 mm and 1 s of the speed: 300 mm at 0.2 m/s, 200 mm at 0.1 m/s. Case 1 has gone 0.4 m on the belts when they
    // slow down at 12: case 2 follows it after 0.2 m more, at 14, and 3 after 0.6 m, at 20. 1 is at the end 6 s after 12, the others
    // 10 s after they came.
    const line = lineOf(
      [0, 2, 4],
      '{a: {type: conveyor, length: 2 m, speed: 12 m/min, spacing: 0 mm}, m: {type: sealer, bed: 1 m, belt-speed: 6 m/min, minimum-gap: 0 mm, heads: {top: {position: 0.5 m, cut: {wipe-travel: 100 mm, reset: 1 s}}}, speeds: [{of: a, above: 50 %, at: 12 m/min, back-below: 30 %}]}}\ncrew: {men: {does: [jams, roll-change]}}',
    )
    expect(storyOf(line)).toEqual([
      ...['4 m at 12', '10 case 1 to m', '10 case 1 on belts', '12 case 2 to m', '12 m at 6'],
      ...['14 case 2 on belts', '14 case 3 to m', '18 case 1 leaves', '20 case 3 on belts'],
      ...['24 case 2 leaves', '30 case 3 leaves'],
    ])
  })
})

describe('steps to the usual speed', () => {
  it('change nothing', () => {
    const values = (speeds: string) => {
      const line = lineOf(
        Array.from({ length: 30 }, (_, index) => 2.5 * index),
        `{a: {type: conveyor, length: 2 m, speed: 12 m/min, spacing: 0 mm}, b: {type: conveyor, carries: belt, length: 3 m, speed: 12 m/min${speeds}}, c: {type: conveyor, length: 1 m, speed: 10 m/min}, d: {type: station, time: {exponential: {mean: 2.4 s}}}}`,
      )
      return [...line.simulate('hand', 1).values]
    }
    expect(
      values(', speeds: [{of: a, above: 40 %, at: 12 m/min}, {of: c, above: 50 %, at: 12 m/min}]'),
    ).toEqual(values(''))
  })
})
