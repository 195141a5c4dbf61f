/** Other work of a crew, worked by hand: what waits for it, what it is left for, and what is counted. */
import { describe, expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import { loadScenario } from '../../src/scenario/load.js'
import { reader } from './shift.js'

const micro = (value: number) => Math.round(value * 1e6) / 1e6

/** A conveyor that breaks down 10 s after each repair, which takes 30 s; nothing comes to it. */
const text = (crew: string, shift: string) => `cases: {a: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {p: {time-between: 1 h}}
line: {a: {type: conveyor, length: 1 m, speed: 1 m/s, breakdowns: {after: 10 s, counted-in: calendar-time, repair: 30 s}}}
crew: ${crew}
shift: {${shift}}`

/** What people do, as a log, and the measures. */
function watch(crew: string, shift: string, countFrom = 0) {
  const line = new Line(loadScenario(text(crew, shift)).scenario)
  line.countFrom = countFrom
  const told: [number, string][] = []
  const isShown = /^(other-work|sets-out|work-|break-|stops)/
  line.observe(({ time, event, person, lasts }) => {
    if (!isShown.test(event)) return
    told.push([micro(time), [person, event, lasts === undefined ? '' : micro(lasts)].join(' ').trim()])
  })
  const result = line.simulate('hand', 1)
  return { told, read: reader(line, result) }
}

describe('other work that cannot be left', () => {
  it('is done before the stop that comes meanwhile; what is due during stops waits and is done after them', () => {
    const { told, read } = watch(
      '{o: {does: [breakdowns], walk: 2 s, other-work: {every: 8 s, takes: 5 s}}}',
      'length: 60 s',
    )
    // due at 8, done at 13; down from 10, walked to from 13 to 15, up at 45, down again at 55. Due meanwhile at 16, 24, 32, 40: two are done
    // by 55; the call is there when the second is done. Due again at 48 and 56: of seven three are done, and four of 5 s are left
    expect(told).toEqual([
      [8, 'other-work-due 5'],
      [8, 'o other-work-begins 5'],
      [10, 'stops'],
      [13, 'o other-work-done'],
      [13, 'o sets-out'],
      [15, 'o work-begins 30'],
      [16, 'other-work-due 5'],
      [24, 'other-work-due 5'],
      [32, 'other-work-due 5'],
      [40, 'other-work-due 5'],
      [45, 'o work-done'],
      [45, 'o other-work-begins 5'],
      [48, 'other-work-due 5'],
      [50, 'o other-work-done'],
      [50, 'o other-work-begins 5'],
      [55, 'stops'],
      [55, 'o other-work-done'],
      [55, 'o sets-out'],
      [56, 'other-work-due 5'],
      [57, 'o work-begins 30'],
    ])
    expect(read('crew.o.busy')).toBeCloseTo((32 + 5) / 60, 12)
    expect(read('crew.o.other-work')).toBeCloseTo(15 / 60, 12)
    expect(read('crew.o.other-work-done')).toBe(3)
    expect(read('crew.o.other-work-left')).toBeCloseTo(20, 9)
    // two stops: 3 s and 0 s until somebody sets out, 2 s of walk each
    expect(read('equipment.a.measures.breakdowns-wait')).toBeCloseTo(7, 9)
    expect(read('equipment.a.states.breakdown-waiting-for-crew')).toBeCloseTo(7 / 60, 9)
  })

  it('is finished into a break, and its time does not run on in the break', () => {
    const { told, read } = watch(
      '{o: {does: [jams], other-work: {every: 8 s, takes: 5 s}}, f: {does: [breakdowns]}}',
      'length: 60 s, breaks: [{at: 10 s, for: 20 s}]',
    )
    // away from 13 to 30: 2 of the 8 s to the next have passed at 10, so it is due at 36, then at 44 and 52, and at 60
    expect(told.filter(([, what]) => what.includes('other-work') || what.includes('break'))).toEqual([
      [8, 'other-work-due 5'],
      [8, 'o other-work-begins 5'],
      [10, 'break-begins'],
      [13, 'o other-work-done'],
      [30, 'break-ends'],
      [36, 'other-work-due 5'],
      [36, 'o other-work-begins 5'],
      [41, 'o other-work-done'],
      [44, 'other-work-due 5'],
      [44, 'o other-work-begins 5'],
      [49, 'o other-work-done'],
      [52, 'other-work-due 5'],
      [52, 'o other-work-begins 5'],
      [57, 'o other-work-done'],
      [60, 'other-work-due 5'],
      [60, 'o other-work-begins 5'],
    ])
    // 20 s of the 43 s in which they are there
    expect(read('crew.o.other-work')).toBeCloseTo(20 / 43, 12)
  })

  it('that is due as a break begins is begun after it', () => {
    const { told, read } = watch(
      '{o: {does: [jams], other-work: {every: 8 s, takes: 5 s}}, f: {does: [breakdowns]}}',
      'length: 40 s, breaks: [{at: 16 s, for: 10 s}]',
    )
    expect(told.filter(([, what]) => what.includes('other-work') || what.includes('break-'))).toEqual([
      [8, 'other-work-due 5'],
      [8, 'o other-work-begins 5'],
      [13, 'o other-work-done'],
      [16, 'break-begins'],
      [26, 'break-ends'],
      [26, 'other-work-due 5'],
      [26, 'o other-work-begins 5'],
      [31, 'o other-work-done'],
      [34, 'other-work-due 5'],
      [34, 'o other-work-begins 5'],
      [39, 'o other-work-done'],
    ])
    expect(read('crew.o.other-work')).toBeCloseTo(15 / 30, 12)
  })

  it('of two people the first who is free does it, and the other goes to the stop', () => {
    const { told, read } = watch(
      '{o: {people: 2, does: [breakdowns], other-work: {every: 8 s, takes: 14 s}}}',
      'length: 30 s',
    )
    // one from 8 to 22 and from 24; two at the stop from 10 to 40; due at 16 waits for one
    expect(told).toEqual([
      [8, 'other-work-due 14'],
      [8, 'o 1 other-work-begins 14'],
      [10, 'stops'],
      [10, 'o 2 sets-out'],
      [10, 'o 2 work-begins 30'],
      [16, 'other-work-due 14'],
      [22, 'o 1 other-work-done'],
      [22, 'o 1 other-work-begins 14'],
      [24, 'other-work-due 14'],
    ])
    expect(read('crew.o.busy')).toBeCloseTo(20 / 60, 12)
    expect(read('crew.o.other-work')).toBeCloseTo(22 / 60, 12)
    // 6 s of the one in hand, and all of the one that waits
    expect(read('crew.o.other-work-left')).toBeCloseTo(20, 9)
  })
})

describe('other work that can be left', () => {
  it('is left for a stop at once, and goes on after it with what was left', () => {
    const { told, read } = watch(
      '{o: {does: [breakdowns], walk: 2 s, other-work: {every: 8 s, takes: 5 s, can-be-left: true}}}',
      'length: 52.5 s',
    )
    // left at 10 with 3 s to do; repaired 12 to 42; the 3 s to 45, then the one due at 16 to 50, then the one due at 24, left at 52
    expect(told).toEqual([
      [8, 'other-work-due 5'],
      [8, 'o other-work-begins 5'],
      [10, 'stops'],
      [10, 'o other-work-left 3'],
      [10, 'o sets-out'],
      [12, 'o work-begins 30'],
      [16, 'other-work-due 5'],
      [24, 'other-work-due 5'],
      [32, 'other-work-due 5'],
      [40, 'other-work-due 5'],
      [42, 'o work-done'],
      [42, 'o other-work-begins 3'],
      [45, 'o other-work-done'],
      [45, 'o other-work-begins 5'],
      [48, 'other-work-due 5'],
      [50, 'o other-work-done'],
      [50, 'o other-work-begins 5'],
      [52, 'stops'],
      [52, 'o other-work-left 3'],
      [52, 'o sets-out'],
    ])
    expect(read('equipment.a.measures.breakdowns-wait')).toBeCloseTo(2 + 0.5, 9)
    expect(read('crew.o.other-work')).toBeCloseTo(12 / 52.5, 12)
    expect(read('crew.o.other-work-left')).toBeCloseTo(3 + 15, 9)
  })

  it('is left for a break, and for a stop only by those whom nobody free saves it', () => {
    const { told } = watch(
      '{o: {does: [breakdowns], other-work: {every: 8 s, takes: 9 s, can-be-left: true}, people: 2, breaks: [{at: 15 s, for: 4 s}]}}',
      'length: 22 s',
    )
    // one at work from 8: at 10 two goes to the stop, for two is free. At 15 one leaves 2 s of it, and begins with these at 19
    expect(told).toEqual([
      [8, 'other-work-due 9'],
      [8, 'o 1 other-work-begins 9'],
      [10, 'stops'],
      [10, 'o 2 sets-out'],
      [10, 'o 2 work-begins 30'],
      [15, 'break-begins'],
      [15, 'o 1 other-work-left 2'],
      [19, 'break-ends'],
      [19, 'o 1 other-work-begins 2'],
      [20, 'other-work-due 9'],
      [21, 'o 1 other-work-done'],
      [21, 'o 1 other-work-begins 9'],
    ])
  })
})

describe('two kinds of other work', () => {
  it('are begun in the order of the list, and only the one that can be left is left', () => {
    const { told } = watch(
      '{o: {does: [breakdowns], other-work: [{does: labels, every: 9 s, takes: 3 s}, {does: pallets, every: 4 s, takes: 2 s, can-be-left: true}]}}',
      'length: 12.5 s',
    )
    // pallets from 4 and from 8 to 10; at that instant the stop calls them, who have none of it left, before the labels that are due from 9
    expect(told.map(([time, what]) => `${time} ${what}`)).toEqual([
      '4 other-work-due 2',
      '4 o other-work-begins 2',
      '6 o other-work-done',
      '8 other-work-due 2',
      '8 o other-work-begins 2',
      '9 other-work-due 3',
      '10 stops',
      '10 o other-work-done',
      '10 o sets-out',
      '10 o work-begins 30',
      '12 other-work-due 2',
    ])
  })
})

describe('counting from later', () => {
  it('takes off what lies before of the other work in hand', () => {
    const crew = '{o: {does: [breakdowns], walk: 2 s, other-work: {every: 8 s, takes: 5 s}}}'
    const { read } = watch(crew, 'length: 60 s', 47)
    // 47 to 50 and 50 to 55; then the stop
    expect(read('crew.o.other-work')).toBeCloseTo(8 / 13, 12)
    expect(read('crew.o.busy')).toBeCloseTo(5 / 13, 12)
    expect(read('crew.o.other-work-done')).toBeCloseTo(2 / (13 / 60), 9)
  })
})

describe('a standing duty', () => {
  it('is left for other work that is due, and taken up again', () => {
    const yaml = `cases: {a: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {p: {time-between: 10 s}}
line: {s: {type: sealer, belt-speed: 24 m/min, flaps: {folded-by: people, time: 4 s}}}
crew: {o: {does: [roll-change], stands-at: s, other-work: {every: 12 s, takes: 3 s}}}
shift: {length: 32 s}`
    const line = new Line(loadScenario(yaml).scenario)
    const told: [number, string][] = []
    line.observe(({ time, event }) => {
      if (/^(post|other-work|on-belts)/.test(event)) told.push([micro(time), event])
    })
    const read = reader(line, line.simulate('hand', 1))
    // folded from 10 to 12 and from 15 to 17; then from 20 to 24; away from 24 to 27; the third from 30
    expect(told).toEqual([
      [0, 'post-manned'],
      [12, 'other-work-due'],
      [12, 'other-work-begins'],
      [12, 'post-left'],
      [15, 'other-work-done'],
      [15, 'post-manned'],
      [17, 'on-belts'],
      [24, 'on-belts'],
      [24, 'other-work-due'],
      [24, 'other-work-begins'],
      [24, 'post-left'],
      [27, 'other-work-done'],
      [27, 'post-manned'],
    ])
    expect(read('crew.o.at-post')).toBeCloseTo(26 / 32, 12)
    expect(read('crew.o.other-work')).toBeCloseTo(6 / 32, 12)
    expect(read('crew.o.busy')).toBe(0)
  })
})

describe('whatever happens', () => {
  it.each([
    [1, ''],
    [2, ''],
    [3, 'breaks: [{at: 1 h, for: 10 min}, {at: 3 h, for: 30 min}]'],
    [4, 'breaks: [{at: 1 h, for: 10 min}, {at: 3 h, for: 30 min}]'],
  ])('all other work that is due is done or left, shift %d {%s}', (shift, breaks) => {
    const yaml = `cases: {a: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {p: {time-between: {exponential: {mean: 6 s}}}}
line:
  s: {type: sealer, jams: {chance: 3 %, clear: {lognormal: {mean: 70 s, cv: 0.6}}}, planned: [{does: cleaning, every: 1 h, takes: 4 min, needs: o}]}
crew:
  o:
    people: 2
    walk: {uniform: {low: 5 s, high: 30 s}}
    does: [jams, roll-change]
    other-work:
      - {does: labels, share: 25 %, takes: {lognormal: {mean: 3 min, cv: 0.8}}}
      - {does: pallets, every: {exponential: {mean: 8 min}}, takes: {gamma: {mean: 4 min, cv: 0.5}}, can-be-left: true}
    ${breaks}
shift: {length: 5 h}`
    const line = new Line(loadScenario(yaml).scenario)
    const away = new Set<string>()
    let [due, left, done] = [0, 0, 0]
    line.observe(({ time, event, person, lasts }) => {
      if (event === 'other-work-due') due += lasts!
      if (event === 'other-work-left') left++
      if (event === 'other-work-done') done++
      // nobody does two things at once
      if (event === 'other-work-begins' || event === 'sets-out') {
        expect(away.has(person!), `${person} at ${time}`).toBe(false)
        away.add(person!)
      }
      if (/^(other-work-(left|done)|work-done|planned-work-done)$/.test(event)) away.delete(person!)
    })
    const read = reader(line, line.simulate('hand', shift))
    // two people for 5 h; less their breaks, as far as a task in hand does not shorten these
    const there = 2 * 5 * 3600
    const share = (due - read('crew.o.other-work-left')) / there
    if (breaks === '') expect(read('crew.o.other-work')).toBeCloseTo(share, 9)
    else {
      expect(read('crew.o.other-work')).toBeGreaterThan(share)
      expect(read('crew.o.other-work')).toBeLessThanOrEqual((share * there) / (there - 2 * 40 * 60) + 1e-9)
    }
    expect(read('crew.o.other-work-done')).toBe(done)
    expect(left).toBeGreaterThan(0)
    expect(read('crew.o.busy') + read('crew.o.other-work')).toBeLessThanOrEqual(1 + 1e-9)
  })
})
