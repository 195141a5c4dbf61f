/** The figure of a promise over the shifts of a design, from its sums. */
import { describe, expect, it } from 'vitest'
import type { Condition } from '../../src/study/condition.js'
import type { Tried } from '../../src/study/size.js'
import { promiseFigure } from '../../src/study/size-result.js'

const figure = (isShare: boolean, sum: number, square: number, shifts: number) =>
  promiseFigure(
    { isShare } as Condition,
    { sums: [Number.NaN, sum], squares: [Number.NaN, square], shifts } as Tried,
    1,
    0.95,
  )

describe('the figure of a promise', () => {
  it('of a mean has the interval of Student', () => {
    // 1, 2 and 3: mean 2, variance 1; the 97.5 % quantile of t with 2 degrees is 4.303 (any table of t, from memory)
    const { mean, low, high } = figure(false, 6, 14, 3)
    expect(mean).toBe(2)
    expect(high! - 2).toBeCloseTo(4.3027 / Math.sqrt(3), 3)
    expect(2 - low!).toBeCloseTo(4.3027 / Math.sqrt(3), 3)
  })

  it('of a share has that of Wilson', () => {
    // 9 of 10: (p + z^2/2n -+ z sqrt(p q / n + z^2 / 4 n^2)) / (1 + z^2 / n), Wilson, JASA 22 (1927) 209-212 (from memory)
    const [z, p, n] = [1.959964, 0.9, 10]
    const middle = (p + (z * z) / 2 / n) / (1 + (z * z) / n)
    const half = (z * Math.sqrt((p * (1 - p)) / n + (z * z) / 4 / n / n)) / (1 + (z * z) / n)
    const found = figure(true, 9, 9, 10)
    expect(found.mean).toBe(0.9)
    expect(found.low).toBeCloseTo(middle - half, 6)
    expect(found.high).toBeCloseTo(middle + half, 6)
  })

  it('is not known of no shift, and of shifts that say nothing', () => {
    const none = { mean: null, low: null, high: null }
    expect(figure(false, 0, 0, 0)).toEqual(none)
    expect(figure(true, 0, 0, 0)).toEqual(none)
    expect(figure(false, Number.NaN, Number.NaN, 20)).toEqual(none)
    // of one alone there is no spread
    expect(figure(false, 3, 9, 1)).toEqual({ mean: 3, low: null, high: null })
  })
})
