/** Whole shifts: breaks, crew, arrivals that wait, queue or turn away, run-out, common random numbers, balances. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import { loadScenario } from '../../src/scenario/load.js'
import { reader, simulate } from './shift.js'

const cases = 'cases: {a: {length: 400 mm, width: 300 mm, height: 300 mm}}'

const station = (arrivals: string, shift: string, more = '') =>
  `${cases}\narrivals: {p: ${arrivals}}\nline: {s: {type: station, time: 5 s${more}}}\nshift: ${shift}`

describe('arrivals', () => {
  it('every 10 s for 100 s are ten, the last one at the very end', () => {
    const read = simulate(station('{time-between: 10 s}', '{length: 100 s}'))
    expect(read('arrivals.p.arrived')).toBe(10)
    expect(read('measures.output')).toBe(9)
  })

  it('by rate are evenly spaced: 6 a minute is one in 10 s', () => {
    expect(simulate(station('{rate: 6 cases/min}', '{length: 100 s}'))('arrivals.p.arrived')).toBe(10)
  })

  it('by rate in batches keep the rate: 6 a minute in pairs is a pair in 20 s', () => {
    const read = simulate(station('{rate: 6 cases/min, batch: 2, when-full: queue}', '{length: 100 s}'))
    expect(read('arrivals.p.arrived')).toBe(10)
  })

  it('that wait begin the next interval when the case is taken', () => {
    // taken at 2; done at 7; the next comes at 4 and is taken at 7; so does every later one: a case each 5 s
    const read = simulate(station('{time-between: 2 s, when-full: wait}', '{length: 100 s}'))
    expect(read('measures.output')).toBe(19)
    // waits 4-7, 9-12 … 94-97, and from 99 on
    expect(read('arrivals.p.blocked')).toBeCloseTo((19 * 3 + 1) / 100, 12)
  })

  it('that are turned away go elsewhere: of 2, 4, 6 … those at 4 and 6 of each 8 s', () => {
    const read = simulate(station('{time-between: 2 s, when-full: turn-away}', '{length: 80 s}'))
    // taken at 2, 8, 14 …: one of three
    expect(read('arrivals.p.arrived')).toBe(40)
    expect(read('arrivals.p.turned-away')).toBe(26)
  })

  it('that queue stand on the floor', () => {
    const read = simulate(station('{time-between: 2 s, when-full: queue}', '{length: 100 s}'))
    expect(read('arrivals.p.arrived')).toBe(50)
    expect(read('measures.output')).toBe(19)
    expect(read('arrivals.p.held-largest')).toBe(50 - 20)
  })
})

describe('the shift', () => {
  it('a break stops arrivals and keeps the interval that runs', () => {
    // due at 10, 20, [break 25-65] 30 + 40, 80, 90, 100
    const read = simulate(station('{time-between: 10 s}', '{length: 100 s, breaks: [{at: 25 s, for: 40 s}]}'))
    expect(read('arrivals.p.arrived')).toBe(6)
    // done at 15, 25, 75, 85, 95: five in 60 s of working time
    expect(read('measures.throughput')).toBeCloseTo(5 / 60, 12)
  })

  it('machines run on in a break, people do not', () => {
    const shift = '{length: 100 s, breaks: [{at: 11 s, for: 40 s}]}'
    expect(simulate(station('{time-between: 10 s}', shift))('equipment.s.states.on-break')).toBe(0)
    const manual = simulate(station('{time-between: 10 s}', shift, ', run-by: people'))
    expect(manual('equipment.s.states.on-break')).toBeCloseTo(0.4, 12)
    // the case in hand has 4 s left: done at 55; then 60 + 5 …: 70, 80, 90 and 95 s come; out at 55, 65, 75, 85, 95
    expect(manual('measures.output')).toBe(5)
  })

  it('breaks that stop everything stop machines too', () => {
    const read = simulate(
      station(
        '{time-between: 10 s}',
        '{length: 100 s, breaks-stop: everything, breaks: [{at: 11 s, for: 40 s}]}',
      ),
    )
    expect(read('equipment.s.states.on-break')).toBeCloseTo(0.4, 12)
  })

  it('run-out lets the last cases leave after the arrivals have ended', () => {
    const read = simulate(station('{time-between: 10 s}', '{length: 100 s, run-out: 5 s}'))
    expect(read('measures.output')).toBe(10)
    expect(read('measures.throughput')).toBeCloseTo(0.1, 12)
  })

  it('the crew finishes the task in hand before its break, and takes up the waiting ones after', () => {
    const text = `${cases}
arrivals: {p: {time-between: 1 h}}
line: {a: {type: conveyor, length: 1 m, speed: 1 m/s, breakdowns: {after: 10 s, counted-in: calendar-time, repair: 30 s}},
  b: {type: conveyor, length: 1 m, speed: 1 m/s, breakdowns: {after: 20 s, counted-in: calendar-time, repair: 1 s}}}
crew: {one: {people: 1, does: [breakdowns]}}
shift: {length: 100 s, breaks: [{at: 30 s, for: 35 s}]}`
    const read = simulate(text)
    // a: 10-40 repaired, 50: next; b fails at 20, waits to 65 (the break ends), 65-66. a fails at 50, waits to 66, 66-96
    expect(read('equipment.a.states.breakdown-being-repaired')).toBeCloseTo((30 + 30) / 100, 9)
    expect(read('equipment.a.states.breakdown-waiting-for-crew')).toBeCloseTo(16 / 100, 9)
    expect(read('equipment.b.measures.breakdowns-wait')).toBeCloseTo(45 + (96 - 86), 9)
    expect(read('crew.one.busy')).toBeCloseTo((30 + 1 + 30 + 1) / 75, 9)
  })

  it('merges first come first served: two sources feed one station', () => {
    const text = `${cases}
arrivals: {p: {time-between: 10 s}, q: {time-between: 15 s}}
line: {s: {type: station, time: 1 s}}
shift: {length: 61 s}`
    // ten come, two of them at 60 s, of which one is done at 61 s and the other is not
    expect(simulate(text)('measures.output')).toBe(9)
  })
})

describe('random numbers', () => {
  const line = (more: string) => `${cases}
arrivals: {p: {time-between: {exponential: {mean: 6 s}}, when-full: queue}}
line: {s: {type: station, time: {exponential: {mean: 4 s}}, waiting-room: unlimited}${more}}
shift: {length: 1 h}`

  it('are the same for the same seed and shift, whatever was simulated before', () => {
    const built = new Line(loadScenario(line('')).scenario)
    const first = built.simulate('a', 3)
    built.simulate('a', 4)
    built.simulate('b', 3)
    expect(built.simulate('a', 3)).toEqual(first)
  })

  it('differ between seeds and between shifts', () => {
    const built = new Line(loadScenario(line('')).scenario)
    const values = [
      built.simulate('a', 1),
      built.simulate('a', 2),
      built.simulate('b', 1),
      built.simulate('a1', 1),
      built.simulate('a', 11),
    ]
    expect(new Set(values.map((result) => result.values.join()))).toHaveProperty('size', 5)
  })

  it('another machine changes no draw elsewhere', () => {
    const alone = simulate(line(''))
    const followed = simulate(
      line(', t: {type: station, time: {exponential: {mean: 1 s}}, waiting-room: unlimited}'),
    )
    expect(followed('arrivals.p.arrived')).toBe(alone('arrivals.p.arrived'))
    expect(followed('equipment.s.measures.wait')).toBe(alone('equipment.s.measures.wait'))
  })
})

describe('balances', () => {
  const kinds = fc.record({
    between: fc.integer({ min: 1, max: 12 }),
    whenFull: fc.constantFrom('wait', 'queue', 'turn-away'),
    carries: fc.constantFrom('accumulating', 'belt'),
    infeed: fc.integer({ min: 1, max: 12 }),
    fold: fc.integer({ min: 0, max: 4 }),
    by: fc.constantFrom('machine', 'crew'),
    chance: fc.integer({ min: 0, max: 20 }),
    fails: fc.integer({ min: 1, max: 40 }),
    clock: fc.constantFrom('running-time', 'calendar-time'),
    people: fc.integer({ min: 1, max: 2 }),
    stop: fc.constantFrom('everything', 'arrivals-and-manual-work'),
    runBy: fc.constantFrom('machine', 'people'),
    room: fc.constantFrom('0', '3', 'unlimited'),
    warning: fc.constantFrom('none', '5 m'),
    change: fc.constantFrom('when-empty', 'at-warning-when-idle', 'at-break'),
    dwell: fc.constantFrom('0 %', '30 %'),
    breaks: fc.constantFrom('0 %', '5 %'),
    foldedBy: fc.constantFrom('machine', 'people'),
    campaign: fc.constantFrom('start: empty', 'start: carry-over, campaign: 2, start-up: 4 min'),
    seed: fc.string({ minLength: 1, maxLength: 8 }),
  })

  it('of cases, tape and time close for any line, and shares of states add up', () => {
    fc.assert(
      fc.property(kinds, (k) => {
        const text = `cases: {a: {length: 400 mm, width: 300 mm, height: 300 mm}, b: {share: 0.3, length: 600 mm, width: 300 mm, height: 300 mm}}
arrivals: {p: {time-between: {gamma: {mean: ${k.between} s, cv: 1}}, when-full: ${k.whenFull}, batch: 2}, q: {rate: 2 cases/min, when-full: ${k.whenFull}, to: sealer}}
line:
  infeed: {type: conveyor, carries: ${k.carries}, length: ${k.infeed} m, speed: 20 m/min, start-delay: 0.2 s, breakdowns: {after: {exponential: {mean: ${k.fails} min}}, counted-in: ${k.clock}, repair: 40 s}}
  sealer:
    type: sealer
    flaps: {folded-by: ${k.foldedBy}, time: ${k.fold} s}
    roll-change: {low-tape-warning: ${k.warning}, noticed-after: 3, change: ${k.change}}
    dwell-spoils: ${k.dwell}
    tape-breaks: {chance: ${k.breaks}, fix: 20 s}
    size-setting: {by: ${k.by}, time: 7 s}
    jams: {chance: ${k.chance} %, clear: {lognormal: {mean: 40 s, cv: 1}}, case-lost: 50 %}
    breakdowns: {after: {exponential: {mean: ${k.fails} min}}, counted-in: ${k.clock}, repair: {exponential: {mean: 90 s}}}
    blade: {service-after: 90 cuts, time: 30 s}
  outfeed: {type: conveyor, carries: ${k.carries}, length: 3 m, speed: 20 m/min}
  end: {type: station, time: {exponential: {mean: 3 s}}, waiting-room: ${k.room}, servers: 2, run-by: ${k.runBy}, every: {cases: 20, stop: 30 s}, breakdowns: {after: {exponential: {mean: ${k.fails} min}}, repair: 1 min}}
tape: {roll: 60 m, lost-per-roll: 2 m}
crew: {o: {people: ${k.people}, walk: 8 s, does: [jams, roll-change, size-setting, blade, breakdowns]${k.foldedBy === 'people' ? ', stands-at: sealer, breaks: [{at: 50 min, for: 12 min}]' : ''}}}
shift: {length: 2 h, ${k.campaign}, rolls-start: part-used, run-out: 5 min, breaks-stop: ${k.stop}, breaks: [{at: 30 min, for: 10 min}, {at: 1 h, for: 20 min}]}`
        const line = new Line(loadScenario(text).scenario)
        // simulate throws when a balance does not close
        const result = line.simulate(k.seed, 1)
        const read = reader(line, result)
        for (const name of ['infeed', 'sealer', 'outfeed', 'end']) {
          const shares = line.columns.flatMap(({ measure }, index) =>
            measure.path[1] === name && measure.path[2] === 'states' ? [result.values[index]!] : [],
          )
          expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9)
        }
        expect(read('measures.output')).toBeLessThanOrEqual(
          read('arrivals.p.arrived') + read('arrivals.q.arrived'),
        )
        expect(read('measures.output')).toBeGreaterThan(0)
      }),
      { numRuns: 150, seed: 20261125 },
    )
  })
})
