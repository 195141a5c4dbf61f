/** Laws of times: closed forms, digits in the tails, and that density, shares and partial expectations agree. */
import { describe, expect, it } from 'vitest'
import { fitComplete } from '../../src/statistics/fitting/complete.js'
import { distributionOf, type FittedLaw, families } from '../../src/statistics/fitting/law.js'

const laws: FittedLaw[] = [
  { family: 'exponential', mean: 90 },
  { family: 'weibull', shape: 0.7, scale: 80 },
  { family: 'weibull', shape: 3, scale: 80 },
  { family: 'gamma', shape: 0.6, scale: 100 },
  { family: 'gamma', shape: 12, scale: 8 },
  { family: 'lognormal', location: 4, spread: 1.2 },
  {
    family: 'mixture',
    share: 0.7,
    first: { family: 'lognormal', location: 3, spread: 0.5 },
    second: { family: 'lognormal', location: 6, spread: 0.8 },
  },
]

describe('laws by hand', () => {
  it('exponential of mean 2 at 2: share 1/e over it, density 1/(2e), half below 2 ln 2, cv 1', () => {
    const law = distributionOf({ family: 'exponential', mean: 2 })
    expect(law.above(2)).toBeCloseTo(1 / Math.E, 14)
    expect(law.logDensity(2)).toBeCloseTo(-1 - Math.log(2), 14)
    expect(law.quantile(0.5)).toBeCloseTo(2 * Math.LN2, 14)
    expect([law.mean, law.cv]).toEqual([expect.closeTo(2, 12), expect.closeTo(1, 12)])
    // integral of x exp(-x/2)/2 up to 2: 2 (1 - 2/e)
    expect(law.partialBelow(2)).toBeCloseTo(2 * (1 - 2 / Math.E), 12)
  })

  it('gamma of shape 2: (1 + x) exp(-x) over x, also where that is 1e-20', () => {
    const law = distributionOf({ family: 'gamma', shape: 2, scale: 1 })
    expect(law.above(50) / (51 * Math.exp(-50))).toBeCloseTo(1, 10)
    expect(law.cv).toBeCloseTo(Math.SQRT1_2, 14)
    // ln(1 + x) - x also where the share itself is 0
    expect(law.above(800)).toBe(0)
    expect(law.logAbove(800)).toBeCloseTo(Math.log(801) - 800, 5)
  })

  it('lognormal of mean 85 and cv 0.8: location and spread by their formulas', () => {
    const square = Math.log(1 + 0.64)
    const law = distributionOf({
      family: 'lognormal',
      location: Math.log(85) - square / 2,
      spread: Math.sqrt(square),
    })
    expect([law.mean, law.cv]).toEqual([expect.closeTo(85, 10), expect.closeTo(0.8, 12)])
    // half of all are below the median
    expect(law.below(85 / Math.sqrt(1.64))).toBeCloseTo(0.5, 14)
  })

  it('lognormal far out: the series meets the function where they change over', () => {
    const law = distributionOf({ family: 'lognormal', location: 0, spread: 1 })
    const [near, far] = [law.logAbove(Math.exp(30 - 1e-9)), law.logAbove(Math.exp(30 + 1e-9))]
    expect(far - near).toBeCloseTo(0, 6)
    expect(law.logAbove(Math.exp(40))).toBeLessThan(-800)
  })

  it('half and half of medians 1 and 100, hardly spread: half below 10', () => {
    const part = (location: number) => ({ family: 'lognormal', location, spread: 0.1 }) as const
    const law = distributionOf({ family: 'mixture', share: 0.5, first: part(0), second: part(Math.log(100)) })
    expect(law.below(10)).toBeCloseTo(0.5, 12)
    expect(law.quantile(0.25)).toBeCloseTo(1, 10)
    expect(law.quantile(0.75)).toBeCloseTo(100, 8)
    expect(law.mean).toBeCloseTo(50.5 * Math.exp(0.005), 10)
  })
})

describe.each(laws)('$family', (law) => {
  const asked = distributionOf(law)
  const times = [0.05, 0.3, 0.5, 0.9, 0.999].map((p) => asked.quantile(p))

  it('has quantiles that are the other way round of shares', () => {
    for (const p of [1e-6, 0.05, 0.5, 0.999]) expect(asked.below(asked.quantile(p)) / p).toBeCloseTo(1, 8)
  })

  it('shares and partial expectations add up, and have the density as their slope', () => {
    for (const x of times) {
      expect(asked.below(x) + asked.above(x)).toBeCloseTo(1, 12)
      expect(Math.exp(asked.logAbove(x)) / asked.above(x)).toBeCloseTo(1, 10)
      expect((asked.partialBelow(x) + asked.partialAbove(x)) / asked.mean).toBeCloseTo(1, 10)
      const step = x * 1e-4
      const slope = (of: (x: number) => number) => (of(x + step) - of(x - step)) / (2 * step)
      const density = Math.exp(asked.logDensity(x))
      expect(slope(asked.below) / density).toBeCloseTo(1, 5)
      expect(slope(asked.partialBelow) / (x * density)).toBeCloseTo(1, 5)
    }
  })

  it('has mean and cv of its quantiles', () => {
    const n = 20000
    const drawn = Float64Array.from({ length: n }, (_, index) => asked.quantile((index + 0.5) / n))
    const mean = drawn.reduce((sum, value) => sum + value, 0) / n
    // the middle of the last 1 of 20000 stands for all of it, which of the longest tail here is short by 1 in 500
    expect(mean / asked.mean).toBeGreaterThan(0.998)
    expect(mean / asked.mean).toBeLessThan(1.0005)
    const square = drawn.reduce((sum, value) => sum + (value - mean) ** 2, 0) / n
    expect(Math.sqrt(square) / mean / asked.cv).toBeGreaterThan(0.95)
    expect(Math.sqrt(square) / mean / asked.cv).toBeLessThan(1.001)
  })
})

describe('complete times', () => {
  it('1, 2, 4: mean 7/3; ln 2 in the middle, ln 2 sqrt(2/3) about it', () => {
    const values = Float64Array.of(1, 2, 4)
    expect(fitComplete('exponential', values)).toEqual({
      family: 'exponential',
      mean: expect.closeTo(7 / 3, 14),
    })
    expect(fitComplete('lognormal', values)).toEqual({
      family: 'lognormal',
      location: expect.closeTo(Math.LN2, 14),
      spread: expect.closeTo(Math.LN2 * Math.sqrt(2 / 3), 14),
    })
  })

  it('stand as often as their weights say', () => {
    for (const family of families) {
      const [once, weighed] = [
        fitComplete(family, Float64Array.of(3, 5, 5, 5, 9, 9)),
        fitComplete(family, Float64Array.of(3, 5, 9), Float64Array.of(1, 3, 2)),
      ].map((law) => Object.values(law!).slice(1) as number[])
      for (const [index, value] of once!.entries()) expect(weighed![index]).toBeCloseTo(value, 10)
    }
  })

  it('scale with their unit, however small or large', () => {
    const values = Float64Array.of(3, 5, 8, 21, 60)
    for (const factor of [1e-9, 1, 1e9])
      for (const family of ['weibull', 'gamma'] as const) {
        const [plain, scaled] = [
          fitComplete(family, values),
          fitComplete(
            family,
            values.map((value) => value * factor),
          ),
        ] as { shape: number; scale: number }[]
        expect(scaled!.shape / plain!.shape).toBeCloseTo(1, 9)
        expect(scaled!.scale / plain!.scale / factor).toBeCloseTo(1, 9)
      }
  })

  it('have no law where there are none, all are alike or one is 0', () => {
    for (const family of ['weibull', 'gamma', 'lognormal'] as const)
      for (const values of [[], [4], [4, 4, 4], [0, 3, 5]])
        expect(fitComplete(family, Float64Array.from(values))).toBeNull()
    expect(fitComplete('exponential', new Float64Array())).toBeNull()
    expect(fitComplete('exponential', Float64Array.of(0, 0))).toBeNull()
    expect(fitComplete('exponential', Float64Array.of(0, 3))).toEqual({ family: 'exponential', mean: 1.5 })
  })

  it('that are nearly alike have a law all the same', () => {
    const values = Float64Array.of(100, 100.001, 100.002)
    expect(fitComplete('weibull', values)).toMatchObject({ scale: expect.closeTo(100.001, 2) })
    const gamma = fitComplete('gamma', values) as { shape: number; scale: number }
    // the variance with divisor n, 6.67e-7, over the mean: the limit of narrow gamma laws
    expect(gamma.shape * gamma.scale).toBeCloseTo(100.001, 6)
    expect((gamma.scale * 100.001) / 6.667e-7).toBeCloseTo(1, 2)
  })
})
