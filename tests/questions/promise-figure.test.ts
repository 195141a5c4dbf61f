/** What shifts say of a promise, worked out by hand. */
import { describe, expect, it } from 'vitest'
import type { Condition } from '../../src/answers/condition.js'
import { leastSpare, promiseFigure, shownBy } from '../../src/questions/size/promise-figure.js'
import { condition, shiftOf } from './searches.js'

const figure = (change: Partial<Condition>, ...shifts: number[][]) =>
  promiseFigure(condition(0, change), shifts.map(shiftOf), { confidence: 0.95, exposure: 1 })

describe('the figure of a promise', () => {
  it('of a mean has the interval of Student', () => {
    // 1, 2 and 3: mean 2, variance 1; the 97.5 % quantile of t with 2 degrees is 4.303 (any table of t, from memory)
    const { mean, low, high } = figure({ isShare: false }, [1], [2], [3])
    expect(mean).toBe(2)
    expect(high! - 2).toBeCloseTo(4.3027 / Math.sqrt(3), 3)
    expect(2 - low!).toBeCloseTo(4.3027 / Math.sqrt(3), 3)
  })

  it('keeps its figures where the spread is a billionth of the mean', () => {
    // variance 1: a sum of squares, of which a double holds 16 figures, would lose it beside a mean of a billion
    const { low, high } = figure({ isShare: false }, [1e9 - 1], [1e9], [1e9 + 1])
    expect((high! - low!) / 2).toBeCloseTo(4.3027 / Math.sqrt(3), 3)
  })

  it('of a ratio is total over total', () => {
    const measure = { ...condition(0).measure, kind: 'ratio' as const }
    const { mean, low, high } = figure({ isShare: false, measure }, [1, 1], [2, 4])
    expect(mean).toBeCloseTo(3 / 5, 12)
    // residuals 1 - 0.6 and 2 - 2.4 over a mean of 2.5: 0.16 either way, s = 0.16 sqrt 2, t of 1 degree 12.706 (from memory)
    expect(high! - mean!).toBeCloseTo((12.706 * 0.16 * Math.SQRT2) / Math.SQRT2, 3)
    expect(mean! - low!).toBeCloseTo((12.706 * 0.16 * Math.SQRT2) / Math.SQRT2, 3)
  })

  it('of a share has that of Wilson', () => {
    // 14 of 20: (p + z^2/2n -+ z sqrt(p q / n + z^2 / 4 n^2)) / (1 + z^2 / n), Wilson, JASA 22 (1927) 209-212 (from memory)
    const [z, p, n] = [1.959964, 0.7, 20]
    const middle = (p + (z * z) / 2 / n) / (1 + (z * z) / n)
    const half = (z * Math.sqrt((p * (1 - p)) / n + (z * z) / 4 / n / n)) / (1 + (z * z) / n)
    const found = figure({}, ...Array.from({ length: 20 }, (_, shift) => [shift < 14 ? 1 : 0]))
    expect(found.mean).toBe(0.7)
    expect(found.low).toBeCloseTo(middle - half, 6)
    expect(found.high).toBeCloseTo(middle + half, 6)
  })

  it('is not known of no shift, and of shifts that say nothing', () => {
    const none = { mean: null, low: null, high: null }
    expect(figure({ isShare: false })).toEqual(none)
    expect(figure({})).toEqual(none)
    expect(figure({ isShare: false }, [Number.NaN], [Number.NaN])).toEqual(none)
    // of one alone there is no spread
    expect(figure({ isShare: false }, [3])).toEqual({ mean: 3, low: null, high: null })
  })
})

describe('what an interval says of a promise of at least 85 %, give or take 4 points', () => {
  const least = { value: 0.85, isLeast: true, near: 0.04 }
  it.each([
    [0.85, 0.9, 'kept'],
    [0.84, 0.9, 'open'],
    [0.8, 0.85, 'open'],
    [0.7, 0.849, 'near'],
    [0.7, 0.811, 'near'],
    [0.7, 0.809, 'missed'],
  ])('from %f to %f: %s', (low, high, shown) => {
    expect(shownBy({ mean: 0.8, low, high }, least)).toBe(shown)
    // the same the other way round: at most 15 %
    const most = { value: 0.15, isLeast: false, near: 0.04 }
    const mirrored = (value: number) => Number((1 - value).toFixed(9))
    expect(shownBy({ mean: 0.2, low: mirrored(high), high: mirrored(low) }, most)).toBe(shown)
  })

  it('nothing without an interval', () => {
    expect(shownBy({ mean: 0.1, low: null, high: null }, least)).toBe('open')
  })
})

it('what a design has to spare counts in what may go either way, and the least of its promises counts', () => {
  const asked = [
    { value: 0.9, isLeast: true, near: 0.02 },
    { value: 300, isLeast: false, near: 20 },
  ]
  const of = (mean: number | null) => ({ mean, low: null, high: null })
  // two points short are one of 2 points; 50 s to spare are 2.5 of 20 s
  expect(leastSpare([of(0.88), of(250)], asked)).toBeCloseTo(-1, 12)
  expect(leastSpare([of(0.94), of(290)], asked)).toBeCloseTo(0.5, 12)
  expect(leastSpare([of(0.94), of(null)], asked)).toBe(-Infinity)
  expect(leastSpare([], asked)).toBe(-Infinity)
})
