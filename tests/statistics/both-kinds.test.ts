/** Both kinds of what is not known: the layout of draws and shifts by hand, published check values, shares of inputs. */
import { describe, expect, it } from 'vitest'
import { Stream } from '../../src/engine/stream.js'
import { gammaAt } from '../../src/inputs/posterior.js'
import { degreesOfSum, ofInputs } from '../../src/statistics/both-kinds.js'
import { contributionsOf, scoresOf } from '../../src/statistics/contributions.js'
import type { Estimate } from '../../src/statistics/estimate.js'
import { layoutOf, layoutOfMeans, rowOf } from '../../src/statistics/layout.js'
import { beta, standardNormal, studentT } from '../../src/statistics/quantile.js'

const estimate = (mean: number, half: number, n = 200): Estimate => ({
  ...{ mean, low: mean - half, high: mean + half, sd: Number.NaN, n },
})

function numbers(name: string): () => number {
  const stream = new Stream(name, 'test')
  stream.begin('both kinds', 1)
  return () => stream.next()
}

describe('the layout of draws and shifts, by hand', () => {
  it('three draws of two shifts', () => {
    // means 2, 4, 9 of draws and 4, 6 of shifts, all 5; what is left: [0, 0], [-1, 1], [1, -1]
    const layout = layoutOf([
      [1, 3],
      [2, 6],
      [9, 9],
    ])
    expect(layout.means).toEqual([2, 4, 9])
    expect(layout.ofDraws).toBeCloseTo(26, 12)
    expect(layout.ofRest).toBeCloseTo(2, 12)
    expect(layout.inputs).toBeCloseTo(12, 12)
  })

  it('shifts that differ alike in all draws are no luck of the draws', () => {
    const layout = layoutOf([
      [1, 101, 7],
      [2, 102, 8],
      [4, 104, 10],
    ])
    expect(layout.ofRest).toBeCloseTo(0, 10)
    expect(layout.inputs).toBeCloseTo(7 / 3, 10)
  })

  it('draws that differ by no more than chance add nothing', () => {
    const layout = layoutOf([
      [1, 3],
      [3, 1],
    ])
    expect(layout.ofDraws).toBe(0)
    expect(layout.ofRest).toBeCloseTo(4, 12)
    expect(layout.inputs).toBe(0)
  })
})

describe('a draw as a row', () => {
  it('of a ratio has the ratio as its mean, and what is linear in each shift', () => {
    // 30 / 10 = 3; 4 - 3 x 2 = -2 and 26 - 3 x 8 = 2, over the mean 5
    const row = rowOf({ kind: 'ratio', values: [4, 26], overs: [2, 8] })!
    expect(row[0]).toBeCloseTo(2.6, 12)
    expect(row[1]).toBeCloseTo(3.4, 12)
  })

  it('of a ratio over nothing says nothing', () => {
    expect(rowOf({ kind: 'ratio', values: [0, 0], overs: [0, 0] })).toBeNull()
    expect(rowOf({ kind: 'mean', values: [Number.NaN, Number.NaN], overs: null })).toBeNull()
  })

  it('of a mean with a silent shift is the mean of the others', () => {
    const row = rowOf({ kind: 'mean', values: [2, Number.NaN, 6], overs: null })!
    expect(row.map((value) => Number(value.toFixed(9)))).toEqual([1, 4, 7])
  })

  it('of a share of shifts is its logit, half a shift more on each side', () => {
    const row = rowOf({ kind: 'share', values: [1, 1, 1, 0], overs: null })!
    const all = row.reduce((sum, value) => sum + value, 0) / 4
    expect(all).toBeCloseTo(Math.log(3.5 / 1.5), 12)
    expect(rowOf({ kind: 'share', values: [0, 0], overs: null })![0]).toBeCloseTo(Math.log(0.5 / 2.5), 12)
  })

  it('of a mean time of events is the rate of these', () => {
    const row = rowOf({ kind: 'ratio', values: [30, 50], overs: [2, 0], isTimeOfEvents: true })!
    expect((row[0]! + row[1]!) / 2).toBeCloseTo(2 / 80, 12)
  })
})

describe('the whole interval', () => {
  it('by hand: t sqrt(V of the inputs + V of the simulation), degrees of Welch and Satterthwaite', () => {
    const layout = layoutOf([
      [1, 3],
      [2, 6],
      [9, 9],
    ])
    const luck = 0.5
    const figure = estimate(5, studentT(0.975, 99) * luck, 100)
    const degrees = 12.25 ** 2 / (13 ** 2 / 2 + 1 ** 2 / 2 + 0.25 ** 2 / 99)
    const t = studentT(0.975, degrees)
    const half = t * Math.sqrt(12.25)
    // third moment of 2, 4, 9 about 5: (-27 - 1 + 64) x 3 / (2 x 1) = 54; t^2 x 54 / 12.25^1.5 / 6 = 5.1 is more than half of t
    expect((t * t * 54) / 12.25 ** 1.5 / 6).toBeGreaterThan(t / 2)
    const whole = ofInputs(figure, layout, 0.95)
    expect(whole.low).toBeCloseTo(5 - half / 2, 9)
    expect(whole.high).toBeCloseTo(5 + (3 * half) / 2, 9)
    expect(whole.share).toBeCloseTo(12 / 12.25, 12)
  })

  it('moves towards the longer tail of the draws: by t^2 skewness / 6 standard deviations, of the whole', () => {
    // 0, 0, 0, 0, 5 about 1: four times -1, and 64: 60 x 5 / (4 x 3) = 25; variance 20 / 4 = 5, of the whole 5 + 1
    const layout = layoutOfMeans([0, 0, 0, 0, 5], 20)
    const figure = estimate(3, studentT(0.9, 99), 100)
    const t = studentT(
      0.9,
      degreesOfSum(
        [
          { square: 5, degreesOfFreedom: 4 },
          { square: 1, degreesOfFreedom: 99 },
        ],
        6,
      ),
    )
    const shift = (t * t * 25) / 6 ** 1.5 / 6
    expect(shift).toBeLessThan(t / 2)
    const whole = ofInputs(figure, layout, 0.8)
    expect(whole.low).toBeCloseTo(3 + (shift - t) * Math.sqrt(6), 9)
    expect(whole.high).toBeCloseTo(3 + (shift + t) * Math.sqrt(6), 9)
    // the other way round it is the same mirrored, and nothing moves where nothing is skewed
    const mirrored = ofInputs(figure, layoutOfMeans([0, 0, 0, 0, -5], 20), 0.8)
    expect(mirrored.low - 3).toBeCloseTo(3 - whole.high, 9)
    const even = ofInputs(figure, layoutOfMeans([-2, -1, 0, 1, 2], 20), 0.8)
    expect(even.high - 3).toBeCloseTo(3 - even.low, 9)
  })

  it('is that of the simulation where the inputs add nothing', () => {
    const whole = ofInputs(estimate(5, 1), layoutOfMeans([3, 3, 3], 20), 0.95)
    expect(whole).toMatchObject({ low: 4, high: 6, share: 0, alone: { low: 5, high: 5 } })
  })

  it('keeps an uneven interval uneven, and no end beyond what can be', () => {
    const layout = layoutOfMeans([0, 1, 2, 3, 4], 20)
    const whole = ofInputs({ ...estimate(2, 1), high: 6 }, layout, 0.95, { ends: [0, 8] })
    expect(whole.low).toBe(0)
    expect(whole.high - 2).toBeGreaterThan(4)
    expect(whole.high).toBeLessThanOrEqual(8)
  })

  it('of a share stays within 0 and 1, also where all shifts hold', () => {
    const layout = layoutOf([
      [0, 1, 2, 2],
      [2, 3, 2, 3],
      [4, 3, 4, 5],
    ])
    const all: Estimate = { mean: 1, low: 0.982, high: 1, sd: 0, n: 200 }
    const whole = ofInputs(all, layout, 0.95, { scale: 'logit' })
    expect(whole.high).toBe(1)
    expect(whole.low).toBeGreaterThan(0)
    expect(whole.low).toBeLessThan(0.982)
  })

  it('of a mean time of events is that of their rate turned over', () => {
    const rate = layoutOfMeans([0.009, 0.01, 0.011], 20)
    const time = ofInputs({ ...estimate(100, 0), low: 95, high: 106 }, rate, 0.95, { scale: 'one over it' })
    const turned = ofInputs({ ...estimate(0.01, 0), low: 1 / 106, high: 1 / 95 }, rate, 0.95)
    expect(time.low).toBeCloseTo(1 / turned.high, 9)
    expect(time.high).toBeCloseTo(1 / turned.low, 9)
  })

  it('degrees of freedom: of one part its own, of two alike those of both', () => {
    expect(degreesOfSum([{ square: 3, degreesOfFreedom: 7 }], 3)).toBeCloseTo(7, 12)
    const part = { square: 2, degreesOfFreedom: 10 }
    expect(degreesOfSum([part, part], 4)).toBeCloseTo(20, 12)
  })
})

describe('published values of what few logged stops leave open', () => {
  /** Value of the F law with 2r and 2r degrees of freedom below which `p` lies, by the beta law: F = x / (1 - x). */
  const fisher = (p: number, r: number): number => {
    const x = beta(p, r, r)
    return x / (1 - x)
  }

  /** Availability of a machine of 10 h and half an hour, r run times and r repairs observed, both exponential: exact 95 % by F(2r, 2r). */
  it.each([
    [5, 0.8432844, 0.9867261],
    [10, 0.8902942, 0.9801152],
    [20, 0.9142775, 0.9740286],
    [50, 0.9309578, 0.9673896],
  ])('of %i stops: the exact interval of the availability, F law of the ratio of means', (r, low, high) => {
    const ratio = 0.5 / 10
    expect(1 / (1 + ratio * fisher(0.975, r))).toBeCloseTo(low, 6)
    expect(1 / (1 + ratio / fisher(0.975, r))).toBeCloseTo(high, 6)
  })

  /** The layout of many draws finds the variance of F(2r, 2r): Johnson, Kotz & Balakrishnan, Continuous Univariate Distributions 2 (1995), ch. 27 (from memory). */
  it.each([
    [10, 0.2932099],
    [20, 0.1200369],
    [50, 0.0429509],
    [100, 0.0207184],
  ])('of %i of each: variance of the ratio of two means, luck of the shifts taken off', (r, variance) => {
    const next = numbers(`ratio ${r}`)
    const draws = 20_000
    const rows = Array.from({ length: draws }, () => {
      const ratio = gammaAt(next(), r) / gammaAt(next(), r)
      // three shifts of which each adds luck of standard deviation 0.5
      return [1, 2, 3].map((shift) => ratio + shift + standardNormal(next()) / 2)
    })
    const { inputs, ofRest } = layoutOf(rows)
    // four standard errors: of a variance of so lopsided a law (kurtosis below 15 from r = 10 on), sqrt(14 / draws) of itself
    const error = Math.sqrt(14 / draws) * (variance + 1 / 12)
    expect(Math.abs(inputs - variance)).toBeLessThan(4 * error)
    expect(Math.abs(ofRest - 1 / 4)).toBeLessThan((4 * Math.SQRT2) / 4 / Math.sqrt(2 * draws))
  })
})

describe('what each input adds', () => {
  it('scores of ranks: by hand, equal values alike', () => {
    const [first, second, third] = scoresOf([5, 1, 5])
    expect(first).toBe(third)
    expect(second).toBeCloseTo(standardNormal(0.625 / 3.25), 12)
    expect(first).toBeCloseTo(standardNormal(2.125 / 3.25), 12)
  })

  it('of 3 x and 4 y, both standard normal: 9 and 16 of 25; of one that does nothing: none', () => {
    const next = numbers('shares')
    const n = 4000
    const inputs = Array.from({ length: n }, () => [0, 1, 2].map(() => standardNormal(next())))
    const figures = inputs.map(([x, y]) => 3 * x! + 4 * y!)
    const { shares, explained } = contributionsOf(inputs, figures)!
    // standard error of a share of x: 2 b sqrt((1 - share) x share / n) at most, below 0.016
    expect(Math.abs(shares[0]! - 9 / 25)).toBeLessThan(0.05)
    expect(Math.abs(shares[1]! - 16 / 25)).toBeLessThan(0.05)
    expect(shares[2]!).toBeLessThan(0.005)
    expect(explained).toBeGreaterThan(0.99)
  })

  it('inputs as lopsided as lognormal ones are explained by their scores', () => {
    const next = numbers('lopsided')
    const inputs = Array.from({ length: 4000 }, () => [
      Math.exp(standardNormal(next())),
      Math.exp(9 * next()),
    ])
    const figures = inputs.map(([x]) => Math.log(x!))
    const { shares } = contributionsOf(inputs, figures)!
    expect(shares[0]!).toBeGreaterThan(0.99)
    expect(shares[1]!).toBeLessThan(0.005)
  })

  it('of nothing but chance, 60 draws and 10 inputs: on average nothing is explained', () => {
    const next = numbers('chance')
    const studies = 200
    let sum = 0
    for (let study = 0; study < studies; study++) {
      const inputs = Array.from({ length: 60 }, () => Array.from({ length: 10 }, () => next()))
      sum += contributionsOf(
        inputs,
        inputs.map(() => next()),
      )!.explained
    }
    // unclipped the mean is 0 with a spread of 0.09; what is clipped at 0 leaves 0.4 of that
    expect(sum / studies).toBeLessThan(0.06)
  })

  it('an input that is the same in all draws has none; too few draws say nothing', () => {
    const inputs = Array.from({ length: 12 }, (_, draw) => [7, draw])
    expect(
      contributionsOf(
        inputs,
        inputs.map(([, y]) => 2 * y!),
      )!.shares[0],
    ).toBe(0)
    expect(contributionsOf(inputs.slice(0, 3), [1, 2, 3])).toBeNull()
  })
})
