/** Is the model the plant: the tests that say so, against values worked out elsewhere. */
import { describe, expect, it } from 'vitest'
import { Stream } from '../../src/engine/stream.js'
import { bootstrapMean } from '../../src/statistics/bootstrap-mean.js'
import { differenceOnSum, pByExchange } from '../../src/statistics/difference-on-sum.js'
import { equivalence } from '../../src/statistics/equivalence.js'
import { pairedDifference } from '../../src/statistics/paired.js'
import { binomialAtMost, standardNormal } from '../../src/statistics/quantile.js'
import { betweenRuns, fewestRuns, liesBetween, runsBelow } from '../../src/statistics/ranks.js'
import { regression } from '../../src/statistics/regression.js'
import { fAbove } from '../../src/statistics/tails.js'

// hours of sleep gained by ten people with either of two drugs: Student, Biometrika 6 (1908) 1-25, as R has it in `sleep`; figures recomputed with R
const first = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0, 2]
const second = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4]
const differences = second.map((value, index) => value - first[index]!)

function numbers(name: string): () => number {
  const stream = new Stream(name, 'test')
  stream.begin('validation', 1)
  return () => stream.next()
}

describe('two one-sided tests', () => {
  // against a base that is known, 100 each time, they are those of the differences themselves
  const known = first.map(() => 100)
  const gained = differences.map((each) => 100 + each)

  it('margin 3: the interval of 90 % lies within, and both tests say so', () => {
    const found = equivalence(known, gained, 0.03, 0.05)
    expect(100 * found.low!).toBeCloseTo(0.8669947, 7)
    expect(100 * found.high!).toBeCloseTo(2.2930053, 7)
    expect(found.t![0]).toBeCloseTo(11.775028, 6)
    expect(found.t![1]).toBeCloseTo(-3.650773, 6)
    expect(found.p).toBeCloseTo(0.0026556, 7)
    expect([found.verdict, found.degreesOfFreedom]).toEqual(['within', 9])
  })

  it('margin 2: not shown', () => {
    const found = equivalence(known, gained, 0.02, 0.05)
    expect(found.t![0]).toBeCloseTo(9.204061, 6)
    expect(found.t![1]).toBeCloseTo(-1.079806, 6)
    expect(found.p).toBeCloseTo(0.1541572, 7)
    expect(found.verdict).toBe('not-shown')
  })

  it('margin 0.8: the whole interval lies beyond it, above or below', () => {
    const lost = differences.map((each) => 100 - each)
    expect(equivalence(known, gained, 0.008, 0.05).verdict).toBe('outside')
    expect(equivalence(known, lost, 0.008, 0.05).verdict).toBe('outside')
  })

  it('a base that is not known: the ends are the ratios that a t test of other - ratio x base just refuses', () => {
    const base = [98, 105, 101, 93, 103]
    const other = [99, 104, 104, 97, 101]
    const { low, high } = equivalence(base, other, 0.03, 0.05)
    for (const end of [low!, high!]) {
      const scaled = base.map((value) => (1 + end) * value)
      const { mean, sd } = pairedDifference(scaled, other, 0.9)
      // t of 4 degrees of freedom, 95 %: 2.131847
      expect(Math.abs(mean / (sd / Math.sqrt(5)))).toBeCloseTo(2.1318468, 6)
    }
  })

  it('says nothing of one day, of none, of days that differ alike, and of a base that may be 0', () => {
    const nothing = { low: null, high: null, p: null, verdict: 'not-shown' }
    const cases: [number[], number[]][] = [
      [[], []],
      [[100], [101]],
      [
        [100, 90, 95],
        [101, 91, 96],
      ],
      [
        [0, 0, 0],
        [1, 2, 3],
      ],
      [
        [-5, 0, 6],
        [1, 2, 3],
      ],
    ]
    for (const [base, other] of cases) expect(equivalence(base, other, 0.03, 0.05)).toMatchObject(nothing)
  })
})

describe('difference of means', () => {
  it('by pairs: t -4.062128 with 9 degrees of freedom, from first to second the other way', () => {
    const found = pairedDifference(first, second, 0.95)
    expect(found.n).toBe(10)
    expect(found.mean / (found.sd / Math.sqrt(10))).toBeCloseTo(4.062128, 6)
    expect(found.pValue).toBeCloseTo(0.00283289, 8)
  })

  it('by the bootstrap, near to it, for the differences are few and not far from symmetric', () => {
    let state = 1
    const uniform = () => {
      state = (state * 48271) % 2147483647
      return state / 2147483647
    }
    const found = bootstrapMean(differences, { confidence: 0.95, draws: 4999, uniform })!
    // mean 1.58, its standard error over n in place of n - 1: 0.369; normal ends 0.857 and 2.3, moved by skewness and by chance by no more than half of that
    expect(Math.abs(found.low - 0.857)).toBeLessThan(0.185)
    expect(Math.abs(found.high - 2.3)).toBeLessThan(0.185)
    expect(bootstrapMean([3], { confidence: 0.95, draws: 99, uniform })).toBeNull()
    expect(bootstrapMean([3, 3], { confidence: 0.95, draws: 99, uniform })).toEqual({ low: 3, high: 3 })
  })
})

describe('difference on sum', () => {
  // the test of Kleijnen, Bettonvil & van Groenendaal (1998); figures by R
  it('has intercept and slope, and their F', () => {
    const found = differenceOnSum(first, second)!
    expect(found.intercept).toBeCloseTo(1.387069, 6)
    expect(found.slope).toBeCloseTo(0.0626399, 7)
    expect(found.f).toBeCloseTo(7.726237, 6)
    expect(found.degreesOfFreedom).toEqual([2, 8])
    expect(found.p).toBeCloseTo(0.0135396, 7)
  })

  it('has p without a law of the days, by hand: of four ways to exchange two of three days that differ', () => {
    // D = 2, 1, 0 and Q = 4, 5, 9: off the mean -2, -1, 3. With the signs of D alike it explains 3^2 / 3 + 5^2 / 14, else 1 / 3 + 3^2 / 14: two of four reach it
    const next = numbers('exchanged')
    const p = pByExchange([1, 2, 4.5], [3, 3, 4.5], { draws: 9999, uniform: next })
    expect(Math.abs(p - 1 / 2)).toBeLessThan(4 * Math.sqrt(1 / 4 / 9999))
  })

  it('refuses as many as it says of days that are alike and far from normal; the law of F many more', () => {
    const next = numbers('days that a breakdown spoils')
    // one day of ten loses up to half of itself
    const day = () => 100 + next() - (next() < 0.1 ? 50 * next() : 0)
    const records = 400
    let [byExchange, byLaw] = [0, 0]
    for (let record = 0; record < records; record++) {
      const [plant, model] = [Array.from({ length: 20 }, day), Array.from({ length: 20 }, day)]
      if (pByExchange(plant, model, { draws: 199, uniform: next }) <= 0.05) byExchange++
      if ((differenceOnSum(plant, model)?.p ?? 1) <= 0.05) byLaw++
    }
    const error = Math.sqrt(records * 0.05 * 0.95)
    expect(Math.abs(byExchange - 0.05 * records)).toBeLessThan(4 * error)
    expect(byLaw).toBeGreaterThan(0.05 * records + 4 * error)
  })

  it('finds a spread that is twice as wide', () => {
    const next = numbers('twice')
    const plant = Array.from({ length: 40 }, () => standardNormal(next()))
    const model = plant.map(() => 2 * standardNormal(next()))
    expect(pByExchange(plant, model, { draws: 999, uniform: next })).toBeLessThan(0.01)
  })

  it('is not the line of model on plant, which that paper shows to refuse good models', () => {
    const naive = regression(
      first.map((value) => [value]),
      second,
      0.95,
    )!
    expect(naive.intercept).toBeCloseTo(1.662538, 6)
    expect(naive.slopes[0]!.mean).toBeCloseTo(0.8899497, 7)
  })

  it('says nothing of two days, and of days without any spread', () => {
    expect(differenceOnSum([1, 2], [2, 1])).toBeNull()
    expect(differenceOnSum([1, 1, 1], [2, 2, 2])).toBeNull()
    expect(differenceOnSum([1, 2, 3], [1, 2, 3])).toBeNull()
  })

  it('F far out', () => {
    // of 2 and 8 degrees of freedom (1 + f / 4)^-4
    for (const f of [0, 0.5, 4.459, 7.726237, 100]) expect(fAbove(f, 2, 8)).toBeCloseTo((1 + f / 4) ** -4, 12)
    expect(fAbove(Infinity, 2, 8)).toBe(0)
  })
})

describe('ranks', () => {
  it.each([
    [39, 1, 39],
    [199, 5, 195],
    [999, 25, 975],
  ])('of %d runs those of 95 %% are %d and %d, exactly', (runs, low, high) => {
    expect(betweenRuns(runs, 0.95)).toEqual({ low, high, share: 0.95 })
  })

  it('hold what they promise: of all places of a day among 199 runs 190', () => {
    const between = betweenRuns(199, 0.95)
    const places = Array.from({ length: 200 }, (_, below) => below)
    expect(places.filter((below) => liesBetween(below, between))).toHaveLength(190)
    expect([4, 5, 194, 195].map((below) => liesBetween(below, between))).toEqual([false, true, true, false])
  })

  it('need 39 runs for 95 %, and hold more where they do not come out even', () => {
    expect(fewestRuns(0.95)).toBe(39)
    expect(betweenRuns(100, 0.95)).toEqual({ low: 2, high: 99, share: 97 / 101 })
  })

  it('are drawn among those that tie: all places alike', () => {
    expect(runsBelow(5, [3, 4, 6, 7], 0.99)).toBe(2)
    const drawn = [0.1, 0.3, 0.5, 0.7, 0.9].map((uniform) => runsBelow(5, [4, 5, 5, 5, 5, 6], uniform))
    expect(drawn).toEqual([1, 2, 3, 4, 5])
    expect(runsBelow(5, [], 0.9)).toBe(0)
  })
})

describe('how often', () => {
  // figures by R
  it.each([
    [16, 0.0159015],
    [17, 0.0754837],
    [18, 0.2641605],
  ])('so few of 20 days as %d are covered where 95 %% should be', (days, p) => {
    expect(binomialAtMost(days, 20, 0.95)).toBeCloseTo(p, 7)
  })

  // Schruben, Operations Research 28 (1980) 1090-1101 (from memory); figures by R
  it.each([
    [10, 14, 0.0897827],
    [9, 10, 0.0107422],
  ])('%d of %d sheets are told apart by guessing, or more', (right, sheets, p) => {
    expect(binomialAtMost(sheets - right, sheets, 0.5)).toBeCloseTo(p, 7)
  })
})
