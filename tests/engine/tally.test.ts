/** Tallies against values worked by hand. */
import fc from 'fast-check'
import { quantileSorted } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { Ring } from '../../src/engine/ring.js'
import { Level, Observations } from '../../src/engine/tally.js'

/** A level, and what it is told at given times. */
function levelAt(samples = 0) {
  const clock = { now: 0 }
  const level = new Level(clock, samples)
  const at = (now: number): Level => {
    clock.now = now
    return level
  }
  return { level, at }
}

describe('level', () => {
  it('averages over time: 0 for 2 s, 3 for 4 s, 1 for 4 s', () => {
    const { level, at } = levelAt()
    at(0).reset(0, 10)
    at(2).change(3)
    at(6).change(-2)
    at(10).settle()
    expect(level.mean()).toBeCloseTo((0 * 2 + 3 * 4 + 1 * 4) / 10, 12)
    expect(level.largest).toBe(3)
    expect(level.shareFrom(1)).toBeCloseTo(0.8, 12)
    expect(level.shareFrom(3)).toBeCloseTo(0.4, 12)
    expect([0.1, 0.2, 0.5, 0.6, 0.61, 1].map((p) => level.quantile(p))).toEqual([0, 0, 1, 1, 3, 3])
  })

  it('notes its value in the middle of each part', () => {
    const { level, at } = levelAt(5)
    at(0).reset(0, 10)
    at(2).change(3)
    at(6).change(-2)
    at(10).settle()
    // at 1, 3, 5, 7, 9 s
    expect([...level.samples]).toEqual([0, 3, 3, 1, 1])
  })

  it('counts anew from 3 s: 3 for 3 s, then 1 for 4 s; what was before is forgotten, the value is not', () => {
    const { level, at } = levelAt(7)
    at(0).reset(0, 10)
    at(1).change(5)
    at(2).change(-2)
    at(3).restart(3, 10)
    expect(level.value).toBe(3)
    expect(level.largest).toBe(3)
    at(6).change(-2)
    at(10).settle()
    expect(level.mean()).toBeCloseTo((3 * 3 + 1 * 4) / 7, 12)
    expect(level.largest).toBe(3)
    expect(level.shareFrom(3)).toBeCloseTo(3 / 7, 12)
    expect([0.5, 0.57, 0.58, 1].map((p) => level.quantile(p))).toEqual([1, 1, 3, 3])
    // at 3.5, 4.5 … 9.5 s
    expect([...level.samples]).toEqual([3, 3, 3, 1, 1, 1, 1])
    at(0).reset(0, 10)
    expect([level.value, level.largest]).toEqual([0, 0])
  })

  it('counts anew at its last instant: nothing is known of no time', () => {
    const { level, at } = levelAt()
    at(0).reset(0, 10)
    at(4).change(2)
    at(10).restart(10, 10)
    at(10).settle()
    expect([level.mean(), level.shareFrom(1), level.largest]).toEqual([0, 0, 2])
  })

  it('grows with what it holds', () => {
    const { level, at } = levelAt()
    at(0).reset(0, 1)
    at(0).change(5000)
    at(1).settle()
    expect(level.mean()).toBe(5000)
    expect(level.quantile(0.5)).toBe(5000)
  })
})

function seenOf(values: readonly number[]): Observations {
  const seen = new Observations()
  for (const value of values) {
    seen.latest = value
    seen.add()
  }
  return seen
}

describe('observations', () => {
  it('knows mean and largest, and nothing of no values', () => {
    expect(seenOf([]).mean()).toBeNaN()
    expect(seenOf([]).quantile(0.5)).toBeNaN()
    const seen = seenOf([1, 2, 6])
    expect(seen.mean()).toBe(3)
    expect(seen.largest).toBe(6)
  })

  it('has quantiles within 1.5 % of those of the sorted values', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.1, max: 1e6, noNaN: true }), { minLength: 200, maxLength: 400 }),
        fc.constantFrom(0.5, 0.9, 0.95),
        (values, p) => {
          const seen = seenOf(values)
          const sorted = [...values].sort((a, b) => a - b)
          const low = quantileSorted(sorted, Math.max(0, p - 1 / values.length))
          const high = quantileSorted(sorted, Math.min(1, p + 1 / values.length))
          expect(seen.quantile(p)).toBeGreaterThanOrEqual(low * 0.985)
          expect(seen.quantile(p)).toBeLessThanOrEqual(high * 1.015)
        },
      ),
      { seed: 7 },
    )
  })
})

describe('ring', () => {
  it('is first in, first out, and keeps its order when it grows', () => {
    const ring = new Ring(2)
    for (let item = 0; item < 3; item++) ring.push(item)
    expect(ring.shift()).toBe(0)
    for (let item = 3; item < 20; item++) ring.push(item)
    expect(Array.from({ length: ring.length }, (_, index) => ring.at(index))).toEqual(
      Array.from({ length: 19 }, (_, index) => index + 1),
    )
    expect(Array.from({ length: 19 }, () => ring.shift())).toEqual(
      Array.from({ length: 19 }, (_, index) => index + 1),
    )
    expect(ring.length).toBe(0)
  })
})
