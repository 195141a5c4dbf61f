/** Planned stops of a station, such as pallet changes, worked by hand: a state of their own, and what meets them. */
import { describe, expect, it } from 'vitest'
import type { Line } from '../../src/line/line.js'
import { build } from './arriving.js'
import { reader } from './shift.js'

/** Cases come at these times; the station `s` takes them into a waiting room without limit. */
function lineOf(arrivals: number[], station: string, shift: string, after = ''): Line {
  return build('{log: {file: x.csv, time: t, unit: s}, when-full: queue}', `{${shift}}`, {
    cases: '{a: {length: 400 mm, width: 300 mm, height: 300 mm}}',
    line: `{s: {type: station, waiting-room: unlimited, ${station}}${after}}`,
    rows: [['t'], ...arrivals.map((time) => [String(time)])],
  })
}

const micro = (value: number) => Math.round(value * 1e6) / 1e6

/** Times and names of the states of `s`, of its planned stops and of what leaves it. */
function storyOf(line: Line): [number, string][] {
  const told: [number, string][] = []
  line.observe(({ time, event, at, state, case: item, lasts }) => {
    if (at !== 's') return
    if (event === 'state') told.push([micro(time), state!])
    if (event === 'planned-stop') told.push([micro(time), `stop of ${lasts} s`])
    if (event === 'leaves') told.push([micro(time), `case ${item} leaves`])
  })
  line.simulate('hand', 1)
  line.observe(null)
  return told
}

/** Seconds of `s` in each state that it is in, of a span of `end` s. */
function secondsOf(line: Line, end: number): Record<string, number> {
  const { values } = line.simulate('hand', 1)
  return Object.fromEntries(
    line.columns.flatMap(({ measure: { path } }, index) =>
      path[1] === 's' && path[2] === 'states' && values[index]! > 0
        ? [[path[3]!, micro(values[index]! * end)]]
        : [],
    ),
  )
}

const every = (cases: number) => `every: {cases: ${cases}, stop: 20 s}`

describe('a planned stop', () => {
  it('after every second case is a state of its own, whether a case waits for its end or not', () => {
    // 3 s a case; 1 and 2 leave at 3 and 6; 3 waits from 10 and begins at 26; 4 comes at 40; stop until 63; nothing waits
    const line = lineOf([0, 1, 10, 40], `time: 3 s, ${every(2)}`, 'length: 70 s')
    expect(storyOf(line)).toEqual([
      [0, 'working'],
      [3, 'case 1 leaves'],
      [6, 'case 2 leaves'],
      [6, 'stop of 20 s'],
      [6, 'planned-stop'],
      [26, 'working'],
      [29, 'case 3 leaves'],
      [29, 'waiting'],
      [40, 'working'],
      [43, 'case 4 leaves'],
      [43, 'stop of 20 s'],
      [43, 'planned-stop'],
      [63, 'waiting'],
    ])
    expect(secondsOf(line, 70)).toEqual({ working: 12, 'planned-stop': 40, waiting: 18 })
    const read = reader(line, line.simulate('hand', 1))
    // at work for 4 x 3 s, and nothing is at work in the stops; case 2 waits 2 s, case 3 waits 16 s
    expect(read('equipment.s.measures.utilisation')).toBeCloseTo(12 / 70, 12)
    expect(read('equipment.s.measures.wait')).toBeCloseTo(18 / 4, 12)
    expect(read('equipment.s.measures.planned-stops')).toBe(2)
  })

  it('begins when the last case of its count has gone, so that a station is blocked before it', () => {
    // the next place is taken until 30: case 2 stands done from 6 to 30, and the stop begins when it leaves
    const line = lineOf(
      [0, 0, 0],
      `time: 3 s, ${every(2)}`,
      'length: 100 s',
      ', end: {type: station, time: 27 s}',
    )
    expect(secondsOf(line, 100)).toEqual({
      working: 9, // 0 to 6, 50 to 53
      blocked: 28, // 6 to 30; 53 to 57
      'planned-stop': 20, // 30 to 50
      waiting: 43, // from 57
    })
  })

  it('of several servers is working as long as one of them has a case in hand', () => {
    // 10 s a case: 1 from 0, 2 from 1, 3 from 10; after 2, at 11, none begins for 20 s; 3 is done at 20; 4 from 31 to 41
    const line = lineOf([0, 1, 2, 3], `time: 10 s, servers: 2, ${every(2)}`, 'length: 41 s')
    expect(storyOf(line)).toEqual([
      [0, 'working'],
      [10, 'case 1 leaves'],
      [11, 'case 2 leaves'],
      [11, 'stop of 20 s'],
      [20, 'case 3 leaves'],
      [20, 'planned-stop'],
      [31, 'working'],
      [41, 'case 4 leaves'],
      [41, 'stop of 20 s'],
      [41, 'planned-stop'],
    ])
    expect(secondsOf(line, 41)).toEqual({ working: 30, 'planned-stop': 11 })
    expect(reader(line, line.simulate('hand', 1))('equipment.s.measures.utilisation')).toBeCloseTo(
      40 / 82,
      12,
    )
  })

  it('that a break interrupts goes on after it with what was left', () => {
    // people: 6 to 10, break 10 to 16, 16 to 32; then case 3
    const shift = 'length: 40 s, breaks: [{at: 10 s, for: 6 s}]'
    const line = lineOf([0, 0, 0], `time: 3 s, run-by: people, ${every(2)}`, shift)
    expect(storyOf(line).slice(4)).toEqual([
      [6, 'planned-stop'],
      [10, 'on-break'],
      [16, 'planned-stop'],
      [32, 'working'],
      [35, 'case 3 leaves'],
      [35, 'waiting'],
    ])
    expect(secondsOf(line, 40)).toEqual({ working: 9, 'planned-stop': 20, 'on-break': 6, waiting: 5 })
    // a machine that runs on in breaks changes its pallet in them
    const alone = lineOf([0, 0, 0], `time: 3 s, ${every(2)}`, shift)
    expect(secondsOf(alone, 40)).toEqual({ working: 9, 'planned-stop': 20, waiting: 11 })
  })

  it('that a breakdown of the calendar interrupts goes on after the repair with what was left', () => {
    // 4 s of it, down 10 to 15, 10 s of it, down 25 to 30, the last 6 s; case 3 from 36; down again as the shift ends
    const fails = 'breakdowns: {after: 10 s, counted-in: calendar-time, repair: 5 s}'
    const line = lineOf([0, 0, 0], `time: 3 s, ${every(2)}, ${fails}`, 'length: 40 s')
    expect(storyOf(line).slice(4)).toEqual([
      [6, 'planned-stop'],
      [10, 'breakdown-being-repaired'],
      [15, 'planned-stop'],
      [25, 'breakdown-being-repaired'],
      [30, 'planned-stop'],
      [36, 'working'],
      [39, 'case 3 leaves'],
      [39, 'waiting'],
      [40, 'breakdown-being-repaired'],
    ])
    expect(secondsOf(line, 40)).toEqual({
      working: 9,
      'planned-stop': 20,
      'breakdown-being-repaired': 10,
      waiting: 1,
    })
  })

  it('is no running time: breakdowns counted in that do not come nearer in it', () => {
    // 8 s of work: 0 to 6 and 26 to 28; then 5 s of repair, and case 3 has 1 s left
    const fails = 'breakdowns: {after: 8 s, repair: 5 s}'
    const line = lineOf([0, 0, 0], `time: 3 s, ${every(2)}, ${fails}`, 'length: 40 s')
    expect(storyOf(line).slice(4)).toEqual([
      [6, 'planned-stop'],
      [26, 'working'],
      [28, 'breakdown-being-repaired'],
      [33, 'working'],
      [34, 'case 3 leaves'],
      [34, 'waiting'],
    ])
  })

  it('over the change of shifts goes on in the next one, and from where counting begins it counts', () => {
    // two shifts of 20 s in a row, the stop from 6 to 26: of 40 s
    const station = `time: 3 s, ${every(2)}`
    const carried = lineOf([0, 0, 0], station, 'length: 20 s, start: carry-over, campaign: 2')
    // the log begins anew at 20, so four cases wait: two of them from 26 to 32, and a stop from then on
    expect(secondsOf(carried, 40)).toEqual({ working: 12, 'planned-stop': 28 })
    const line = lineOf([0, 0, 0], station, 'length: 40 s')
    line.countFrom = 16
    const result = line.simulate('hand', 1)
    const share = (state: string) => reader(line, result)(`equipment.s.states.${state}`)
    // 16 to 26; case 3 works from 26 to 29
    expect(share('planned-stop')).toBeCloseTo(10 / 24, 12)
    expect(share('working')).toBeCloseTo(3 / 24, 12)
    expect(share('waiting')).toBeCloseTo(11 / 24, 12)
  })
})
