/** Quantiles and intervals against printed tables and worked examples. */
import { describe, expect, it } from 'vitest'
import { meanEstimate, ratioEstimate, shareEstimate, wilsonEstimate } from '../../src/statistics/estimate.js'
import { standardNormal, studentT } from '../../src/statistics/quantile.js'
import { simulate } from './run.js'

describe("Student's t", () => {
  // NIST/SEMATECH e-Handbook of Statistical Methods, sec. 1.3.6.7.2, prints three decimals; more digits
  // recomputed
  const columns = [0.9, 0.95, 0.975, 0.99, 0.995, 0.999]
  it.each([
    { df: 1, values: [3.077684, 6.313752, 12.7062, 31.82052, 63.65674, 318.3088] },
    { df: 2, values: [1.885618, 2.919986, 4.302653, 6.964557, 9.924843, 22.32712] },
    { df: 5, values: [1.475884, 2.015048, 2.570582, 3.36493, 4.032143, 5.89343] },
    { df: 9, values: [1.383029, 1.833113, 2.262157, 2.821438, 3.249836, 4.296806] },
    { df: 10, values: [1.372184, 1.812461, 2.228139, 2.763769, 3.169273, 4.1437] },
    { df: 30, values: [1.310415, 1.697261, 2.042272, 2.457262, 2.749996, 3.385185] },
    { df: 100, values: [1.290075, 1.660234, 1.983972, 2.364217, 2.625891, 3.173739] },
  ])('$df degrees of freedom', ({ df, values }) => {
    for (const [index, p] of columns.entries()) {
      expect(Math.abs(studentT(p, df) / values[index]! - 1), `p ${p}`).toBeLessThan(5e-7)
      expect(Math.abs(studentT(1 - p, df) / -values[index]! - 1), `p ${1 - p}`).toBeLessThan(5e-7)
    }
  })

  it('with many degrees of freedom it is the normal law', () => {
    // last line of the same table
    const values = [1.281552, 1.644854, 1.959964, 2.326348, 2.575829, 3.090232]
    for (const [index, p] of columns.entries()) {
      expect(standardNormal(p)).toBeCloseTo(values[index]!, 6)
      expect(studentT(p, 1e7)).toBeCloseTo(values[index]!, 5)
    }
  })
})

describe('mean over shifts', () => {
  // ten replications of a bank's day; Law, Simulation Modeling and Analysis, ch. 9 (figures from memory,
  // recomputed)
  const delays = [1.53, 1.66, 1.24, 2.34, 2.0, 1.69, 2.69, 2.86, 1.7, 2.6]
  const shares = [0.917, 0.916, 0.952, 0.822, 0.84, 0.866, 0.783, 0.782, 0.873, 0.779]

  it('delays: 2.03 and 0.32 each way, 90 %', () => {
    const { mean, low, high, sd, n } = meanEstimate(delays, 0.9)
    expect(mean).toBeCloseTo(2.031, 12)
    expect(sd ** 2).toBeCloseTo(0.3090989, 7)
    expect(low).toBeCloseTo(1.708717, 6)
    expect(high).toBeCloseTo(2.353283, 6)
    expect(n).toBe(10)
  })

  it('shares: 0.853 and 0.0361 each way, 90 %', () => {
    const { mean, low, high, sd } = meanEstimate(shares, 0.9)
    expect(mean).toBeCloseTo(0.853, 12)
    expect(sd ** 2).toBeCloseTo(0.003886889, 9)
    expect((high - low) / 2).toBeCloseTo(0.03614018, 8)
  })

  it('paired differences: 1.65 to 8.31, 90 %', () => {
    // two inventory policies, five pairs; Law, ch. 10 (from memory, recomputed)
    const first = [126.97, 124.31, 126.68, 122.66, 127.23]
    const second = [118.21, 120.22, 122.45, 122.68, 119.4]
    const differences = first.map((value, index) => value - second[index]!)
    const { mean, low, high } = meanEstimate(differences, 0.9)
    expect(mean).toBeCloseTo(4.978, 9)
    expect(low).toBeCloseTo(1.649127, 6)
    expect(high).toBeCloseTo(8.306873, 6)
  })

  it('sleep: the interval of the paired t test', () => {
    // Student, Biometrika 6 (1908) 1-25; data set `sleep` and `t.test` of R
    const first = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0, 2]
    const second = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4]
    const { low, high } = meanEstimate(
      first.map((value, index) => value - second[index]!),
      0.95,
    )
    expect(low).toBeCloseTo(-2.459885763, 8)
    expect(high).toBeCloseTo(-0.7001142367, 8)
  })

  it('does not depend on the order of the shifts, and skips those that say nothing', () => {
    const turned = meanEstimate([...delays].reverse().concat(Number.NaN), 0.9)
    expect(turned.n).toBe(10)
    expect(turned.high).toBeCloseTo(2.353283, 6)
  })

  it('is the interval that `run` reports: mean and t x sd / sqrt(n)', async () => {
    const result = await simulate({
      arrivals: '{street: {time-between: {exponential: {mean: 4 s}}, when-full: queue}}',
      line: '{desk: {type: station, time: {exponential: {mean: 3 s}}, waiting-room: unlimited}}',
      length: '1 h',
      shifts: 10,
      confidence: '90 %',
    })
    const { mean, low, high, sd, n } = result.measures.output!
    const outputs = result.outputs
    const average = outputs.reduce((sum, value) => sum + value, 0) / 10
    expect(n).toBe(10)
    expect(mean).toBeCloseTo(average, 9)
    expect(sd).toBeCloseTo(Math.sqrt(outputs.reduce((sum, value) => sum + (value - average) ** 2, 0) / 9), 9)
    // t of 9 degrees of freedom at 0.95, as printed by NIST
    expect(high! - mean!).toBeCloseTo((1.833113 * sd!) / Math.sqrt(10), 5)
    expect(mean! - low!).toBeCloseTo(high! - mean!, 9)
  })
})

describe('share of shifts', () => {
  // E. B. Wilson, J. Am. Stat. Assoc. 22 (1927) 209-212; figures of method 3 in Newcombe, Statistics in
  // Medicine 17 (1998) 857-872, table I (from memory, recomputed by the formula)
  it.each([
    { of: 263, held: 81, low: 0.2553, high: 0.3662 },
    { of: 148, held: 15, low: 0.0624, high: 0.1605 },
    { of: 20, held: 0, low: 0, high: 0.1611 },
    { of: 29, held: 1, low: 0.0061, high: 0.1718 },
  ])('$held of $of: $low to $high', ({ of, held, low, high }) => {
    const shifts = Array.from({ length: of }, (_, index) => (index < held ? 1 : 0))
    const estimate = wilsonEstimate(shifts, 0.95)
    expect(estimate.mean).toBeCloseTo(held / of, 12)
    expect(estimate.low).toBeCloseTo(low, 4)
    expect(estimate.high).toBeCloseTo(high, 4)
  })

  it('all of 20 is the mirror image of none of 20', () => {
    const { low, high } = wilsonEstimate(new Array(20).fill(1), 0.95)
    expect(low).toBeCloseTo(1 - 0.1611, 4)
    expect(high).toBe(1)
  })

  // where fewer than five are on one side, the limits of Clopper and Pearson: method 5 of the same table (from memory)
  it.each([
    { of: 20, held: 0, low: 0, high: 0.1684 },
    { of: 29, held: 1, low: 0.0009, high: 0.1776 },
  ])('$held of $of, as a study has it: $low to $high', ({ of, held, low, high }) => {
    const estimate = shareEstimate(
      Array.from({ length: of }, (_, index) => (index < held ? 1 : 0)),
      0.95,
    )
    expect(estimate.low).toBeCloseTo(low, 4)
    expect(estimate.high).toBeCloseTo(high, 4)
  })
})

describe('total over total', () => {
  it('by hand: 44 over 20, residuals -1, 1, -0.8, 0.8', () => {
    // Cochran, Sampling Techniques (1977), ch. 6 (from memory): variance of the residuals 3.28 / 3, mean of
    // the denominators 5, so the standard error is sqrt(1.0933333 / 4) / 5 = 0.1045626; t of 3 degrees of
    // freedom 3.182446
    const { mean, low, high, n } = ratioEstimate([10, 12, 8, 14], [5, 5, 4, 6], 0.95)
    expect(mean).toBeCloseTo(2.2, 12)
    expect(high - mean).toBeCloseTo(3.182446 * 0.1045626, 6)
    expect(mean - low).toBeCloseTo(3.182446 * 0.1045626, 6)
    expect(n).toBe(4)
  })

  it('is not the mean of ratios', () => {
    // 1/1 and 1/3: the mean of ratios is 0.667
    expect(ratioEstimate([1, 1], [1, 3], 0.95).mean).toBeCloseTo(0.5, 12)
  })
})
