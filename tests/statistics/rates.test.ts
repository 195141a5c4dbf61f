/** Rates, counts and tails worked by hand. */
import { describe, expect, it } from 'vitest'
import { againstExpected, againstExposure, dispersion } from '../../src/statistics/dispersion.js'
import { holm } from '../../src/statistics/family.js'
import { rateOf } from '../../src/statistics/rates.js'
import {
  bothSides,
  chiSquareAbove,
  chiSquareAtMost,
  normalAtMost,
  normalBeyond,
} from '../../src/statistics/tails.js'

const near = (value: number, digits = 10) => expect.closeTo(value, digits)

describe('tails', () => {
  it('chi-square with two degrees of freedom is exponential with mean 2, far out too', () => {
    for (const x of [0.1, 3, 100, 1000]) expect(chiSquareAbove(x, 2) / Math.exp(-x / 2)).toBeCloseTo(1, 11)
    expect(chiSquareAtMost(3, 2)).toBeCloseTo(1 - Math.exp(-1.5), 13)
    expect([chiSquareAbove(0, 3), chiSquareAtMost(0, 3)]).toEqual([1, 0])
    expect([chiSquareAbove(Infinity, 3), chiSquareAtMost(Infinity, 3)]).toEqual([0, 1])
  })

  it('normal: 1.959964 has 5 % beyond, 2.5 % below its negative; 10 has 1.52e-23 beyond', () => {
    expect(normalBeyond(1.959963985)).toBeCloseTo(0.05, 9)
    expect(normalAtMost(-1.959963985)).toBeCloseTo(0.025, 9)
    expect(normalAtMost(1.959963985)).toBeCloseTo(0.975, 9)
    // Abramowitz & Stegun, table 26.2: Q(10) = 7.61985e-24
    expect(normalBeyond(10) / (2 * 7.61985e-24)).toBeCloseTo(1, 5)
  })

  it('both sides are twice the smaller, and no more than all', () => {
    expect([bothSides(0.02, 0.99), bothSides(0.99, 0.02), bothSides(0.6, 0.7)]).toEqual([0.04, 0.04, 1])
  })
})

describe('rates by hand', () => {
  it('one event: the low limit solves 1 - e^-m = 0.025', () => {
    expect(rateOf(1, 4, 0.95).low).toBeCloseTo(-Math.log(0.975) / 4, 11)
  })
})

describe('counts by hand', () => {
  it('1 and 3: squares 2 over a mean of 2 are 1 with one degree of freedom', () => {
    expect(dispersion([1, 3])).toEqual({
      mean: 2,
      variance: 2,
      statistic: 1,
      degreesOfFreedom: 1,
      pValue: near(2 * normalBeyond(1)),
    })
  })

  it('0, 0, 6: 24 over 2 are 12 with two: p 2 e^-6', () => {
    expect(dispersion([0, 0, 6])!.pValue).toBeCloseTo(2 * Math.exp(-6), 12)
  })

  it('too even counts are told too: 5 of 10, each 7', () => {
    expect(dispersion([7, 7, 7, 7, 7])).toMatchObject({ statistic: 0, pValue: 0 })
  })

  it('of one span, and of none, nothing is said', () => {
    expect([dispersion([4]), dispersion([]), dispersion([0, 0])]).toEqual([null, null, null])
  })

  it('2 and 4 in as long: 1/3 + 1/3', () => {
    const { pearson, likelihoodRatio, leastExpected } = againstExposure([2, 4], [5, 5])!
    expect(pearson).toEqual({
      statistic: near(2 / 3),
      degreesOfFreedom: 1,
      pValue: near(normalBeyond(Math.sqrt(2 / 3))),
    })
    expect(likelihoodRatio.statistic).toBeCloseTo(4 * Math.log(2 / 3) + 8 * Math.log(4 / 3), 12)
    expect(leastExpected).toBe(3)
  })

  it('hours without exposure count for nothing', () => {
    expect(againstExposure([2, 0, 4], [5, 0, 5])).toEqual(againstExposure([2, 4], [5, 5]))
    expect(againstExposure([0, 0], [5, 5])).toBeNull()
    expect(againstExposure([3, 0], [5, 0])).toBeNull()
  })

  it('as expected: nothing, and p 1', () => {
    const { pearson, likelihoodRatio } = againstExpected([1, 2, 3], [1, 2, 3], 0)!
    expect([pearson.statistic, likelihoodRatio.statistic, pearson.pValue]).toEqual([0, 0, 1])
    expect(againstExpected([1, 2], [1, 2], 1)).toBeNull()
  })
})

describe('Holm', () => {
  it('0.01, 0.04, 0.03, 0.005: times 3, 1, 2, 4, and never below one before; as p.adjust of R', () => {
    expect(holm([0.01, 0.04, 0.03, 0.005])).toEqual([near(0.03), near(0.06), near(0.06), near(0.02)])
  })

  it('what could not be tested is no member', () => {
    expect(holm([0.02, Number.NaN, 0.5])).toEqual([near(0.04), Number.NaN, near(0.5)])
  })

  it('none, and never above 1', () => {
    expect(holm([])).toEqual([])
    expect(holm([0.9, 0.8])).toEqual([1, 1])
  })
})
