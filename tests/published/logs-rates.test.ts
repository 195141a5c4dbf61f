/** How often something happens: limits and tests of rates, chances and counts against published values. */
import { describe, expect, it } from 'vitest'
import { againstExpected, againstExposure, dispersion } from '../../src/statistics/dispersion.js'
import { chanceOf, rateOf } from '../../src/statistics/rates.js'
import { horseKicks } from './data/events.js'

/** As many digits as are given. */
const near = (value: number, digits = 7) => expect.closeTo(value, digits)

describe('rates', () => {
  // Garwood's limits (Biometrika 28 (1936) 437-442) by R 4.2.2; the second is the example of its help of poisson.test
  it.each([
    { events: 122, exposure: 200, value: 0.61, low: 0.5065681, high: 0.7283408, digits: 6 },
    { events: 137, exposure: 24.19893, value: 5.661407, low: 4.753125, high: 6.692709, digits: 5 },
    { events: 3, exposure: 4000, value: 7.5e-4, low: 1.54668e-4, high: 2.191818e-3, digits: 9 },
    { events: 0, exposure: 4000, value: 0, low: 0, high: 9.222199e-4, digits: 9 },
  ])('$events in $exposure', ({ events, exposure, value, low, high, digits }) => {
    expect(rateOf(events, exposure, 0.95)).toEqual({
      value: near(value, digits),
      low: near(low, digits - 1),
      high: near(high, digits - 1),
    })
  })

  it('none: at most 3.6889 with both sides, 2.9957 with one: -ln 0.025 and -ln 0.05', () => {
    expect(rateOf(0, 1, 0.95).high).toBeCloseTo(-Math.log(0.025), 9)
    // 5 % on either side
    expect(rateOf(0, 1, 0.9).high).toBeCloseTo(-Math.log(0.05), 9)
    expect(rateOf(0, 1, 0.9).low).toBe(0)
  })

  it('one: at least -ln 0.95 with one side', () => {
    expect(rateOf(1, 2, 0.9).low).toBeCloseTo(-Math.log(0.95) / 2, 9)
  })
})

describe('a chance', () => {
  it('682 of 925: Conover, Practical Nonparametric Statistics, p. 97 (from memory), by R 4.2.2', () => {
    expect(chanceOf(682, 925, 0.95)).toEqual({
      value: near(0.7372973),
      low: near(0.7076683, 6),
      high: near(0.7654066, 6),
    })
  })

  it('0 of 4000: at most 9.217947e-4, by R 4.2.2', () => {
    expect(chanceOf(0, 4000, 0.95)).toEqual({ value: 0, low: 0, high: near(9.217947e-4, 9) })
    expect(chanceOf(3, 4000, 0.95).low).toBeCloseTo(1.546947e-4, 8)
    expect(chanceOf(3, 4000, 0.95).high).toBeCloseTo(2.190239e-3, 8)
  })
})

describe('counts', () => {
  const counts = horseKicks.flatMap((years, kicks) => new Array<number>(years).fill(kicks))

  it('of horse kicks are those of a Poisson law: dispersion by R 4.2.2', () => {
    expect(dispersion(counts)).toEqual({
      mean: near(0.61),
      variance: near(0.6109548),
      statistic: near(199.31148, 5),
      degreesOfFreedom: 199,
      pValue: near(0.9608991),
    })
  })

  it('of horse kicks, classes 0, 1, 2, 3 or more, one parameter estimated: by R 4.2.2', () => {
    const chances = [0, 1, 2].map((kicks) => (Math.exp(-0.61) * 0.61 ** kicks) / [1, 1, 2][kicks]!)
    const expected = [...chances, 1 - chances.reduce((sum, each) => sum + each)].map((each) => 200 * each)
    const { pearson } = againstExpected([109, 65, 22, 4], expected, 1)!
    expect(pearson).toEqual({ statistic: near(0.3235236), degreesOfFreedom: 2, pValue: near(0.8506438) })
  })

  it('by hour of the day with unequal exposure: by R 4.2.2', () => {
    const { pearson, likelihoodRatio, leastExpected } = againstExposure(
      [12, 9, 15, 7, 22, 11, 8, 10],
      [1, 1, 0.75, 1, 0.5, 1, 0.75, 1],
    )!
    expect(pearson).toEqual({
      statistic: near(43.641844, 6),
      degreesOfFreedom: 7,
      pValue: near(2.50688e-7, 12),
    })
    expect(likelihoodRatio.statistic).toBeCloseTo(31.177921, 6)
    expect(likelihoodRatio.pValue).toBeCloseTo(5.76472e-5, 10)
    expect(leastExpected).toBeCloseTo((94 * 0.5) / 7, 12)
  })
})
