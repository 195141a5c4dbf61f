/** Sensors that stop and start pieces, worked by hand: edges of cases at a place, times without a break, run-up, and what is counted. */
import { describe, expect, it } from 'vitest'
import type { Line } from '../../src/line/line.js'
import { build } from './arriving.js'
import { reader } from './shift.js'

const micro = (value: number) => Math.round(value * 1e6) / 1e6

/** Cases of 400 mm come at these times. */
const lineOf = (arrivals: number[], line: string, shift: string): Line =>
  build('{log: {file: x.csv, time: t, unit: s}, when-full: queue}', `{${shift}}`, {
    cases: '{a: {length: 400 mm, width: 300 mm, height: 300 mm}}',
    line,
    rows: [['t'], ...arrivals.map((time) => [String(time)])],
  })

/** What sensors do to `piece`, its states, and what leaves the line. */
function storyOf(line: Line, piece: string): string[] {
  const told: string[] = []
  line.observe(({ time, event, at, state, case: item, sensor, sees }) => {
    if (event === 'leaves') told.push(`${micro(time)} case ${item} leaves`)
    if (at !== piece) return
    if (event === 'state') told.push(`${micro(time)} ${state}`)
    if (event === 'sensor-stops') told.push(`${micro(time)} stops: ${sensor} ${sees}`)
    if (event === 'sensor-starts') told.push(`${micro(time)} starts`)
  })
  line.simulate('hand', 1)
  line.observe(null)
  return told
}

/** A place with room for all that wait. */
const station = (time: string, sensors: string) =>
  `{type: station, time: ${time}, waiting-room: unlimited, ${sensors}}`
const accumulating = (length: string) => `{type: conveyor, length: ${length}, speed: 12 m/min, spacing: 0 mm}`
const place = (time: string) => `{type: station, time: ${time}}`

describe('a station before an accumulating conveyor', () => {
  // 0.2 m/s; the sensor 1 m from the entrance, 5 s on the way, and a case passes it in 2 s
  const sensors =
    'stops-when: {full: c, at: 1 m, for: 1.5 s}, starts-when: {clear: c, at: 1 m, for: 1 s}, restart: 0.5 s'
  const line = lineOf(
    [0, 3, 6, 9, 12],
    `{s: ${station('1 s', sensors)}, c: ${accumulating('2 m')}, p: ${place('20 s')}}`,
    'length: 100 s',
  )

  it('stops once the sensor saw one for long enough, and starts after it was clear for long enough and has run up', () => {
    // Cases come onto c at 1, 4, 7 and cover the sensor from 6 to 8, 9 to 11 and 12 to 14: long enough at 7.5. It is clear from 8
    // to 9 and 11 to 12, where the next case is there at the instant at which 1 s is over, and from 14: it starts 1.5 s later.
    // Case 4 comes onto c at 16.5 and stands behind 2 and 3 at 1.2 m, over the sensor, from 21.5 on: stop at 23.
    // At 31 p takes case 2: case 4 leaves the sensor at 32, and case 5 comes to it at that instant; it is clear from 52.
    expect(storyOf(line, 's')).toEqual([
      ...['0 working', '1 waiting', '3 working', '4 waiting', '6 working', '7 waiting'],
      ...['7.5 stops: c full', '7.5 blocked', '15.5 starts', '15.5 working', '17.5 blocked', '18.5 waiting'],
      ...['23 stops: c full', '23 blocked', '31 case 1 leaves', '51 case 2 leaves', '53.5 starts'],
      ...['53.5 waiting', '71 case 3 leaves', '91 case 4 leaves'],
    ])
  })

  it('counts its starts, and the time that it stands as blocked', () => {
    const read = reader(line, line.simulate('hand', 1))
    expect(read('equipment.s.measures.starts')).toBe(2)
    expect(read('equipment.s.states.blocked')).toBeCloseTo((15.5 - 7.5 + 1 + 53.5 - 23) / 100, 12)
  })

  it('breaks a run-up off where the sensor has seen one for long enough again', () => {
    // as above, but it runs up for 9 s from 15: at 21.5 there is nobody on c, for case 4 waits before s; so it starts at 24
    const slow = lineOf(
      [0, 3, 6, 9, 12],
      `{s: ${station('1 s', sensors.replace('0.5 s', '9 s'))}, c: ${accumulating('2 m')}, p: ${place('20 s')}}`,
      'length: 40 s',
    )
    expect(storyOf(slow, 's').filter((what) => /stops|starts/.test(what))).toEqual([
      '7.5 stops: c full',
      '24 starts',
      '31.5 stops: c full',
    ])
    // seen for 1.5 s at 7.5; clear at once at 8, and running up until 11; but case 2 is there from 9, at 10.5 for long enough, and
    // the run-up is over; from 11 clear, and from 12 to 14 case 3, until 13.5: from 14 on it runs up in full
    const eager = sensors.replace('for: 1 s}, restart: 0.5 s', 'for: 0 s}, restart: 3 s')
    const off = lineOf(
      [0, 3, 6, 9, 12],
      `{s: ${station('1 s', eager)}, c: ${accumulating('2 m')}, p: ${place('20 s')}}`,
      'length: 20 s',
    )
    expect(storyOf(off, 's').filter((what) => /stops|starts/.test(what))).toEqual([
      '7.5 stops: c full',
      '17 starts',
    ])
  })
})

describe('a sealer before a belt', () => {
  const sealer = (sensors: string) =>
    `{type: sealer, bed: 1 m, belt-speed: 12 m/min, minimum-gap: 200 mm, heads: {top: {position: 0.5 m, cut: {wipe-travel: 0 mm, reset: 0 s}}}, ${sensors}}`
  const belt = '{type: conveyor, carries: belt, length: 2 m, speed: 12 m/min}'
  const crew = '\ncrew: {men: {people: 1, walk: 1 s, does: [jams, roll-change, size-setting]}}'

  it('stands while a case passes the sensor where no time is asked for', () => {
    // case 1 comes onto the belt at 5, is at the sensor from 10 to 12 and at the end at 15; case 2 came in at 6, would be at the end of
    // the sealer at 11 and is there at 13, at the sensor from 18 to 20, and at the end at 23
    const line = lineOf(
      [0, 6],
      `{m: ${sealer('stops-when: {full: c, at: 1 m, for: 0 s}')}, c: ${belt}, p: ${place('1 s')}}${crew}`,
      'length: 30 s',
    )
    const story = storyOf(line, 'm')
    expect(story.filter((what) => /stops|starts|blocked|leaves/.test(what))).toEqual([
      ...['10 stops: c full', '10 blocked', '12 starts', '16 case 1 leaves'],
      ...['18 stops: c full', '18 blocked', '20 starts', '24 case 2 leaves'],
    ])
  })

  it('stands, with a case under its head, while another stands at the sensor', () => {
    // p takes 10 s: case 1 at the end at 15, away at 25; case 2 onto the belt at 11, with its head 0.8 m behind the end from 21 on if
    // c runs; case 3 at the end at 21, as p is at work until 25. At: 0.8 m is covered by case 2 from its leading edge at 1.2 m, at 17
    const line = lineOf(
      [0, 6, 12],
      `{m: ${sealer('stops-when: {full: c, at: 800 mm, for: 2.5 s}')}, c: ${belt}, p: ${place('10 s')}}${crew}`,
      'length: 60 s',
    )
    // case 2 is at the end of c at 21, and the belt stands from 21 to 25 with case 3, on c since 17, at 0.8 m from its entrance; it is
    // at 1.2 m at 27 and passes in 2 s: never seen for 2.5 s
    expect(storyOf(line, 'm').filter((what) => /stops|starts/.test(what))).toEqual([])
    // at 1.2 m from the end it is seen from 21, while the belt stands, until 27
    const earlier = lineOf(
      [0, 6, 12],
      `{m: ${sealer('stops-when: {full: c, at: 1.2 m, for: 2.5 s}')}, c: ${belt}, p: ${place('10 s')}}${crew}`,
      'length: 60 s',
    )
    expect(storyOf(earlier, 'm').filter((what) => /stops|starts/.test(what))).toEqual([
      '23.5 stops: c full',
      '27 starts',
    ])
  })
})

describe('a station behind a conveyor', () => {
  const line = lineOf(
    [0, 4, 8, 12],
    `{c: ${accumulating('2 m')}, s: ${place('1 s').replace('}', ', stops-when: {clear: c, at: 400 mm, for: 3 s}, starts-when: {full: c, at: 1 m, for: 3 s}}')}}`,
    'length: 40 s',
  )

  it('stands as waiting when none has come for long enough, and starts when enough stand before it', () => {
    // Clear from 0: stops at 3. Case 1 goes into s at 10 and waits in it; 2, 3 and 4 close up behind the end at 14, 16 and 18. The
    // sensor 1 m from the entrance sees 4 from 17 on: s starts at 20. The other one sees 3 from 16 to 23 and 4 from 23 to 25: stop at 28.
    expect(storyOf(line, 's')).toEqual([
      ...['0 waiting', '3 stops: c clear', '20 starts', '20 working', '21 case 1 leaves', '22 case 2 leaves'],
      ...['22 waiting', '23 working', '24 case 3 leaves', '24 waiting', '25 working', '26 case 4 leaves'],
      ...['26 waiting', '28 stops: c clear'],
    ])
    expect(reader(line, line.simulate('hand', 1))('equipment.s.measures.starts')).toBe(1)
  })
})

describe('a belt before an accumulating conveyor', () => {
  it('stands for each case that is seen for long enough; rollers ahead draw off one that lies on both', () => {
    // Case 1 comes onto c at 5 and is at the sensor from 10 to 12; 2 at 9, from 14 to 16; 3 has stood for 1 s, comes onto c at 14,
    // goes on while the belt stands from 15 to 16, and is at the sensor from 19 to 21.
    const line = lineOf(
      [0, 4, 8],
      `{b: {type: conveyor, carries: belt, length: 1 m, speed: 12 m/min, stops-when: {full: c, at: 1 m, for: 1 s}}, c: ${accumulating('2 m')}, p: ${place('2 s')}}`,
      'length: 40 s',
    )
    expect(storyOf(line, 'b').filter((what) => /stops|starts|leaves/.test(what))).toEqual([
      ...['11 stops: c full', '12 starts', '15 stops: c full', '16 starts', '17 case 1 leaves'],
      ...['20 stops: c full', '21 case 2 leaves', '21 starts', '26 case 3 leaves'],
    ])
  })
})

describe('a sensor beside other stops', () => {
  it('holds a piece on that a break has stopped, and lets it go during one', () => {
    // As the first log until 10, where a break of everything begins, with case 2 over the sensor; it leaves that at 21, and case 3 is
    // there from 22 to 24: clear for 1 s at 25. Case 4 comes onto c at 26 and is at the sensor from 31 to 33.
    const sensors = 'stops-when: {full: c, at: 1 m, for: 1.5 s}, starts-when: {clear: c, at: 1 m, for: 1 s}'
    const line = lineOf(
      [0, 3, 6, 9],
      `{s: ${station('1 s', sensors)}, c: ${accumulating('2 m')}, p: ${place('1 s')}}`,
      'length: 40 s, breaks: [{at: 10 s, for: 10 s}], breaks-stop: everything',
    )
    expect(
      storyOf(line, 's')
        .filter((what) => !/leaves/.test(what))
        .slice(6),
    ).toEqual([
      ...['7.5 stops: c full', '7.5 blocked', '10 on-break', '20 blocked', '25 starts', '25 working'],
      ...['26 waiting', '32.5 stops: c full', '32.5 blocked', '34 starts', '34 waiting'],
    ])
  })
})

describe('a sensor where a piece is blocked anyway', () => {
  // the belts are as long as the pitch of the cases: when one stands at the end of b2 the next is at the end of b1
  const belt = (sensors: string) =>
    `{type: conveyor, carries: belt, length: 1 m, spacing: 600 mm, speed: 12 m/min${sensors}}`
  const belts = (sensors: string) =>
    lineOf(
      Array.from({ length: 20 }, (_, index) => 4 * index),
      // by events both, for times that are worked ahead are added in another order
      `{b1: ${belt(sensors)}, b2: ${belt('')}, p: ${place('8 s')}}\nstudy: {engine: events}`,
      'length: 80 s',
    )

  it('changes nothing, with no time to see and none to run up', () => {
    const plain = belts('')
    const sensed = belts(', stops-when: {full: b2, at: 0 m, for: 0 s}, restart: 0 s')
    expect(storyOf(sensed, 'b1').filter((what) => !/stops|starts/.test(what))).toEqual(storyOf(plain, 'b1'))
    const values = (line: Line) =>
      Object.fromEntries(
        [...line.simulate('hand', 1).values].map((value, index) => [
          line.columns[index]!.measure.path.join('.'),
          value,
        ]),
      )
    const { 'equipment.b1.measures.starts': starts, ...others } = values(sensed)
    expect(others).toEqual(values(plain))
    // the belt does stop: p takes 8 s for cases that come every 5 s at most
    expect(starts).toBeGreaterThan(2)
  })
})

describe('a sensor on a row of conveyors', () => {
  const arrivals = Array.from({ length: 60 }, (_, index) => 3 * index + (index % 7) * 0.37)
  const sensors = (watched: string, at: number) =>
    `stops-when: {full: ${watched}, at: ${at} mm, for: 2.5 s}, starts-when: {clear: ${watched}, at: ${at} mm, for: 0.4 s}, restart: 0.3 s`
  const run = (watched: string, at: number, lengths: readonly number[]) =>
    storyOf(
      lineOf(
        arrivals,
        `{s: ${station('1 s', sensors(watched, at))}, ${lengths.map((length, index) => `c${index + 1}: {type: conveyor, length: ${length} mm, speed: 12 m/min, spacing: 20 mm}`).join(', ')}, p: ${place('{triangular: {low: 2 s, mode: 3 s, high: 6 s}}')}}`,
        'length: 200 s',
      ),
      's',
    )

  it.each([
    // in the middle of the first, on it within a case from its end, and on the second
    { from: 3000, on: 'c1', at: 1000 },
    { from: 2300, on: 'c1', at: 300 },
    { from: 2010, on: 'c1', at: 10 },
    { from: 1900, on: 'c2', at: 1900 },
    { from: 900, on: 'c2', at: 900 },
  ])(
    'sees the same at $from mm from the end of a bed as at $at mm from the end of $on',
    ({ from, on, at }) => {
      const whole = run('c1', from, [4000])
      expect(run(on, at, [2000, 2000]).map((what) => what.replace('c2', 'c1'))).toEqual(whole)
      expect(whole.filter((what) => what.includes('stops')).length).toBeGreaterThan(3)
    },
  )
})

describe('pieces that wait for each other by sensors', () => {
  it('are told as a lock where they stand for ever', () => {
    // s and p stand from when the second case lies at the end of c and the gap behind it at the sensor of p
    const line = lineOf(
      [0, 4, 8, 12, 16],
      `{s: ${station('1 s', 'stops-when: {full: c, at: 700 mm, for: 5 s}')}, c: {type: conveyor, length: 2 m, speed: 12 m/min, spacing: 20 mm}, p: ${place('1 s').replace('}', ', stops-when: {clear: c, at: 100 mm, for: 1 s}, starts-when: {full: c, at: 410 mm, for: 3 s}}')}}`,
      'length: 100 s',
    )
    expect(() => line.simulate('hand', 1)).toThrow(
      /the line is locked in shift 1 of seed "hand" from .* on: `c` waits for `p`, `p` waits for `c`/,
    )
  })

  it('are not where more may come', () => {
    const line = lineOf(
      [0, 4],
      `{c: ${accumulating('2 m')}, p: ${place('1 s').replace('}', ', stops-when: {clear: c, at: 100 mm, for: 1 s}, starts-when: {full: c, at: 1 m, for: 3 s}}')}}`,
      'length: 100 s',
    )
    expect(() => line.simulate('hand', 1)).not.toThrow()
  })
})
