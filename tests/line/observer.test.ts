/** What a shift tells its observer: the whole log of a tiny shift worked by hand, and that it agrees with the measures. */
import { describe, expect, it } from 'vitest'
import { Line, type ShiftResult } from '../../src/line/line.js'
import type { ShiftEvent } from '../../src/line/shift-event.js'
import { loadScenario } from '../../src/scenario/load.js'

const cases = 'cases: {a: {length: 400 mm, width: 300 mm, height: 300 mm}}'

interface Watched {
  line: Line
  events: ShiftEvent[]
  result: ShiftResult
}

function watch(text: string, shift = 1, seed = 'test'): Watched {
  const line = new Line(loadScenario(text).scenario)
  const events: ShiftEvent[] = []
  line.observe((event) => events.push(event))
  return { line, events, result: line.simulate(seed, shift) }
}

/** Time, rounded to a microsecond, and the rest of an event in one text. */
const short = ({ time, event, at, ...rest }: ShiftEvent): [number, string] => [
  Math.round(time * 1e6) / 1e6,
  [at, event, ...Object.values(rest).map((value) => (typeof value === 'number' ? round(value) : value))].join(
    ' ',
  ),
]
const round = (value: number) => Math.round(value * 1e6) / 1e6

const tiny = `${cases}
arrivals: {packing: {time-between: 10 s}}
line:
  infeed: {type: conveyor, length: 1 m, speed: 0.5 m/s, spacing: 0 mm}
  sealer:
    type: sealer
    bed: 2 m
    belt-speed: 0.4 m/s
    minimum-gap: 400 mm
    heads: {top: {position: 1 m, cut: {wipe-travel: 100 mm, reset: 0.5 s}}}
    jams: {chance: 100 %, clear: 4 s}
  end: {type: station, time: 3 s}
crew: {one: {walk: 1 s, does: [jams, roll-change]}}
tape: {leg: 70 mm}
shift: {length: 25 s}`

describe('the observer', () => {
  it('is told of a tiny shift as it was worked by hand', () => {
    // 1 m at 0.5 m/s: 2 s of infeed; headway (0.4 + 0.4) m at 0.4 m/s: working for 2 s; the head is 2.5 s from the entry
    // jam: 1 s of walk, 4 s of work; then the other metre of the bed takes 2.5 s; 0.4 m and two legs of tape
    expect(watch(tiny).events.map(short)).toEqual([
      [0, 'infeed state waiting'],
      [0, 'infeed carries-at 0.5'],
      [0, 'sealer state waiting'],
      [0, 'sealer carries-at 0.4'],
      [0, 'end state waiting'],
      [10, 'packing arrives 1 a'],
      [10, 'infeed taken 1 packing'],
      [10, 'infeed state working'],
      [12, 'sealer taken 1 infeed'],
      [12, 'sealer on-belts 1'],
      [12, 'infeed state waiting'],
      [12, 'sealer state working'],
      [14, 'sealer state waiting'],
      [14.5, 'sealer jams 1'],
      [14.5, 'sealer stops jams'],
      [14.5, 'sealer sets-out one jams'],
      [14.5, 'sealer state jam-waiting-for-crew'],
      [14.5, 'sealer carries-at 0'],
      [15.5, 'sealer work-begins one jams 4'],
      [15.5, 'sealer state jam-being-cleared'],
      [19.5, 'sealer work-done one jams'],
      [19.5, 'sealer freed 1'],
      [19.5, 'sealer strip-laid 1 top 0.54'],
      [19.5, 'sealer state waiting'],
      [19.5, 'sealer carries-at 0.4'],
      [20, 'packing arrives 2 a'],
      [20, 'infeed taken 2 packing'],
      [20, 'infeed state working'],
      [22, 'end taken 1 sealer'],
      [22, 'end service-begins 1 3'],
      [22, 'sealer taken 2 infeed'],
      [22, 'sealer on-belts 2'],
      [22, 'infeed state waiting'],
      [22, 'sealer state working'],
      [22, 'end state working'],
      [24, 'sealer state waiting'],
      [24.5, 'sealer jams 2'],
      [24.5, 'sealer stops jams'],
      [24.5, 'sealer sets-out one jams'],
      [24.5, 'sealer state jam-waiting-for-crew'],
      [24.5, 'sealer carries-at 0'],
      [25, 'end leaves 1 15 good'],
      [25, 'shift arrivals-end'],
      [25, 'end state waiting'],
    ])
  })

  it('is told of a case that is spoilt in a jam', () => {
    const { events } = watch(tiny.replace('clear: 4 s', 'clear: 4 s, case-lost: 100 %'))
    expect(
      events
        .filter((event) => event.case === 1)
        .map(short)
        .slice(-2),
    ).toEqual([
      [14.5, 'sealer jams 1'],
      [19.5, 'sealer spoilt 1'],
    ])
  })

  it('is told of rolls and blades', () => {
    // 0.54 m a strip: a roll of 1.2 m with 0.1 m lost closes two; the blade is serviced after three cuts
    const text = tiny
      .replace(
        'jams: {chance: 100 %, clear: 4 s}',
        'blade: {service-after: 3 cuts, time: 1 s}\n    roll-change: {time: 2 s}',
      )
      .replace('does: [jams, roll-change]', 'does: [blade, roll-change]')
      .replace('{leg: 70 mm}', '{leg: 70 mm, roll: 1.2 m, lost-per-roll: 0.1 m}')
      .replace('25 s', '60 s')
    const told = watch(text).events.map(short)
    // the third case comes to the head at 34.5, the fourth at 44.5; somebody is there a second later
    expect(told).toContainEqual([34.5, 'sealer stops roll-changes'])
    expect(told).toContainEqual([37.5, 'sealer roll-changed top'])
    expect(told).toContainEqual([44.5, 'sealer stops blade-services'])
    expect(told).toContainEqual([46.5, 'sealer blade-serviced top'])
  })

  it('is told of cases that pass without tape and are rejected', () => {
    // a roll of 0.7 m with 0.1 m lost closes one case; two more pass until somebody notices
    const text = tiny
      .replace(
        'jams: {chance: 100 %, clear: 4 s}',
        'roll-change: {low-tape-warning: none, noticed-after: 2, time: 3 s}',
      )
      .replace('{leg: 70 mm}', '{leg: 70 mm, roll: 0.7 m, lost-per-roll: 0.1 m}')
      .replace('end: {type: station, time: 3 s}', 'look: {type: inspect, time: 1 s}')
      .replace('25 s', '60 s')
    const { events } = watch(text)
    expect(events.filter((event) => event.case === 2).map(short)).toEqual([
      [20, 'packing arrives 2 a'],
      [20, 'infeed taken 2 packing'],
      [22, 'sealer taken 2 infeed'],
      [22, 'sealer on-belts 2'],
      [24.5, 'sealer passes-unsealed 2 top'],
      [27, 'look taken 2 sealer'],
      [27, 'look rejected 2'],
      [28, 'look leaves 2 8 rejected'],
    ])
    const told = events.map(short)
    expect(told).toContainEqual([18, 'look leaves 1 8 good'])
    expect(told).toContainEqual([44.5, 'sealer stops roll-changes'])
    expect(told).toContainEqual([48.5, 'sealer strip-laid 4 top 0.54'])
  })

  it('is told who stands at the post of a sealer', () => {
    const text = tiny
      .replace('minimum-gap', 'flaps: {folded-by: people, time: 0 s}\n    minimum-gap')
      .replace('does: [jams, roll-change]', 'stands-at: sealer, does: [jams, roll-change]')
    const told = watch(text).events.filter(({ event }) => event.startsWith('post-'))
    expect(told.map(short)).toEqual([
      [0, 'sealer post-manned one'],
      [14.5, 'sealer post-left one'],
      [19.5, 'sealer post-manned one'],
      [24.5, 'sealer post-left one'],
    ])
  })

  const station = (arrivals: string, shift: string, more = '') =>
    `${cases}\narrivals: {p: ${arrivals}}\nline: {s: {type: station, time: 5 s${more}}}\nshift: ${shift}`
  const ofCase = (text: string, number: number) =>
    watch(text)
      .events.filter((event) => event.case === number)
      .map(short)

  it('is told once of a case that waits, stands on the floor or is turned away', () => {
    // taken at 2; the next comes at 4 and finds the station at work until 7
    expect(ofCase(station('{time-between: 2 s}', '{length: 13 s}'), 2)).toEqual([
      [4, 'p arrives 2 a'],
      [4, 'p waits 2'],
      [7, 's taken 2 p'],
      [7, 's service-begins 2 5'],
      [12, 's leaves 2 8 good'],
    ])
    const queue = station('{time-between: 2 s, when-full: queue}', '{length: 13 s}')
    expect(ofCase(queue, 3)).toEqual([
      [6, 'p arrives 3 a'],
      [6, 'p queues 3'],
      [12, 's taken 3 p'],
      [12, 's service-begins 3 5'],
    ])
    expect(ofCase(station('{time-between: 2 s, when-full: turn-away}', '{length: 13 s}'), 2)).toEqual([
      [4, 'p arrives 2 a'],
      [4, 'p turned-away 2'],
    ])
  })

  it('is told of planned stops and breaks', () => {
    const text = station(
      '{time-between: 10 s}',
      '{length: 50 s, breaks: [{at: 31 s, for: 6 s}]}',
      ', run-by: people, every: {cases: 2, stop: 4 s}',
    )
    // the second case is done at 25: 4 s of stop; the third has 4 s left when the break begins; the fourth is due at 40 + 6
    expect(
      watch(text)
        .events.filter(({ time }) => time >= 25)
        .map(short),
    ).toEqual([
      [25, 's leaves 2 5 good'],
      [25, 's planned-stop 4'],
      [25, 's state planned-stop'],
      [29, 's state waiting'],
      [30, 'p arrives 3 a'],
      [30, 's taken 3 p'],
      [30, 's service-begins 3 5'],
      [30, 's state working'],
      [31, 'shift break-begins'],
      [31, 's state on-break'],
      [37, 'shift break-ends'],
      [37, 's state working'],
      [41, 's leaves 3 11 good'],
      [41, 's state waiting'],
      [46, 'p arrives 4 a'],
      [46, 's taken 4 p'],
      [46, 's service-begins 4 5'],
      [46, 's state working'],
      [50, 'shift arrivals-end'],
    ])
  })
})

describe('a whole shift as it is told', () => {
  const busy = `cases: {a: {length: 400 mm, width: 300 mm, height: 300 mm}, b: {share: 0.3, length: 600 mm, width: 300 mm, height: 300 mm}}
arrivals: {p: {time-between: {gamma: {mean: 5 s, cv: 1}}, when-full: queue, batch: 2}, q: {rate: 2 cases/min, when-full: turn-away, to: sealer}}
line:
  infeed: {type: conveyor, length: 5 m, speed: 20 m/min, start-delay: 0.2 s, breakdowns: {after: {exponential: {mean: 9 min}}, repair: 40 s}}
  sealer:
    type: sealer
    size-setting: {by: crew, time: 7 s}
    jams: {chance: 2 %, clear: {lognormal: {mean: 40 s, cv: 1}}, case-lost: 50 %}
    breakdowns: {after: {exponential: {mean: 20 min}}, counted-in: calendar-time, repair: {exponential: {mean: 90 s}}}
    blade: {service-after: 90 cuts, time: 30 s}
  outfeed: {type: conveyor, carries: belt, length: 3 m, speed: 20 m/min}
  end: {type: station, time: {exponential: {mean: 3 s}}, waiting-room: 3, servers: 2, run-by: people, every: {cases: 20, stop: 30 s}}
tape: {roll: 60 m, lost-per-roll: 2 m}
crew: {o: {people: 1, walk: 8 s, does: [jams, roll-change, size-setting, blade, breakdowns]}}
shift: {length: 2 h, rolls-start: part-used, run-out: 5 min, breaks: [{at: 30 min, for: 10 min}]}`
  const seeds = ['one', 'two', 'three']

  it.each(seeds)('never goes back in time, seed %s', (seed) => {
    const { events } = watch(busy, 1, seed)
    expect(events.length).toBeGreaterThan(1000)
    expect(events.every(({ time }, index) => index === 0 || time >= events[index - 1]!.time)).toBe(true)
  })

  it.each(seeds)('has states that change and whose times are the shares of the shift, seed %s', (seed) => {
    const { line, events, result } = watch(busy, 1, seed)
    const times = new Map<string, number>()
    for (const piece of ['infeed', 'sealer', 'outfeed', 'end']) {
      const told = events.filter(({ event, at }) => event === 'state' && at === piece)
      for (const [index, { time, state }] of told.entries()) {
        const until = told[index + 1]?.time ?? line.end
        expect(told[index + 1]?.state).not.toBe(state)
        const key = `${piece} ${state}`
        times.set(key, (times.get(key) ?? 0) + until - time)
      }
    }
    let compared = 0
    for (const [index, { measure }] of line.columns.entries()) {
      const [, piece, kind, state] = measure.path
      if (kind !== 'states') continue
      expect(times.get(`${piece} ${state}`) ?? 0).toBeCloseTo(result.values[index]! * line.end, 6)
      if (result.values[index]! > 0) compared++
    }
    expect(compared).toBeGreaterThan(15)
  })

  it.each(seeds)('numbers cases in order of arrival and counts what the measures count, seed %s', (seed) => {
    const { line, events, result } = watch(busy, 1, seed)
    const of = (name: string) => events.filter(({ event }) => event === name)
    expect(of('arrives').map((event) => event.case)).toEqual(of('arrives').map((_, index) => index + 1))
    const read = (path: string) =>
      result.values[
        line.columns.findIndex(({ measure, part }) => part === 'value' && measure.path.join('.') === path)
      ]
    expect(of('leaves').length).toBe(read('measures.output'))
    expect(of('spoilt').length).toBe(read('equipment.sealer.measures.cases-lost'))
    expect(of('jams').length).toBe(read('equipment.sealer.measures.jams'))
    expect(of('turned-away').length).toBe(read('arrivals.q.turned-away'))
    expect(of('planned-stop').length).toBe(read('equipment.end.measures.planned-stops'))
    const rolls = read('equipment.sealer.heads.top.changes')! + read('equipment.sealer.heads.bottom.changes')!
    expect(of('roll-changed').length).toBe(rolls)
    expect(of('arrives').length).toBe(read('arrivals.p.arrived')! + read('arrivals.q.arrived')!)
  })

  it('is the same shift, observed or not, in one go or in steps', () => {
    const { line, events, result } = watch(busy, 2)
    line.observe(null)
    expect(line.simulate('test', 2)).toEqual(result)
    const again: ShiftEvent[] = []
    line.observe((event) => again.push(event))
    const steps = line.simulateInSteps('test', 2, 7)
    let at = steps.next()
    while (!at.done) at = steps.next()
    expect(at.value).toEqual(result)
    expect(again).toEqual(events)
  })
})
