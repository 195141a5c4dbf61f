/** Rates, counts and tails worked by hand. */
import { describe, expect, it } from 'vitest'
import { againstExpected, againstExposure, dispersion } from '../../src/statistics/dispersion.js'
import { holm } from '../../src/statistics/family.js'
import { rateOf, rateRatio } from '../../src/statistics/rates.js'
import {
  binomialTest,
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

describe('the binomial test', () => {
  it.each([
    { k: 10, n: 10, p: 0.5, of: 2 / 1024 },
    // 1 + 4 + 4 + 1 of 16
    { k: 3, n: 4, p: 0.5, of: 10 / 16 },
    // of 8, 12, 6 and 1 of 27 only the last is as unlikely
    { k: 3, n: 3, p: 1 / 3, of: 1 / 27 },
    { k: 2, n: 3, p: 1 / 3, of: 7 / 27 },
    { k: 0, n: 3, p: 1 / 3, of: 15 / 27 },
    { k: 1, n: 3, p: 1 / 3, of: 1 },
    { k: 0, n: 0, p: 0.4, of: 1 },
  ])('$k of $n at $p', ({ k, n, p, of }) => expect(binomialTest(k, n, p)).toBeCloseTo(of, 12))

  it('is the sum over all counts as unlikely, for any count', () => {
    for (const [n, p] of [
      [7, 0.2],
      [30, 0.61],
      [51, 0.5],
    ] as const) {
      const chances = [1]
      for (let k = 1; k <= n; k++) chances.push((chances[k - 1]! * (n - k + 1) * p) / (k * (1 - p)))
      for (const [k, seen] of chances.entries()) {
        const asUnlikely = chances.filter((chance) => chance <= seen * (1 + 1e-7))
        const sum = asUnlikely.reduce((all, each) => all + each, 0) * (1 - p) ** n
        expect(binomialTest(k, n, p), `${k} of ${n}`).toBeCloseTo(sum, 11)
      }
    }
  })

  it('of a million trials has its digits: 500000 + 3 standard deviations', () => {
    // the normal law with continuity has 2 Q(2.999) = 0.002709
    expect(binomialTest(501_500, 1_000_000, 0.5)).toBeCloseTo(normalBeyond(2.999), 6)
  })
})

describe('rates by hand', () => {
  it('one event: the low limit solves 1 - e^-m = 0.025', () => {
    expect(rateOf(1, 4, 0.95).low).toBeCloseTo(-Math.log(0.975) / 4, 11)
  })

  it('one against one in as long: a chance of 1 of 2, from 1 - sqrt 0.975 to sqrt 0.975', () => {
    const { value, low, high, pValue } = rateRatio(
      { events: 1, exposure: 5 },
      { events: 1, exposure: 5 },
      0.95,
    )
    const top = Math.sqrt(0.975)
    expect([value, pValue]).toEqual([1, 1])
    expect(low).toBeCloseTo((1 - top) / top, 9)
    expect(high).toBeCloseTo(top / (1 - top), 6)
  })

  it('ten against none in as long: no high limit, p 2 of 1024', () => {
    const { high, pValue } = rateRatio({ events: 10, exposure: 5 }, { events: 0, exposure: 5 }, 0.95)
    expect(high).toBe(Infinity)
    expect(pValue).toBeCloseTo(2 / 1024, 12)
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
