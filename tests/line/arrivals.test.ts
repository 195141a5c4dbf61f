/** Arrivals by hand: by hour and by orders, with breaks, waits, queues and batches. */
import { describe, expect, it } from 'vitest'
import { simulate, slow, times } from './arriving.js'

describe('by hour, evenly', () => {
  it('comes at the rate of the hour: every 10 s, not at all, every 5 s', () => {
    const shift = simulate(
      '{by-hour: {cases: [360 cases/h, 0 cases/h, 720 cases/h], spaced: evenly}}',
      '{length: 3 h}',
    )
    const all = times(shift)
    expect(all.slice(0, 3)).toEqual([10, 20, 30])
    // 360 by the end of the first hour; the next interval begins with the third
    expect(all.slice(358, 363)).toEqual([3590, 3600, 7205, 7210, 7215])
    expect(all).toHaveLength(360 + 720)
    expect(all.at(-1)).toBe(10_800)
  })

  it('holds the last rate on, and ends with the shift where more are given', () => {
    expect(
      simulate('{by-hour: {cases: [360 cases/h], spaced: evenly}}', '{length: 2.5 h}').arrivals,
    ).toHaveLength(900)
    expect(
      times(simulate('{by-hour: {cases: [360 cases/h, 720 cases/h], spaced: evenly}}', '{length: 25 s}')),
    ).toEqual([10, 20])
  })

  it('an interval over the turn of the hour runs on at the new rate', () => {
    // 324 in the first hour, the last one at its end; at half the rate the next one comes 22.2 s later
    const all = times(
      simulate('{by-hour: {cases: [324 cases/h, 162 cases/h], spaced: evenly}}', '{length: 2 h}'),
    )
    expect(all[323]).toBeCloseTo(3600, 6)
    expect(all[324]).toBeCloseTo(3600 + 3600 / 162, 6)
    // 400.5 an hour: half an interval is over at the turn, the other half takes 5 s at 360
    const turned = times(
      simulate('{by-hour: {cases: [400.5 cases/h, 360 cases/h], spaced: evenly}}', '{length: 2 h}'),
    )
    expect(turned[400]).toBeCloseTo(3605, 6)
  })

  it('a break keeps what is left of the interval', () => {
    // due at 10 and 20; half of that interval is left at 15: 35 + 5
    expect(
      times(
        simulate(
          '{by-hour: {cases: [360 cases/h], spaced: evenly}}',
          '{length: 60 s, breaks: [{at: 15 s, for: 20 s}]}',
        ),
      ),
    ).toEqual([10, 40, 50, 60])
  })

  it('hours are hours of the shift, breaks included', () => {
    // 3590, then half an interval to 3595; the other half at one in 5 s from 3605: 3607.5
    const all = times(
      simulate(
        '{by-hour: {cases: [360 cases/h, 720 cases/h], spaced: evenly}}',
        '{length: 1.01 h, breaks: [{at: 3595 s, for: 10 s}]}',
      ),
    )
    expect(all.slice(358)).toEqual([3590, 3607.5, 3612.5, 3617.5, 3622.5, 3627.5, 3632.5])
  })

  it('batches keep the rate: three in 30 s', () => {
    expect(
      times(simulate('{by-hour: {cases: [360 cases/h], spaced: evenly}, batch: 3}', '{length: 70 s}')),
    ).toEqual([30, 30, 30, 60, 60, 60])
  })

  it('packers who wait begin the next interval when their case is taken', () => {
    // taken at 6, due at 12, taken at 16, due at 22, taken at 26 …
    const shift = simulate('{by-hour: {cases: [600 cases/h], spaced: evenly}}', '{length: 40 s}', {
      line: slow,
    })
    expect(times(shift)).toEqual([6, 12, 22, 32])
    expect(shift.measure('arrivals.p.blocked')).toBeCloseTo((4 + 4 + 4) / 40, 9)
  })

  it('a wait does not move the hours', () => {
    const shift = simulate(
      '{by-hour: {cases: [450 cases/h, 720 cases/h], spaced: evenly}}',
      '{length: 3640 s}',
      { line: '{s: {type: station, time: 1 s, every: {cases: 448, stop: 25 s}}}' },
    )
    // case 448 is done at 3585, the stop ends at 3610; 449 stands in the place, 450 comes at 3600 and waits for it
    // until 3611; then the rate is that of the second hour: one in 5 s
    expect(times(shift).slice(446, 451)).toEqual([3576, 3584, 3592, 3600, 3616])
  })

  it('queues and turns away', () => {
    const source = (whenFull: string) =>
      `{by-hour: {cases: [720 cases/h], spaced: evenly}, when-full: ${whenFull}}`
    const queued = simulate(source('queue'), '{length: 41 s}', { line: slow })
    // comes at 5, 10 … 40; taken at 5, 15, 25, 35
    expect(queued.measure('arrivals.p.arrived')).toBe(8)
    expect(queued.measure('arrivals.p.held-largest')).toBe(4)
    const turned = simulate(source('turn-away'), '{length: 41 s}', { line: slow })
    expect(turned.measure('arrivals.p.arrived')).toBe(8)
    expect(turned.measure('arrivals.p.turned-away')).toBe(4)
  })
})

describe('by hour, at random', () => {
  it('at a steady rate is the same as exponential times between', () => {
    const steady = times(
      simulate(
        '{time-between: {exponential: {mean: 5 s}}}',
        '{length: 1 h, breaks: [{at: 20 min, for: 9 min}]}',
      ),
    )
    const hourly = times(
      simulate('{by-hour: {cases: [720 cases/h]}}', '{length: 1 h, breaks: [{at: 20 min, for: 9 min}]}'),
    )
    expect(hourly.length).toBe(steady.length)
    expect(hourly.length).toBeGreaterThan(500)
    for (const [index, time] of hourly.entries()) expect(time).toBeCloseTo(steady[index]!, 4)
  })

  it('the rate summed up to each arrival is that of a Poisson process of rate 1 by the same draws', () => {
    const unit = times(simulate('{time-between: {exponential: {mean: 1 s}}}', '{length: 1100 s}'))
    const hourly = times(
      simulate(
        '{by-hour: {cases: [360 cases/h, 0 cases/h, 720 cases/h]}}',
        '{length: 3 h, breaks: [{at: 30 min, for: 10 min}]}',
      ),
    )
    // 0.1 a second up to 1800 s and from 2400 to 3600 s; 0.2 a second from 7200 s
    const sum = (time: number) =>
      0.1 * Math.min(time, 1800) +
      0.1 * Math.max(0, Math.min(time, 3600) - 2400) +
      0.2 * Math.max(0, time - 7200)
    expect(hourly.length).toBe(unit.filter((time) => time <= 180 + 120 + 720).length)
    for (const [index, time] of hourly.entries()) expect(sum(time)).toBeCloseTo(unit[index]!, 4)
    expect(hourly.some((time) => time > 1800 && time < 2400)).toBe(false)
    expect(hourly.some((time) => time > 3600 && time < 7200)).toBe(false)
  })

  it('nothing comes in the start-up', () => {
    const all = times(simulate('{by-hour: {cases: [3600 cases/h]}}', '{length: 10 min, start-up: 5 min}'))
    expect(all[0]).toBeGreaterThan(300)
    expect(all.length).toBeGreaterThan(200)
  })
})

describe('orders', () => {
  const two =
    '{orders: [{case: a, quantity: 2, time-between: 10 s}, {case: b, quantity: 3, time-between: 5 s, before: 20 s}]}'

  it('run one after the other; after the last one nothing more comes', () => {
    const shift = simulate(two, '{length: 10 min}')
    expect(shift.arrivals).toEqual([
      [10, 'a'],
      [20, 'a'],
      [45, 'b'],
      [50, 'b'],
      [55, 'b'],
    ])
    expect(shift.measure('arrivals.p.orders-done')).toBe(2)
    expect(shift.measure('arrivals.p.arrived')).toBe(5)
  })

  it('an order is done when its last case has come', () => {
    expect(simulate(two, '{length: 19 s}').measure('arrivals.p.orders-done')).toBe(0)
    expect(simulate(two, '{length: 20 s}').measure('arrivals.p.orders-done')).toBe(1)
    expect(simulate(two, '{length: 54 s}').measure('arrivals.p.orders-done')).toBe(1)
    // two of five are turned away: they have come all the same
    const away = simulate(two.replace('}]}', '}], when-full: turn-away}'), '{length: 60 s}', { line: slow })
    expect(away.measure('arrivals.p.turned-away')).toBe(1)
    expect(away.measure('arrivals.p.orders-done')).toBe(2)
  })

  it('`before` counts for the first one from the start of the shift, and stands still in a break', () => {
    const source = two.replace('time-between: 10 s', 'time-between: 10 s, before: 7 s')
    expect(times(simulate(source, '{length: 2 min}'))).toEqual([17, 27, 52, 57, 62])
    expect(times(simulate(source, '{length: 2 min, breaks: [{at: 30 s, for: 15 s}]}'))).toEqual([
      17, 27, 67, 72, 77,
    ])
  })

  it('packers who wait begin the change when their last case is taken', () => {
    // a at 10 and 20 (taken at 20); b at 45, then 50, taken at 55, and 60, taken at 65
    const shift = simulate(two, '{length: 2 min}', { line: slow })
    expect(times(shift)).toEqual([10, 20, 45, 50, 60])
    // the same with 15 s of work: the second a is taken at 25
    const slower = simulate(two, '{length: 2 min}', { line: '{s: {type: station, time: 15 s}}' })
    expect(times(slower)).toEqual([10, 20, 50, 55, 70])
    expect(slower.measure('arrivals.p.orders-done')).toBe(2)
  })

  it('queue on the floor while the line is full', () => {
    const shift = simulate(two.replace('}]}', '}], when-full: queue}'), '{length: 2 min}', { line: slow })
    expect(times(shift)).toEqual([10, 20, 45, 50, 55])
    expect(shift.exits.map(([time]) => time)).toEqual([20, 30, 55, 65, 75])
  })

  it('a change does nothing to what is on the conveyor', () => {
    const line = '{infeed: {type: conveyor, length: 12 m, speed: 1 m/s}}'
    const source = (second: string) =>
      `{orders: [{case: a, quantity: 4, time-between: 2 s}, {case: ${second}, quantity: 2, time-between: 2 s, before: 1 s}]}`
    const same = simulate(source('a'), '{length: 1 min}', { line })
    const other = simulate(source('b'), '{length: 1 min}', { line })
    // in at 2, 4, 6, 8; then the change, while all four ride on; 11, 13. Each leaves 12 s later, in its order
    expect(same.exits.map(([time]) => time)).toEqual([14, 16, 18, 20, 23, 25])
    expect(other.exits.map(([time]) => time)).toEqual([14, 16, 18, 20, 23, 25])
    expect(other.exits.map(([, kind]) => kind).join('')).toBe('aaaabb')
  })

  it('the quantity of one order changes no time of another', () => {
    const source = (quantity: number) =>
      `{orders: [{case: a, quantity: ${quantity}, time-between: {exponential: {mean: 3 s}}}, {case: b, quantity: 20, time-between: {exponential: {mean: 2 s}}, before: {uniform: {low: 5 s, high: 50 s}}}]}`
    const since = (quantity: number) => {
      const all = times(simulate(source(quantity), '{length: 1 h}'))
      expect(all).toHaveLength(quantity + 20)
      return all.slice(quantity).map((time) => time - all[quantity - 1]!)
    }
    const [few, many] = [since(10), since(30)]
    for (const [index, time] of few.entries()) expect(time).toBeCloseTo(many[index]!, 5)
  })

  it('begin anew with each shift', () => {
    expect(simulate(two, '{length: 1 min}', { shift: 7 }).arrivals).toEqual(
      simulate(two, '{length: 1 min}').arrivals,
    )
  })
})
