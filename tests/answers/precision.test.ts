/** Sequential precision: Law's worked figures, and what the rule looks at. */
import { describe, expect, it } from 'vitest'
import { relativeError } from '../../src/answers/precision.js'
import { studentT } from '../../src/statistics/quantile.js'

/** Shifts from 10 up until a variance of `variance` about `mean` is precise enough, the variance taken as known. */
function needed(mean: number, variance: number, share: number, confidence: number): number {
  for (let n = 10; ; n++) {
    const half = studentT((1 + confidence) / 2, n - 1) * Math.sqrt(variance / n)
    if (relativeError({ mean, low: mean - half, high: mean + half }) <= share) return n
  }
}

describe('relative precision', () => {
  it('takes as many replications as the worked example', () => {
    // Law, Simulation Modeling and Analysis, sec. 9.4.1 (from memory): ten bank days, mean 2.03, S^2 = 0.31, 90 %
    expect(needed(2.031, 0.31, 0.1, 0.9)).toBe(27)
    expect(needed(2.031, 0.31, 0.05, 0.9)).toBe(92)
  })

  it('by hand', () => {
    // half-width 1 about 11: 1/11 is 10 % of the 10 that the true figure may be
    expect(relativeError({ mean: 11, low: 10, high: 12 })).toBeCloseTo(0.1, 12)
    expect(relativeError({ mean: -11, low: -12, high: -10 })).toBeCloseTo(0.1, 12)
    // the longer side counts: 2 of 12, of the 10 that the true figure may be
    expect(relativeError({ mean: 12, low: 10, high: 13 })).toBeCloseTo(0.2, 12)
    expect(relativeError({ mean: 1, low: -1, high: 3 })).toBe(Infinity)
    expect(relativeError({ mean: 1, low: Number.NaN, high: Number.NaN })).toBeNaN()
  })

  it('what has not varied so far is not known for that, unless the scenario fixes it', () => {
    expect(relativeError({ mean: 5, low: 5, high: 5 })).toBeNaN()
    expect(relativeError({ mean: 5, low: 5, high: 5, isFixed: true })).toBe(0)
    expect(relativeError({ mean: 0, low: 0, high: 0.4 })).toBe(Infinity)
  })
})
