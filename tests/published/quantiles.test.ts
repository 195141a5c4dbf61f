/** Quantiles and intervals against published tables. */
import { describe, expect, it } from 'vitest'
import { orderStatistics, quantileEstimate } from '../../src/statistics/estimate.js'
import { beta, binomialAtMost, chiSquare, standardNormal, studentT } from '../../src/statistics/quantile.js'

describe('Student t: NIST/SEMATECH e-Handbook, table 1.3.6.7.2, more digits from R', () => {
  it.each([
    [1, [6.313752, 12.7062, 63.65674]],
    [4, [2.131847, 2.776445, 4.604095]],
    [9, [1.833113, 2.262157, 3.249836]],
    [19, [1.729133, 2.093024, 2.860935]],
    [29, [1.699127, 2.04523, 2.756386]],
    [100, [1.660234, 1.983972, 2.625891]],
  ])('%i degrees of freedom', (df, values) => {
    for (const [index, p] of [0.95, 0.975, 0.995].entries())
      expect(studentT(p, df)).toBeCloseTo(values[index]!, 5)
  })
})

it('standard normal: NIST/SEMATECH e-Handbook, table 1.3.6.7.1, more digits from R', () => {
  for (const [p, z] of [
    [0.9, 1.281552],
    [0.95, 1.644854],
    [0.975, 1.959964],
    [0.995, 2.575829],
    [0.999, 3.090232],
  ])
    expect(standardNormal(p!)).toBeCloseTo(z!, 6)
})

it('chi-square: NIST/SEMATECH e-Handbook, table 1.3.6.7.4 (three decimals, from memory)', () => {
  for (const [p, df, value] of [
    [0.95, 1, 3.841],
    [0.95, 10, 18.307],
    [0.99, 5, 15.086],
    [0.975, 20, 34.17],
    [0.05, 10, 3.94],
    [0.025, 30, 16.791],
    [0.99, 100, 135.807],
  ])
    expect(chiSquare(p!, df!)).toBeCloseTo(value!, 3)
})

it('beta: closed forms of its quantiles, and R qbeta(0.95, 2, 3) (from memory)', () => {
  // F(x) = x^a for b = 1, 1 - (1 - x)^b for a = 1
  expect(beta(0.025, 10, 1)).toBeCloseTo(0.025 ** (1 / 10), 12)
  expect(beta(0.9, 1, 7)).toBeCloseTo(1 - 0.1 ** (1 / 7), 12)
  expect(beta(0.95, 2, 3)).toBeCloseTo(0.7513954, 7)
})

describe('quantiles by order statistics', () => {
  it.each([
    // coverage of (lower, upper): binomial sums, as the tables of Conover, Practical Nonparametric Statistics, have them
    [10, 0.5, 2, 9, 0.9785156],
    [15, 0.5, 4, 12, 0.9648438],
    [20, 0.5, 6, 15, 0.9586105],
    [25, 0.5, 8, 18, 0.9567147],
    [30, 0.5, 10, 21, 0.957226],
    [50, 0.5, 18, 33, 0.9671609],
    [100, 0.5, 40, 61, 0.9647998],
    [100, 0.9, 84, 96, 0.9556901],
    [200, 0.95, 184, 197, 0.9671522],
  ])('%i values, quantile %d: ranks %i and %i', (n, p, lower, upper, coverage) => {
    expect(orderStatistics(n, p, 0.95)).toEqual({ lower, upper })
    expect(binomialAtMost(upper - 1, n, p) - binomialAtMost(lower - 1, n, p)).toBeCloseTo(coverage, 6)
  })

  it('59 values are the fewest whose largest lies above the 95 % quantile with 95 % confidence (Wilks 1941)', () => {
    expect(1 - 0.95 ** 59).toBeGreaterThan(0.95)
    expect(binomialAtMost(58, 59, 0.95)).toBeCloseTo(0.9515055, 6)
    expect(binomialAtMost(57, 58, 0.95)).toBeCloseTo(0.9489531, 6)
  })

  it('101 values exp(0), exp(0.01) ... exp(1): intervals as computed in R', () => {
    const values = Array.from({ length: 101 }, (_, index) => Math.exp(index / 100))
    const low = quantileEstimate(values, 0.3, 0.95)
    expect(low.low).toBeCloseTo(1.22140275816017, 12)
    expect(low.high).toBeCloseTo(1.476980793882643, 12)
    const middle = quantileEstimate(values, 0.5, 0.9)
    expect(middle.low).toBeCloseTo(1.506817785112854, 12)
    expect(middle.high).toBeCloseTo(1.803988415397857, 12)
    expect(middle.mean).toBeCloseTo(Math.exp(0.5), 12)
  })

  it('too few values have no interval on that side', () => {
    const { low, high } = quantileEstimate([1, 2, 3, 4, 5, 6, 7, 8, 9, 10], 0.1, 0.95)
    expect(low).toBeNaN()
    expect(high).toBeGreaterThan(1)
  })
})
