/** Estimates: what they say of no shifts, of one, of equal ones, and of ratios. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  estimateOf,
  meanEstimate,
  ratioEstimate,
  shareEstimate,
  wilsonEstimate,
} from '../../src/statistics/estimate.js'

describe('mean', () => {
  it('of 2 and 4 is 3 plus-minus t(1, 0.975) x sqrt(2) / sqrt(2) = 12.706', () => {
    const { mean, low, high, sd, n } = meanEstimate([2, 4], 0.95)
    expect([mean, n]).toEqual([3, 2])
    expect(sd).toBeCloseTo(Math.SQRT2, 12)
    expect(high - mean).toBeCloseTo(12.7062, 4)
    expect(mean - low).toBeCloseTo(12.7062, 4)
  })

  it('leaves out shifts that say nothing', () => {
    expect(meanEstimate([1, Number.NaN, 3], 0.95)).toMatchObject({ mean: 2, n: 2 })
    expect(meanEstimate([Number.NaN], 0.95)).toMatchObject({ mean: Number.NaN, n: 0 })
    expect(meanEstimate([5], 0.95)).toMatchObject({ mean: 5, low: Number.NaN, high: Number.NaN, n: 1 })
  })

  it('of equal shifts has no width', () => {
    expect(meanEstimate([7, 7, 7], 0.95)).toMatchObject({ mean: 7, low: 7, high: 7, sd: 0 })
  })
})

describe('share', () => {
  it('of all or none has an end at 1 or 0 and still a width', () => {
    // exact: a chance p that happens 4 times of 4 has p^4 >= 0.025; Wilson: the lower end for n of n is n / (n + z^2)
    expect(shareEstimate([1, 1, 1, 1], 0.95)).toMatchObject({ mean: 1, high: 1 })
    expect(shareEstimate([1, 1, 1, 1], 0.95).low).toBeCloseTo(0.025 ** 0.25, 6)
    expect(shareEstimate([0, 0, 0, 0], 0.95).low).toBe(0)
    expect(shareEstimate([0, 0, 0, 0], 0.95).high).toBeCloseTo(1 - 0.025 ** 0.25, 6)
    expect(wilsonEstimate([1, 1, 1, 1], 0.95).low).toBeCloseTo(4 / (4 + 1.959964 ** 2), 6)
  })

  it('stays within 0 and 1 and around its mean', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(0, 1), { minLength: 1, maxLength: 60 }), (values) => {
        const { mean, low, high } = shareEstimate(values, 0.9)
        expect(low).toBeGreaterThanOrEqual(0)
        expect(high).toBeLessThanOrEqual(1)
        expect(low).toBeLessThanOrEqual(mean)
        expect(high).toBeGreaterThanOrEqual(mean)
      }),
      { seed: 3 },
    )
  })
})

describe('ratio', () => {
  it('is total over total, not the mean of ratios: (1 + 9) / (1 + 3)', () => {
    expect(ratioEstimate([1, 9], [1, 3], 0.95).mean).toBe(2.5)
  })

  it('by hand: residuals 1 - 2.5 and 9 - 7.5 over a mean of 2: half-width 12.706 x 1.0607 / sqrt(2)', () => {
    const { mean, high } = ratioEstimate([1, 9], [1, 3], 0.95)
    expect(high - mean).toBeCloseTo((12.7062 * Math.sqrt(2 * 0.75 ** 2)) / Math.SQRT2, 3)
  })

  it('of an exact proportion has no width', () => {
    const { low, high } = ratioEstimate([2, 4, 6], [1, 2, 3], 0.95)
    expect([low, high]).toEqual([2, 2])
  })

  it('with nothing to divide by says nothing', () => {
    expect(ratioEstimate([0, 0], [0, 0], 0.95)).toMatchObject({ mean: Number.NaN, n: 0 })
  })
})

describe('time per event', () => {
  const [times, events] = [
    [100, 100, 100, 100],
    [1, 0, 2, 1],
  ]
  const timePerEvent = (of: number[]) =>
    estimateOf({ kind: 'ratio', values: times, overs: of, isTimeOfEvents: true }, 0.95)

  it('is one over the rate, its interval that of the rate turned over', () => {
    // rate 0.01 plus-minus t(3, 0.975) x sd / 2: sd of the counts sqrt(2 / 3), so 0.01299: its lower end is below none
    expect(timePerEvent(events)).toMatchObject({ mean: 100, high: Number.NaN, n: 4 })
    expect(timePerEvent(events).low).toBeCloseTo(1 / (0.01 + (3.182446 * Math.sqrt(2 / 3)) / 2 / 100), 4)
  })

  it('of what comes alike in all shifts has no width', () => {
    expect(timePerEvent([4, 4, 4, 4])).toMatchObject({ mean: 25, low: 25, high: 25, sd: 0 })
  })
})
