/** People, worked by hand: folding as a standing duty, breaks of their own with cover, campaigns and start-up. */
import { describe, expect, it } from 'vitest'
import { State } from '../../src/line/states.js'
import { trial } from './gate.js'
import { simulate } from './shift.js'

const outs = (log: [number, string][]) => log.filter(([, what]) => what.endsWith('out')).map(([time]) => time)
const cases = 'cases: {a: {length: 400 mm, width: 300 mm, height: 300 mm}}'

describe('a standing duty', () => {
  const line =
    '{s: {type: sealer, belt-speed: 24 m/min, flaps: {folded-by: people, time: 4 s}, jams: {chance: 100 %, clear: 60 s}}}'
  const rest = 'crew: {o: {does: [jams, roll-change], stands-at: s}}'

  it('is left for a jam, and folding goes on with what was left', () => {
    const { log, equipment } = trial({
      line,
      rest,
      arrivals: [
        [0, 0],
        [0, 0],
      ],
    })
    // folded at 4; at the first head 6.25 s: jam to 66.25; the second case, in the flap place from 4, has 1.75 s of folding
    // left: on the belts at 68, jam at 70.25 to 130.25. From the first head it is 2.5 s to the end
    expect(outs(log)).toEqual([68.75, 132.75])
    expect(equipment[0]!.stateTimes[State.jamClearing]).toBeCloseTo(120, 9)
  })

  it('with somebody else for the jams is kept up', () => {
    const two = 'crew: {folder: {does: [roll-change], stands-at: s}, fixer: {does: [jams]}}'
    const { log } = trial({ line, rest: two, arrivals: [[0, 0]] })
    expect(outs(log)).toEqual([68.75])
  })

  it('called away by another machine stops the folding while the belts run', () => {
    const text = `${cases}
arrivals: {p: {time-between: 10 s}}
line:
  s: {type: sealer, belt-speed: 24 m/min, flaps: {folded-by: people, time: 4 s}}
  w: {type: station, time: 1 s, breakdowns: {after: 12 s, counted-in: calendar-time, repair: 30 s}}
crew: {o: {does: [breakdowns, roll-change], stands-at: s}}
shift: {length: 60 s}`
    const read = simulate(text)
    // the first case has been folded from 10 to 12 s when w breaks down; 2 s are left at 42 s, on the belts at 44, at w at
    // 48.75, out at 49.75. The next one, in the flap place from 44, is out at 53.75; it came at 20 s, and w fails again at 54
    expect(read('measures.output')).toBe(2)
    expect(read('measures.time-in-system')).toBeCloseTo((49.75 - 10 + 53.75 - 20) / 2, 9)
    expect(read('crew.o.at-post')).toBeCloseTo((12 + 12) / 60, 9)
  })
})

describe('breaks of their own', () => {
  it('let others cover: no stop waits', () => {
    const text = `${cases}
arrivals: {p: {time-between: 1 h}}
line: {a: {type: conveyor, length: 1 m, speed: 1 m/s, breakdowns: {after: 10 s, counted-in: calendar-time, repair: 30 s}}}
crew:
  one: {does: [breakdowns], breaks: [{at: 5 s, for: 50 s}]}
  two: {does: [breakdowns], breaks: [{at: 60 s, for: 20 s}]}
shift: {length: 100 s}`
    // fails at 10 and 50: both times one is away and two comes; two is busy to 80 and has lost the break. Fails at 90: one
    const read = simulate(text)
    expect(read('equipment.a.measures.breakdowns-wait')).toBe(0)
    expect(read('crew.two.busy')).toBeCloseTo(60 / 100, 9)
    expect(read('crew.one.busy')).toBeCloseTo(10 / 50, 9)
  })
})

describe('shifts in a row', () => {
  const line = (shift: string) => `${cases}
target: 6 cases/min
arrivals: {p: {time-between: 10 s}}
line: {s: {type: station, time: 5 s}}
shift: {length: 100 s, ${shift}}`

  it('find the line as the shift before left it; counts are per shift', () => {
    const read = simulate(line('start: carry-over, campaign: 2'))
    // ten come in each; the tenth of the first shift leaves in the second: 9 and 10
    expect(read('arrivals.p.arrived')).toBe(10)
    expect(read('measures.output')).toBe(9.5)
    expect(read('measures.throughput')).toBeCloseTo(19 / 200, 12)
    expect(read('measures.target-held')).toBe(0.5)
  })

  it('carry rolls on: two rolls last for 3 of 4 shifts, full ones for each', () => {
    const sealer = (start: string) => `${cases}
arrivals: {p: {time-between: 10 s}}
line: {s: {type: sealer, heads: {top: {}}, roll-change: {time: 1 s}}}
tape: {roll: 10.8 m, lost-per-roll: 0 m, stretch: 0 %}
shift: {length: 150 s, ${start}}`
    // 15 cases a shift, 20 to a roll: changes before cases 21 and 41 of 60 (the last of them still on its way)
    expect(simulate(sealer('start: carry-over, campaign: 4'))('equipment.s.heads.top.changes')).toBe(2 / 4)
    expect(simulate(sealer('start: empty'))('equipment.s.heads.top.changes')).toBe(0)
  })

  it('start up before cases come', () => {
    const read = simulate(line('start-up: 30 s'))
    // due at 10 … 70 after the start-up: at 40 … 100 s
    expect(read('arrivals.p.arrived')).toBe(7)
    expect(simulate(line('start-up: 30 s, start: carry-over, campaign: 3'))('arrivals.p.arrived')).toBe(7)
  })
})

describe('a task that ends', () => {
  it('lets the most urgent of the waiting ones come first, not the one that its end sets off', () => {
    const text = `cases: {a: {length: 400 mm, width: 300 mm, height: 250 mm}}
arrivals: {p: {orders: [{case: a, quantity: 2, time-between: 10 s}], to: s}, q: {time-between: 10 s, to: x}}
line:
  s: {type: sealer, belt-speed: 20 m/min, bed: 1.9 m, roll-change: {time: 100 s, low-tape-warning: 40 m, change: at-warning-when-idle}}
  look: {type: inspect, time: 1 s, finds-unsealed: 0 %, to: exit, breakdowns: {after: 18 s, counted-in: calendar-time, repair: 100 s}}
  x: {type: station, time: 1 s, breakdowns: {after: 50 s, counted-in: calendar-time, repair: 10 s}}
crew: {op: {does: [breakdowns, roll-change]}}
tape: {roll: 44.9 m, leg: 70 mm, lost-per-roll: 4 m}
shift: {length: 127 s}`
    // look is repaired 18 - 118; then x, which has waited since 50, and not the sealer, which stops for its rolls at 118
    expect(simulate(text)('equipment.x.states.breakdown-being-repaired')).toBeCloseTo(9 / 127, 9)
  })
})

describe('a size set by hand', () => {
  it('is set once, though a break that stops everything begins meanwhile', () => {
    const text = `cases: {a: {length: 400 mm, width: 300 mm, height: 250 mm}, b: {length: 400 mm, width: 300 mm, height: 350 mm}}
arrivals: {p: {orders: [{case: a, quantity: 1, time-between: 60 s}, {case: b, quantity: 1, time-between: 60 s}]}}
line: {s: {type: sealer, belt-speed: 24 m/min, size-setting: {by: crew, time: 300 s}}}
shift: {length: 1200 s, breaks: [{at: 200 s, for: 600 s}], breaks-stop: everything}`
    // set from 120 to 420, in the break to 800; the case enters at 800 and leaves at 804.75
    const read = simulate(text)
    expect(read('equipment.s.states.size-being-set')).toBeCloseTo(300 / 1200, 9)
    expect(read('measures.time-in-system')).toBeCloseTo((4.75 + 804.75 - 120) / 2, 9)
  })
})

describe('money over shifts in a row', () => {
  it('is that of one shift', () => {
    const text = (shift: string) => `cases: {a: {length: 400 mm, width: 300 mm, height: 250 mm}}
arrivals: {p: {time-between: 10 s}}
line: {st: {type: station, time: 1 s}}
crew: {op: {does: [jams]}}
shift: {length: 1 h, ${shift}}
money: {currency: EUR, labour: 30 EUR/h, life: 8 yr, interest: 8 %, shifts: 480 per yr, capital: {line.st: 20000 EUR}}`
    const campaign = simulate(text('start: carry-over, campaign: 4'))
    expect(campaign('measures.cost-per-1000-labour') / 4).toBeCloseTo(30, 9)
    const one = simulate(text('start: empty'))
    expect(campaign('measures.cost-per-1000-capital') / 4).toBeCloseTo(
      one('measures.cost-per-1000-capital'),
      9,
    )
  })
})
