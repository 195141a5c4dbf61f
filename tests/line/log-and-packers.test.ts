/** Arrivals by hand from a log and from packers as stations; every way of arriving over shifts in a row, and its balances. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { simulate, slow, times } from './arriving.js'

describe('a log', () => {
  const log = '{log: {file: x.csv, time: t, case: what, unit: s}, when-full: queue}'
  const rows = [
    ['t', 'order', 'what'],
    ['1', '77', 'b'],
    ['2', '77', 'a'],
    ['2', '78', 'a'],
    ['30.5', '78', 'b'],
  ]

  it('is replayed as it was recorded, alike in each shift', () => {
    for (const shift of [1, 2])
      expect(simulate(log, '{length: 1 min}', { rows, shift }).arrivals).toEqual([
        [1, 'b'],
        [2, 'a'],
        [2, 'a'],
        [30.5, 'b'],
      ])
  })

  it('ends with the shift', () => {
    expect(simulate(log, '{length: 30 s}', { rows }).measure('arrivals.p.arrived')).toBe(3)
  })

  it('in its unit', () => {
    expect(times(simulate(log.replace('unit: s', 'unit: min'), '{length: 1 h}', { rows }))).toEqual([
      60, 120, 120, 1830,
    ])
  })

  it('draws the mix where it names no cases', () => {
    const shift = simulate(log.replace(', case: what', ''), '{length: 1 min}', { rows })
    expect(times(shift)).toEqual([1, 2, 2, 30.5])
    const kinds = [1, 2, 3, 4, 5].map((number) =>
      simulate(log.replace(', case: what', ''), '{length: 1 min}', { rows, shift: number })
        .arrivals.map(([, kind]) => kind)
        .join(''),
    )
    expect(new Set(kinds).size).toBeGreaterThan(1)
  })

  it('a case whose time lies in a break waits for its end; one at its very beginning has come', () => {
    const shift = '{length: 1 min, breaks: [{at: 2 s, for: 20 s}]}'
    expect(
      times(
        simulate(log, shift, {
          rows: [...rows.slice(0, 4), ['7', '1', 'a'], ['9', '1', 'b'], ['30', '1', 'b']],
        }),
      ),
    ).toEqual([1, 2, 2, 22, 22, 30])
  })

  it('with packers who wait: a case whose time has passed comes when the one before it is taken', () => {
    const source = log.replace('queue', 'wait')
    const late = [rows[0]!, ...['1', '2', '3', '30', '70'].map((time) => [time, '1', 'a'])]
    const shift = simulate(source, '{length: 100 s}', { rows: late, line: slow })
    // taken at 1, 11, 21, 31 and 70
    expect(times(shift)).toEqual([1, 2, 11, 30, 70])
    expect(shift.exits.map(([time]) => time)).toEqual([11, 21, 31, 41, 80])
    expect(shift.measure('arrivals.p.blocked')).toBeCloseTo((9 + 10 + 1) / 100, 9)
  })

  it('turns away what the line cannot take', () => {
    const shift = simulate(log.replace('queue', 'turn-away'), '{length: 1 min}', { rows, line: slow })
    expect(shift.measure('arrivals.p.turned-away')).toBe(2)
    expect(shift.exits).toEqual([
      [11, 'b'],
      [40.5, 'b'],
    ])
  })

  it.each(['queue', 'wait', 'turn-away'])('of 300 000 cases at one instant ends (%s)', (whenFull) => {
    const many = [['t', 'what'], ...Array.from({ length: 300_000 }, () => ['5', 'a'])]
    const shift = simulate(log.replace('queue', whenFull), '{length: 6 s}', { rows: many })
    expect(shift.measure('arrivals.p.arrived')).toBe(300_000)
  })
})

describe('packers as stations', () => {
  it('who stand while what comes after them is full stop their source', () => {
    // packed 1-5, out at 15. The next comes at 2, is packed 5-9, handed on at 15; the next comes at 6, packed 15-19 …
    const shift = simulate('{time-between: 1 s}', '{length: 46 s}', {
      line: '{packer: {type: station, time: 4 s, run-by: people}, end: {type: station, time: 10 s}}',
    })
    expect(times(shift)).toEqual([1, 2, 6, 16, 26, 36, 46])
    expect(shift.exits.map(([time]) => time)).toEqual([15, 25, 35, 45])
    expect(shift.measure('equipment.packer.states.blocked')).toBeCloseTo((4 * 6) / 46, 9)
  })

  it('stop at breaks, with the case in hand half packed', () => {
    // the third is taken at 15 and packed to 15.5 and from 25.5 to 29; the end has waited since 25
    const shift = simulate('{time-between: 1 s}', '{length: 45 s, breaks: [{at: 15.5 s, for: 10 s}]}', {
      line: '{packer: {type: station, time: 4 s, run-by: people}, end: {type: station, time: 10 s}}',
    })
    expect(times(shift)).toEqual([1, 2, 6, 26, 30, 40])
    expect(shift.exits.map(([time]) => time)).toEqual([15, 25, 39])
    expect(shift.measure('equipment.packer.states.on-break')).toBeCloseTo(10 / 45, 9)
  })

  it('two benches with sources of their own meet on one infeed, first come first served', () => {
    const line = `{one: {type: station, time: 6 s, run-by: people, to: infeed}, two: {type: station, time: 6 s, run-by: people},
      infeed: {type: conveyor, length: 2 m, speed: 1 m/s, spacing: 100 mm}, end: {type: station, time: 10 s}}`
    const shift = simulate(
      '{p: {orders: [{case: a, quantity: 1000, time-between: 1 s}], to: one}, q: {orders: [{case: b, quantity: 1000, time-between: 1 s}], to: two}}',
      '{length: 200 s}',
      { line },
    )
    // both done at 7; a enters at once, b when that has moved 0.5 m; a is at the end at 9, out at 19, then one in 10 s
    expect(shift.exits.map(([time]) => time)).toEqual(
      Array.from({ length: 19 }, (_, index) => 19 + 10 * index),
    )
    expect(shift.exits.map(([, kind]) => kind).join('')).toBe('abababababababababa')
  })
})

describe('shifts in a row', () => {
  const shift = '{length: 1 min, start: carry-over, campaign: 2, run-out: 4 s}'

  it.each([
    ['{by-hour: {cases: [360 cases/h], spaced: evenly}}', [10, 20, 30, 40, 50, 60]],
    ['{orders: [{case: a, quantity: 2, time-between: 10 s, before: 5 s}]}', [15, 25]],
    ['{log: {file: x.csv, time: t, unit: s}}', [7, 7, 50]],
  ])('each begins %s anew', (source, expected) => {
    const rows = [['t'], ['7'], ['7'], ['50'], ['61']]
    expect(times(simulate(source, shift, { rows }))).toEqual([
      ...expected,
      ...expected.map((time) => time + 64),
    ])
  })

  it('orders are counted a shift', () => {
    const source =
      '{orders: [{case: a, quantity: 2, time-between: 10 s}, {case: b, quantity: 99, time-between: 9 s}]}'
    expect(simulate(source, shift).measure('arrivals.p.orders-done')).toBe(1)
  })
})

describe('balances', () => {
  const kinds = fc.record({
    way: fc.constantFrom(
      '{by-hour: {cases: [900 cases/h, 0 cases/h, 1500 cases/h]}',
      '{by-hour: {cases: [700 cases/h, 1100 cases/h], spaced: evenly}, batch: 7',
      '{orders: [{case: a, quantity: 300, time-between: {gamma: {mean: 3 s, cv: 2}}}, {case: b, quantity: 5000, time-between: 4 s, before: {exponential: {mean: 5 min}}}]',
      '{log: {file: x.csv, time: t, case: what, unit: s}',
    ),
    whenFull: fc.constantFrom('wait', 'queue', 'turn-away'),
    start: fc.constantFrom('empty', 'carry-over, campaign: 3', 'empty, start-up: 7 min'),
    stop: fc.constantFrom('everything', 'arrivals-and-manual-work'),
    work: fc.integer({ min: 1, max: 7 }),
    room: fc.constantFrom('0', '4', 'unlimited'),
    seed: fc.integer({ min: 1, max: 1000 }),
  })
  const rows = [
    ['t', 'what'],
    ...Array.from({ length: 4000 }, (_, index) => [`${Math.floor(index / 3) * 9}`, index % 2 ? 'a' : 'b']),
  ]

  it('close for every way of arriving, with breaks, waits, queues and shifts in a row', () => {
    fc.assert(
      fc.property(kinds, (k) => {
        // simulate throws when a balance does not close
        const shift = simulate(
          `${k.way}, when-full: ${k.whenFull}}`,
          `{length: 3 h, start: ${k.start}, run-out: 2 min, breaks-stop: ${k.stop}, breaks: [{at: ${k.start.includes('start-up') ? '7 min' : '0 s'}, for: 3 min}, {at: 59 min, for: 2 min}, {at: 2 h, for: 20 min}]}`,
          {
            rows,
            shift: k.seed,
            line: `{bench: {type: station, time: {exponential: {mean: ${k.work} s}}, waiting-room: ${k.room}, run-by: people}, infeed: {type: conveyor, length: 3 m}, end: {type: station, time: ${k.work} s}}`,
          },
        )
        expect(shift.exits.length).toBeGreaterThan(0)
        expect(shift.exits.length).toBeLessThanOrEqual(shift.arrivals.length)
        const inBreak = times(shift).filter((time) => time % 10_920 > 7200 && time % 10_920 < 8400)
        expect(inBreak).toEqual([])
      }),
      { numRuns: 60, seed: 20261125 },
    )
  })
})
