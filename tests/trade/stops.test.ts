/** What stops leave of a rate, and how much of their time they take from people, worked by hand. */
import { describe, expect, it } from 'vitest'
import { availability, effectiveRate, rollChangesPerCase } from '../../src/trade/stops.js'
import { loadLimit, operatorLoad } from '../../src/trade/workload.js'

describe('time lost', () => {
  it('two heads, 2538 cases a roll, 90 s a change at 20 cases a minute: 2.4 % of the time, one in 63 min', () => {
    const perCase = rollChangesPerCase(2, 2538)
    const lost = 1 / effectiveRate(0, [{ perCase, time: 90 }])
    expect(((100 * lost) / 3).toFixed(1)).toBe('2.4')
    expect(Math.floor(3 / perCase / 60)).toBe(63)
    expect(rollChangesPerCase(2, 0)).toBe(Infinity)
  })

  it('sums over the kinds of stop', () => {
    // half a jam in 1000 cases of 60 s and 0.3 breaks of 40 s: 0.030 + 0.012 s on 2 s
    const stops = [
      { perCase: 0.0005, time: 60 },
      { perCase: 0.0003, time: 40 },
    ]
    expect(1 / effectiveRate(0, stops)).toBeCloseTo(0.042, 12)
    expect(effectiveRate(2, stops)).toBeCloseTo(1 / 2.042, 12)
    expect(effectiveRate(2, [])).toBe(0.5)
  })

  it('a machine that never fails is always available', () => {
    expect(availability(Infinity, 90)).toBe(1)
    expect(availability(900, 100)).toBeCloseTo(0.9, 12)
  })
})

describe('operator load', () => {
  it('one person on roll changes and jams at 20 cases a minute: 4.6 %', () => {
    // changes 2 x 20 / 2538 a minute of 90 + 15 s, jams 0.01 a minute of 60 + 15 s: 2.4048 s a minute, with 15 %: 2.7656
    const tasks = [
      { rate: 40 / 2538 / 60, time: 90 + 15 },
      { rate: 0.01 / 60, time: 60 + 15 },
    ]
    expect(operatorLoad(tasks, 1)).toBeCloseTo(2.7656 / 60, 5)
    expect(operatorLoad(tasks, 2)).toBeCloseTo(2.7656 / 120, 5)
    expect(operatorLoad(tasks, 1, 0)).toBeCloseTo(2.4048 / 60, 5)
    expect(operatorLoad([], 1)).toBe(0)
  })

  it('four seconds of folding at 13 cases a minute overload one person (limit: common practice, no source)', () => {
    expect(operatorLoad([{ rate: 13 / 60, time: 4 }], 1)).toBeGreaterThan(loadLimit)
    expect(operatorLoad([{ rate: 11 / 60, time: 4 }], 1)).toBeLessThan(loadLimit)
  })
})
