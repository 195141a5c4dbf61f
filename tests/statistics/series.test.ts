/** A measure as shifts come, by hand. */
import { describe, expect, it } from 'vitest'
import { linearised } from '../../src/statistics/paired.js'
import { Series } from '../../src/statistics/series.js'

const series = (...shifts: [number, number][]) => {
  const made = new Series()
  for (const [value, over] of shifts) made.add(value, over)
  return made
}

describe('a series', () => {
  it('of a mean is its shifts', () => {
    const mean = series([3, 1], [5, 1], [10, 1])
    expect(mean.figure).toBe(6)
    expect(mean.linear()).toEqual([3, 5, 10])
  })

  it('of a ratio: 1 / 1 and 30 / 9 are 3.1, the residuals -2.1 and 2.1 over the mean of 5', () => {
    const ratio = series([1, 1], [30, 9])
    expect(ratio.figure).toBe(3.1)
    const [first, second] = ratio.linear() as [number, number]
    expect(first).toBeCloseTo(3.1 - 0.42, 12)
    expect(second).toBeCloseTo(3.1 + 0.42, 12)
  })

  it('a shift with nothing to divide by counts in the totals: 20, 20 and 20 over 4, 4 and 0', () => {
    const ratio = series([20, 4], [20, 4], [20, 0])
    expect(ratio.figure).toBe(7.5)
    // residuals -10, -10 and 20 over 8 / 3
    expect(ratio.linear()).toEqual([3.75, 3.75, 15])
  })

  it('is linearised as the comparison is', () => {
    const shifts: [number, number][] = [
      [163, 1.1],
      [150, 0.9],
      [170, 0.2],
    ]
    const wanted = linearised(shifts)
    for (const [shift, each] of series(...shifts)
      .linear()
      .entries())
      expect(each).toBeCloseTo(wanted[shift]!, 10)
  })

  it('nothing to divide by at all: no figure', () => {
    expect(series([5, 0], [6, 0]).figure).toBeNaN()
    expect(series([5, 0]).linear()).toEqual([Number.NaN])
  })

  it('differs where either number does', () => {
    const one = series([1, 1], [2, 2], [3, 3], [4, 4])
    expect(one.differing(one)).toBe(0)
    expect(one.differing(series([1, 1], [2, 2], [3, 9], [9, 4]))).toBe(2)
  })
})
