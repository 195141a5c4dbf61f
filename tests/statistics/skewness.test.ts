/** Intervals of skewed means: the transformation undoes itself, is none without skewness, and leans to the longer side. */
import fc from 'fast-check'
import { sampleSkewness as ofLibrary } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { meanEstimate } from '../../src/statistics/estimate.js'
import { pairedDifference } from '../../src/statistics/paired.js'
import {
  sampleSkewness,
  skewedInterval,
  skewnessOfMean,
  withoutSkewness,
  withSkewness,
} from '../../src/statistics/skewness.js'

it('the skewness of a sample is that of simple-statistics, but for rounding', () => {
  // by hand: 0, 0, 3 have the mean 1, cubes -1, -1, 8 and the variance 3: 3 * 6 / (2 * 1 * 3 * sqrt 3)
  expect(sampleSkewness([0, 0, 3])).toBeCloseTo(Math.sqrt(3), 12)
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 3, maxLength: 50 }),
      (values) => {
        fc.pre(new Set(values).size > 1)
        expect(Math.abs(sampleSkewness(values) - ofLibrary(values))).toBeLessThan(1e-12)
      },
    ),
    { seed: 20261130 },
  )
})

describe('the transformation', () => {
  it('by hand: t = 1 of skewness 0.3 becomes 1 + 0.1 + 0.09 / 27 + 0.05', () => {
    expect(withoutSkewness(1, 0.3)).toBeCloseTo(1.1 + 0.09 / 27 + 0.05, 12)
    expect(withoutSkewness(0, 0.3)).toBeCloseTo(0.05, 12)
    expect(withoutSkewness(-2, 0)).toBe(-2)
  })

  it('undoes itself', () => {
    const any = fc.double({ min: -6, max: 6, noNaN: true })
    fc.assert(
      fc.property(any, fc.double({ min: -1, max: 1, noNaN: true }), (t, skewness) => {
        const back = withSkewness(withoutSkewness(t, skewness), skewness)
        expect(Math.abs(back - t)).toBeLessThan(1e-4 * Math.max(1, Math.abs(t)))
      }),
      { seed: 11 },
    )
  })

  it('of a mean of skewness 0.2 with error 1 and t = 2: from 1.77 below to 2.34 above', () => {
    // by hand: cube roots of 1 + 0.2 (2 - 0.0333) = 1.39333 and of 1 + 0.2 (-2 - 0.0333) = 0.59333
    const { low, high } = skewedInterval(10, 1, 2, 0.2)
    expect(10 - low).toBeCloseTo(15 * (Math.cbrt(1.393333) - 1), 4)
    expect(high - 10).toBeCloseTo(15 * (1 - Math.cbrt(0.593333)), 4)
  })
})

describe('skewness of a mean', () => {
  it('is not used of fewer than 30, nor of what does not vary', () => {
    expect(skewnessOfMean([0, 0, 0, 9])).toBe(0)
    expect(skewnessOfMean(new Array(50).fill(3))).toBe(0)
  })

  it('by hand: one 1 among 39 zeros', () => {
    // n = 40, p = 1 / 40: skewness (1 - 2 p) / sqrt(p (1 - p)), times sqrt(n (n - 1)) / (n - 2), over sqrt(n)
    const p = 1 / 40
    const skewness = ((1 - 2 * p) / Math.sqrt(p * (1 - p))) * (Math.sqrt(40 * 39) / 38)
    expect(skewnessOfMean([1, ...new Array<number>(39).fill(0)])).toBeCloseTo(skewness / Math.sqrt(40), 12)
  })
})

describe('a mean and a difference', () => {
  // exponential quantiles at (i + 1/2) / 60: skewed to the right
  const values = Array.from({ length: 60 }, (_, i) => -Math.log(1 - (i + 0.5) / 60))

  it('have more room on the side of the long tail', () => {
    const { mean, low, high } = meanEstimate(values, 0.95)
    expect(high - mean).toBeGreaterThan(1.2 * (mean - low))
    const turned = meanEstimate(
      values.map((value) => -value),
      0.95,
    )
    expect(turned.low).toBeCloseTo(-high, 12)
    expect(turned.high).toBeCloseTo(-low, 12)
  })

  it('of a difference, p-value and interval say the same', () => {
    const base = values.map(() => 0)
    for (const shift of [0.6, 0.7, 0.75, 0.8, 0.9, 1.3, 1.4, 1.5]) {
      const other = values.map((value) => value - shift)
      const { low, high, pValue } = pairedDifference(base, other, 0.95)
      expect(low > 0 || high < 0, String(shift)).toBe(pValue < 0.05)
    }
  })

  it('of a difference of which few shifts tell, nothing is told', () => {
    const base = new Array<number>(100).fill(5)
    const other = base.map((value, shift) => (shift % 20 === 0 ? value - 3 : value))
    const found = pairedDifference(base, other, 0.95)
    expect(found).toMatchObject({ mean: -0.15, n: 100, few: { events: 5, of: 'shifts' } })
    expect([found.low, found.high, found.pValue]).toEqual([Number.NaN, Number.NaN, Number.NaN])
  })
})
