/** Differences of two designs against published examples and by hand. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  pairedDifference,
  pairedRatioDifference,
  pairedShareDifference,
  shiftsToShow,
} from '../../src/statistics/paired.js'
import { signTest, studentTBeyond } from '../../src/statistics/quantile.js'

// Student, Biometrika 6 (1908) 1-25: hours of sleep gained with two drugs; data set `sleep` of R
const first = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0, 2]
const second = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4]

// two inventory policies; Law, Simulation Modeling and Analysis, ch. 10 (from memory, recomputed)
const small = [118.21, 120.22, 122.45, 122.68, 119.4]
const large = [126.97, 124.31, 126.68, 122.66, 127.23]

describe('pairs', () => {
  it('sleep: t.test(paired = TRUE) of R', () => {
    const difference = pairedDifference(second, first, 0.95)
    expect(difference.mean).toBeCloseTo(-1.58, 12)
    expect(difference.low).toBeCloseTo(-2.459885763, 8)
    expect(difference.high).toBeCloseTo(-0.7001142367, 8)
    expect(difference.pValue).toBeCloseTo(0.00283289, 8)
    expect((difference.mean / difference.sd) * Math.sqrt(10)).toBeCloseTo(-4.062127683, 8)
    expect(difference.n).toBe(10)
  })

  it('two policies, 90 %: 1.65 to 8.31', () => {
    const { mean, low, high } = pairedDifference(small, large, 0.9)
    expect(mean).toBeCloseTo(4.978, 9)
    expect(low).toBeCloseTo(1.649127, 6)
    expect(high).toBeCloseTo(8.306873, 6)
  })

  it('by hand: variances 1 and 4 of separate samples, 1 of the differences 1, 2, 3: the pairing shrank it fivefold', () => {
    const { mean, sd, varianceRatio } = pairedDifference([1, 2, 3], [2, 4, 6], 0.95)
    expect([mean, sd]).toEqual([2, 1])
    expect(varianceRatio).toBeCloseTo(5, 12)
  })

  it('by hand: of opposite luck the pairing doubles the variance', () => {
    expect(pairedDifference([1, 2, 3], [3, 2, 1], 0.95).varianceRatio).toBeCloseTo(0.5, 12)
  })

  it('leave out the shifts of which either says nothing, on both sides', () => {
    const holed = pairedDifference([Number.NaN, ...small, 1000], [1000, ...large, Number.NaN], 0.9)
    expect(holed).toEqual(pairedDifference(small, large, 0.9))
  })

  it('that differ alike are certain, and those that do not differ have no difference', () => {
    const certain = pairedDifference([1.1, 2.2, 3.3], [1.4, 2.5, 3.6], 0.95)
    expect(certain).toMatchObject({ sd: 0, pValue: 0, varianceRatio: Infinity })
    expect(certain.mean).toBeCloseTo(0.3, 12)
    expect(certain.high - certain.low).toBe(0)
    const none = { mean: 0, low: 0, high: 0, sd: 0, n: 3, pValue: 1 }
    expect(pairedDifference([1, 2, 3], [1, 2, 3], 0.95)).toEqual({ ...none, varianceRatio: Infinity })
    expect(pairedDifference([7, 7, 7], [7, 7, 7], 0.95)).toEqual({ ...none, varianceRatio: 1 })
  })

  it('of which the difference is rounding have none: 0.1 + 0.2 is 0.3', () => {
    expect(pairedDifference([0.3, 0.3, 1], [0.1 + 0.2, 0.1 + 0.2, 1], 0.95)).toMatchObject({
      mean: 0,
      pValue: 1,
    })
  })

  it('fewer than two say nothing of the spread', () => {
    expect(pairedDifference([1], [3], 0.95)).toEqual({
      mean: 2,
      low: Number.NaN,
      high: Number.NaN,
      sd: Number.NaN,
      n: 1,
      pValue: Number.NaN,
      varianceRatio: Number.NaN,
    })
    expect(pairedDifference([], [], 0.95)).toMatchObject({ mean: Number.NaN, n: 0, pValue: Number.NaN })
    expect(() => pairedDifference([1, 2], [1], 0.95)).toThrow(RangeError)
  })

  it('the p-value is below the risk exactly where the interval leaves 0 out, and turning the pair turns the sign', () => {
    const values = fc.array(fc.tuple(fc.integer({ min: 0, max: 9 }), fc.integer({ min: 0, max: 9 })), {
      minLength: 2,
      maxLength: 30,
    })
    fc.assert(
      fc.property(values, fc.constantFrom(0.8, 0.9, 0.95, 0.99), (pairs, confidence) => {
        const base = pairs.map(([a]) => a)
        const other = pairs.map(([, b]) => b)
        const { mean, low, high, pValue } = pairedDifference(base, other, confidence)
        expect(pValue < 1 - confidence).toBe(low > 0 || high < 0)
        const turned = pairedDifference(other, base, confidence)
        expect(turned.mean).toBeCloseTo(-mean, 12)
        expect(turned.low).toBeCloseTo(-high, 9)
        expect(turned.pValue).toBeCloseTo(pValue, 12)
      }),
      { seed: 5 },
    )
  })
})

describe('ratios, total over total', () => {
  // residuals -1, 1, -0.8, 0.8 about 44 / 20, mean to divide by 5
  const values = [10, 12, 8, 14]
  const overs = [5, 5, 4, 6]

  it('by hand: against an exact 3 the residuals of one alone: 0.8 and 3.182446 x sqrt(3.28 / 3 / 4) / 5', () => {
    const exact = overs.map((over) => 3 * over)
    const { mean, low, high, varianceRatio, n } = pairedRatioDifference(values, overs, exact, overs, 0.95)
    expect(mean).toBeCloseTo(0.8, 12)
    expect(high - mean).toBeCloseTo(3.182446 * 0.1045626, 6)
    expect(mean - low).toBeCloseTo(3.182446 * 0.1045626, 6)
    expect(varianceRatio).toBeCloseTo(1, 12)
    expect(n).toBe(4)
  })

  it('by hand: residuals in common fall out', () => {
    const more = values.map((value, shift) => value + overs[shift]!)
    const { mean, low, high, pValue } = pairedRatioDifference(values, overs, more, overs, 0.95)
    expect(mean).toBeCloseTo(1, 12)
    expect(high - low).toBeLessThan(1e-9)
    expect(pValue).toBeLessThan(1e-9)
  })

  it('by hand: unlike numbers to divide by; 40 / 10 against 12 / 4', () => {
    // residuals 2, -2 over a mean of 5 are 0.4, -0.4; 1, -1 over a mean of 2 are 0.5, -0.5: their differences 0.1, -0.1
    const { mean, sd, varianceRatio } = pairedRatioDifference([22, 18], [5, 5], [7, 5], [2, 2], 0.95)
    expect(mean).toBeCloseTo(-1, 12)
    expect(sd).toBeCloseTo(0.1 * Math.SQRT2, 12)
    expect(varianceRatio).toBeCloseTo((0.16 + 0.25) / 0.01, 8)
  })

  it('leave out a shift of which a number says nothing, and say nothing where there is nothing to divide by', () => {
    const holed = pairedRatioDifference(
      [...values, Number.NaN],
      [...overs, 9],
      [...values, 1],
      [...overs, 1],
      0.95,
    )
    expect(holed).toMatchObject({ mean: 0, low: 0, high: 0, n: 4, pValue: 1 })
    expect(pairedRatioDifference([1, 2], [0, 0], [1, 2], [1, 1], 0.95)).toMatchObject({
      mean: Number.NaN,
      n: 0,
      pValue: Number.NaN,
    })
  })
})

/** Shifts of two by two counts: reached by both, by the other alone, by the base alone, by neither. */
function shares(
  both: number,
  ups: number,
  downs: number,
  neither: number,
): [base: number[], other: number[]] {
  const repeat = (base: number, other: number, times: number) => [
    new Array<number>(times).fill(base),
    new Array<number>(times).fill(other),
  ]
  const parts = [repeat(1, 1, both), repeat(0, 1, ups), repeat(1, 0, downs), repeat(0, 0, neither)]
  return [parts.flatMap(([base]) => base!), parts.flatMap(([, other]) => other!)]
}

describe('shares of the same shifts', () => {
  // R. G. Newcombe, Statistics in Medicine 17 (1998) 2635-2650, method 10, and, first line, Altman et al.,
  // Statistics with Confidence (2000), ch. 6 (0.011 to 0.226); counts and figures from memory, recomputed by the formula
  it.each([
    { counts: [14, 5, 0, 22], mean: 0.122, low: 0.0115, high: 0.2265 },
    { counts: [20, 12, 2, 16], mean: 0.2, low: 0.0562, high: 0.3292 },
    { counts: [36, 12, 2, 0], mean: 0.2, low: 0.0569, high: 0.3404 },
    { counts: [53, 0, 0, 1], mean: 0, low: -0.0729, high: 0.0729 },
    { counts: [54, 0, 0, 0], mean: 0, low: -0.0664, high: 0.0664 },
    { counts: [53, 1, 0, 0], mean: 0.0185, low: -0.0496, high: 0.0977 },
    { counts: [30, 0, 0, 24], mean: 0, low: -0.0358, high: 0.0358 },
    { counts: [0, 29, 1, 0], mean: 0.9333, low: 0.6666, high: 0.9882 },
  ])('$counts: $low to $high', ({ counts, mean, low, high }) => {
    const [base, other] = shares(...(counts as [number, number, number, number]))
    const difference = pairedShareDifference(base, other, 0.95)
    expect(Math.abs(difference.mean - mean)).toBeLessThan(6e-5)
    expect(Math.abs(difference.low - low)).toBeLessThan(6e-5)
    expect(Math.abs(difference.high - high)).toBeLessThan(6e-5)
  })

  it('exact McNemar test by hand: 12 against 2 of 14 coins, 2 (1 + 14 + 91) / 2^14', () => {
    expect(pairedShareDifference(...shares(20, 12, 2, 16), 0.95).pValue).toBeCloseTo(212 / 16384, 10)
    expect(pairedShareDifference(...shares(9, 5, 0, 9), 0.95).pValue).toBeCloseTo(1 / 16, 10)
    expect(pairedShareDifference(...shares(9, 0, 0, 9), 0.95).pValue).toBe(1)
  })

  it('variance by hand: 12 and 2 of 50 differ: 14 / 50 - 0.2^2 against 0.64 x 0.36 + 0.44 x 0.56', () => {
    const { sd, varianceRatio } = pairedShareDifference(...shares(20, 12, 2, 16), 0.95)
    expect(sd ** 2).toBeCloseTo(0.24, 12)
    expect(varianceRatio).toBeCloseTo((0.64 * 0.36 + 0.44 * 0.56) / 0.24, 12)
  })

  it('leave out shifts that say nothing, and say nothing of none', () => {
    const [base, other] = shares(3, 2, 1, 4)
    expect(pairedShareDifference([...base, Number.NaN], [...other, 1], 0.95)).toEqual(
      pairedShareDifference(base, other, 0.95),
    )
    expect(pairedShareDifference([], [], 0.95)).toMatchObject({ mean: Number.NaN, n: 0, pValue: Number.NaN })
  })

  it('lie within -1 and 1 around their mean, and turn with the pair', () => {
    const count = fc.integer({ min: 0, max: 40 })
    fc.assert(
      fc.property(count, count, count, count, (both, ups, downs, neither) => {
        fc.pre(both + ups + downs + neither > 0)
        const { mean, low, high } = pairedShareDifference(...shares(both, ups, downs, neither), 0.95)
        expect(low).toBeGreaterThanOrEqual(-1)
        expect(high).toBeLessThanOrEqual(1)
        expect(low).toBeLessThan(mean + 1e-12)
        expect(high).toBeGreaterThan(mean - 1e-12)
        const turned = pairedShareDifference(...shares(both, downs, ups, neither), 0.95)
        expect(turned.low).toBeCloseTo(-high, 12)
        expect(turned.high).toBeCloseTo(-low, 12)
      }),
      { seed: 6 },
    )
  })
})

describe('shifts to show a difference', () => {
  it('one standard deviation, one-sided risk 5 %, power 90 %: 9 by the normal law, 11 by t', () => {
    // NIST/SEMATECH e-Handbook, sec. 7.2.2.2 (from memory): (1.645 + 1.282)^2 = 8.567
    expect(shiftsToShow(1, 1, 0.9, 0.9)).toBe(11)
  })

  it('as many as power.t.test of R for pairs (from memory), whose exact power gives 12.59 and 9.94', () => {
    expect(shiftsToShow(1, 1, 0.95, 0.9)).toBe(13)
    expect(shiftsToShow(2, 2, 0.95, 0.8)).toBe(10)
  })

  it('far from the few it is the formula of the normal law: (1.959964 + 0.841621)^2 x 100^2', () => {
    expect(Math.abs(shiftsToShow(100, 1, 0.95) - 7.84888e4)).toBeLessThan(4)
  })

  it('without spread two are enough, and nothing shows a difference of 0', () => {
    expect(shiftsToShow(0, 1, 0.95)).toBe(2)
    expect(shiftsToShow(1, 0, 0.95)).toBe(Infinity)
    expect(shiftsToShow(Number.NaN, 1, 0.95)).toBeNaN()
  })
})

describe('tails', () => {
  it("of Student's t: NIST/SEMATECH e-Handbook, table 1.3.6.7.2, more digits from R", () => {
    expect(studentTBeyond(2.262157, 9)).toBeCloseTo(0.05, 7)
    expect(studentTBeyond(-63.65674, 1)).toBeCloseTo(0.01, 8)
    expect(studentTBeyond(3.39, 100)).toBeCloseTo(0.001, 5)
    expect(studentTBeyond(0, 5)).toBe(1)
  })

  it('far out they keep their digits: NIST AUTO83B, t = -12.94627 of 136.87499 degrees of freedom', () => {
    // e-Handbook, sec. 1.3.5.3; the p-value as the documentation of Boost.Math prints it for this example
    expect(studentTBeyond(-12.94627, 136.87499) / 1.571e-25).toBeCloseTo(1, 3)
  })

  it("of the sign test: sums of Pascal's triangle", () => {
    expect(signTest(0, 0)).toBe(1)
    expect(signTest(3, 3)).toBe(1)
    expect(signTest(3, 2)).toBe(1)
    expect(signTest(8, 2)).toBeCloseTo((2 * (1 + 10 + 45)) / 1024, 10)
    expect(signTest(1, 39) / ((2 * 41) / 2 ** 40)).toBeCloseTo(1, 8)
  })
})
