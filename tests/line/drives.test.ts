/** Drives worked by hand: a speed that changes under cases that close up, what a start from rest costs, and slow starts after long stops. */
import { describe, expect, it } from 'vitest'
import type { Line } from '../../src/line/line.js'
import { build } from './arriving.js'

const micro = (value: number) => Math.round(value * 1e6) / 1e6

/** Cases of 400 mm come at these times. */
const lineOf = (arrivals: number[], line: string, shift = '{length: 100 s}', rest = ''): Line =>
  build('{log: {file: x.csv, time: t, unit: s}, when-full: queue}', shift, {
    cases: '{a: {length: 400 mm, width: 300 mm, height: 300 mm}}',
    line: `${line}${rest}`,
    rows: [['t'], ...arrivals.map((time) => [String(time)])],
  })

const crew = '\ncrew: {men: {does: [jams, roll-change]}}'

/** Speeds in m/min, slow starts, what comes to `to`, and what leaves. */
function storyOf(line: Line, to: string, seed = 'hand'): string[] {
  const told: string[] = []
  line.observe(({ time, event, at, case: item, speed }) => {
    if (event === 'leaves') told.push(`${micro(time)} case ${item} leaves`)
    if (event === 'taken' && at === to) told.push(`${micro(time)} case ${item} to ${at}`)
    if (event === 'runs-at') told.push(`${micro(time)} ${at} at ${micro(speed! * 60)}`)
    if (event === 'slow-start-begins') told.push(`${micro(time)} ${at} slow`)
    if (event === 'slow-start-ends') told.push(`${micro(time)} ${at} at speed`)
  })
  line.simulate(seed, 1)
  line.observe(null)
  return told
}

const conveyor = (keys: string) => `{type: conveyor, spacing: 0 mm, ${keys}}`

describe('an accumulating conveyor whose speed changes', () => {
  const steps = 'speeds: [{of: a, above: 50 %, at: 12 m/min, back-below: 30 %}]'

  it('moves cases that ride on from where they are, at the new speed', () => {
    // as the belt of `speed-steps`: nothing stands, so cases that close up and cases that do not are alike. 0.2 m/s from 4 to 12, else
    // 0.1 m/s: case 1 comes to b at 10, 0.4 m on at 12, 1.6 m left. 2 comes at 12, moves its 0.4 m by 16, when 3 comes.
    const line = lineOf(
      [0, 2, 4],
      `{a: ${conveyor('length: 2 m, speed: 12 m/min')}, b: ${conveyor(`length: 2 m, speed: 6 m/min, ${steps}`)}}`,
    )
    expect(storyOf(line, 'b')).toEqual([
      ...['4 b at 12', '10 case 1 to b', '12 case 2 to b', '12 b at 6'],
      ...['16 case 3 to b', '28 case 1 leaves', '32 case 2 leaves', '36 case 3 leaves'],
    ])
  })

  it('leaves those that stand where they are, and lets them follow at the new speed', () => {
    // 0.1 m/s; three cases, 60 %, at 8: 0.2 m/s from where they are, at 0.8, 0.4 and 0 m. 1 is at the end at 14 and 2 stands behind it, its
    // place taken over at 14: at 16 it is at the end, and 3 at 1.6 m. At 24 the place takes 2, one case is 20 %, back to 0.1 m/s: 3 is at the end at 28.
    const line = lineOf(
      [0, 4, 8],
      `{b: ${conveyor('length: 2 m, speed: 6 m/min, speeds: [{of: b, above: 50 %, at: 12 m/min, back-below: 30 %}]')}, p: {type: station, time: 10 s}}`,
    )
    expect(storyOf(line, 'p')).toEqual([
      ...['8 b at 12', '14 case 1 to p', '24 case 1 leaves', '24 case 2 to p', '24 b at 6'],
      ...['34 case 2 leaves', '34 case 3 to p', '44 case 3 leaves'],
    ])
  })

  it('keeps a start delay as the travel that its usual speed makes in it', () => {
    // 0.1 m/s and 2 s: a wave of 0.2 m; 0.2 m/s and 1 s from 6 on, when two cases, 40 %, are on b. So 2 is clear of the entrance at 9, 3 at 12. c
    // stands from 5 to 47: the case at the end goes then, and each of the others 0.4 m and 0.2 m at 0.2 m/s later.
    const line = lineOf(
      [0, 6, 7, 8],
      `{b: ${conveyor('length: 2 m, speed: 6 m/min, start-delay: 2 s, speeds: [{of: b, above: 30 %, at: 12 m/min, back-below: 0 %}]')}, c: ${conveyor('carries: belt, length: 10 m, speed: 60 m/min, planned: [{does: cleaning, at: 5 s, takes: 42 s}]')}}`,
    )
    expect(storyOf(line, 'b').slice(0, 5)).toEqual([
      ...['0 case 1 to b', '6 case 2 to b', '6 b at 12', '9 case 3 to b', '12 case 4 to b'],
    ])
    expect(storyOf(line, 'c').filter((what) => what.endsWith('to c'))).toEqual([
      ...['47 case 1 to c', '50 case 2 to c', '53 case 3 to c', '56 case 4 to c'],
    ])
  })

  it('is one bed with the next one of the same speed, in one piece or in three', () => {
    // what random cases and places do is the same however the bed is cut
    const at = (beds: string, seed: string) =>
      storyOf(
        lineOf(
          Array.from({ length: 40 }, (_, index) => 3 * index),
          `{a: ${conveyor('length: 2 m, speed: 12 m/min')}, ${beds}, p: {type: station, time: {exponential: {mean: 2.6 s}}, waiting-room: 1}}`,
          '{length: 300 s}',
        ),
        'p',
        seed,
      ).filter((what) => what.includes('leaves'))
    const steps =
      'speeds: [{of: a, above: 30 %, at: 16 m/min, back-below: 15 %}, {of: a, above: 70 %, at: 6 m/min}]'
    const bed = (name: string, length: string) =>
      `${name}: ${conveyor(`length: ${length}, speed: 10 m/min, ${steps}`)}`
    for (const seed of ['1', '2', '3', '4', '5', '6', '7', '8']) {
      const whole = at(bed('b', '3 m'), seed)
      expect(whole.length).toBeGreaterThan(30)
      expect(at(`${bed('b', '1 m')}, ${bed('c', '1 m')}, ${bed('d', '1 m')}`, seed)).toEqual(whole)
    }
  })
})

describe('a drive that does not come to its speed at once', () => {
  const stop = 'planned: [{does: cleaning, at: 10 s, takes: 5 s}]'

  it.each(['accumulating', 'belt'])('of a conveyor (%s) loses v / 2a at a start', (carries) => {
    // 0.2 m/s and 0.1 m/s2: 1 s. Case 1 is 1.6 m on at 10 and needs 2 s from 16, case 2 0.8 m and 6 s. Case 3 comes at 15.5, while it
    // runs up, and moves from 16 as well.
    const line = lineOf(
      [2, 6, 15.5],
      `{b: ${conveyor(`carries: ${carries}, length: 2 m, speed: 12 m/min, acceleration: 0.1 m/s2, ${stop}`)}}`,
    )
    expect(storyOf(line, 'b')).toEqual([
      ...['2 case 1 to b', '6 case 2 to b', '15.5 case 3 to b'],
      ...['18 case 1 leaves', '22 case 2 leaves', '26 case 3 leaves'],
    ])
  })

  it('of a belt starts so behind a case that left as well', () => {
    // 0.2 m/s, 1 s. Case 1 is at the end at 10, 2 at 14, when p is at work until 15: the belt stands for 1 s, with case 3 1 m on. 2 goes at
    // 15 and the belt runs from 16: 3 is at the end at 21.
    const line = lineOf(
      [0, 4, 9],
      `{b: ${conveyor('carries: belt, length: 2 m, speed: 12 m/min, acceleration: 0.1 m/s2')}, p: {type: station, time: 5 s}}`,
    )
    expect(storyOf(line, 'p').filter((what) => what.endsWith('to p'))).toEqual([
      ...['10 case 1 to p', '15 case 2 to p', '21 case 3 to p'],
    ])
  })

  it('of a conveyor with a case at its end is offered that at once', () => {
    // 0.2 m/s, 1 s. Case 2 is at the end at 12, where p has work until 30. The conveyor stands from 12.5 to 14.5 and runs up until 15.5: case 2 came to the
    // end less than that before the stop, and is there all the same.
    const line = lineOf(
      [0, 2],
      `{b: ${conveyor('length: 2 m, speed: 12 m/min, acceleration: 0.1 m/s2, planned: [{does: cleaning, at: 12.5 s, takes: 2 s}]')}, p: {type: station, time: 20 s}}`,
    )
    expect(storyOf(line, 'p').filter((what) => what.endsWith('to p'))).toEqual([
      ...['10 case 1 to p', '30 case 2 to p'],
    ])
  })

  it('of a sealer loses it too, and once more where the run-up is broken off', () => {
    // 0.2 m/s, 1 s. At 2 the case is 0.4 m on; it stands until 4, runs up until 4.5 only, stands until 6.5 and moves from 7.5: 0.6 m in 3 s
    const line = lineOf(
      [0],
      `{m: {type: sealer, bed: 1 m, belt-speed: 12 m/min, minimum-gap: 0 mm, heads: {top: {position: 0.5 m}}, acceleration: 0.1 m/s2, planned: [{does: cleaning, at: 2 s, takes: 2 s}, {does: test, at: 4.5 s, takes: 2 s}]}}`,
      '{length: 100 s}',
      crew,
    )
    expect(storyOf(line, 'm')).toEqual(['0 case 1 to m', '10.5 case 1 leaves'])
  })
})

describe('a piece that starts slowly after it stood long', () => {
  const slow = 'slow-start: {after: 5 s, at: 50 %, for: 10 s}'

  it('of a sealer: its belts run at a share of their speed, for so long', () => {
    // 0.2 m/s; at 2 the case is 0.4 m on; from 7 0.1 m/s, at 0.9 m and out at 13; the next comes at 14 (0.3 m by 17) and is out 3.5 s later
    const line = lineOf(
      [0, 14],
      `{m: {type: sealer, bed: 1 m, belt-speed: 12 m/min, minimum-gap: 0 mm, heads: {top: {position: 0.5 m}}, ${slow}, planned: [{does: cleaning, at: 2 s, takes: 5 s}]}}`,
      '{length: 100 s}',
      crew,
    )
    expect(storyOf(line, 'm')).toEqual([
      ...[
        '0 case 1 to m',
        '7 m slow',
        '13 case 1 leaves',
        '14 case 2 to m',
        '17 m at speed',
        '20.5 case 2 leaves',
      ],
    ])
  })

  it('of a station: what it begins takes longer; a short stop interrupts it, and it does not begin after one', () => {
    // 3 s a case, 6 s while slow. At 20 for 5 s: slow from 25, of which 4 s are over at 29; it stands until 31 and is slow for 6 s more, until
    // 37. Case 2 begins at 25 and takes 6 s, of which 2 s are left at 31: 33. Case 3 takes 6 s, 4 begins at 39 in 3 s. At 50 for 4 s: not slow.
    const line = lineOf(
      [0, 22, 23, 24, 55],
      `{s: {type: station, time: 3 s, waiting-room: unlimited, ${slow}, planned: [{does: cleaning, at: 20 s, takes: 5 s}, {does: test, at: 29 s, takes: 2 s}, {does: test, at: 50 s, takes: 4 s}]}}`,
    )
    expect(storyOf(line, '')).toEqual([
      ...['3 case 1 leaves', '25 s slow', '33 case 2 leaves', '37 s at speed', '39 case 3 leaves'],
      ...['42 case 4 leaves', '58 case 5 leaves'],
    ])
  })

  it('at the start of each shift, where that is asked for', () => {
    // 6 s a case within the first 10 s of each shift; the log says the same of each
    const line = lineOf(
      [0, 12],
      `{s: {type: station, time: 3 s, slow-start: {after: 5 s, at: 50 %, for: 10 s, at-shift-start: true}}}`,
      '{length: 40 s, campaign: 2, start: carry-over}',
    )
    expect(storyOf(line, '')).toEqual([
      ...[
        '0 s slow',
        '6 case 1 leaves',
        '10 s at speed',
        '15 case 2 leaves',
        '40 s slow',
        '46 case 3 leaves',
        '50 s at speed',
        '55 case 4 leaves',
      ],
    ])
  })
})

describe('a sealer that stands with a tail between its belts', () => {
  it('asks anew when it runs again: what happened ahead meanwhile was not told', () => {
    // 0.2 m/s. Case 1 goes onto c at 5 and is held at 6, 0.2 m on, until 11; but c stands from 10.5 to 15.5, and so do the belts. Case 2 came on at
    // 3.5, is 0.5 m on at 6, and is at the end 2.5 s after 15.5.
    const line = lineOf(
      [0, 0],
      `{m: {type: sealer, bed: 1 m, belt-speed: 12 m/min, minimum-gap: 300 mm, heads: {top: {position: 0.5 m, cut: {wipe-travel: 0 mm, reset: 0 s}}}, planned: [{does: test, at: 6 s, takes: 5 s}]}, c: ${conveyor('length: 3 m, speed: 12 m/min, planned: [{does: test, at: 10.5 s, takes: 5 s}]')}}`,
      '{length: 100 s}',
      crew,
    )
    expect(storyOf(line, 'c').filter((what) => what.endsWith('to c'))).toEqual([
      ...['5 case 1 to c', '18 case 2 to c'],
    ])
  })
})
