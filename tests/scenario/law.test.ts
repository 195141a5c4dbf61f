/** Means and variances of laws, where the functions that they rest on are hard: values of R 4.2 (gamma, pnorm) and closed forms. */
import { describe, expect, it } from 'vitest'
import { meanOf, varianceOf } from '../../src/scenario/law.js'
import { nearly } from '../nearly.js'

describe('mean of a Weibull law: scale gamma(1 + 1 / shape)', () => {
  it.each([
    [0.05, 2.43290200817664e18],
    [0.5, 2],
    [0.7, 1.26582350605728],
    [1, 1],
    [1.5, 0.902745292950934],
    [2, Math.sqrt(Math.PI) / 2],
    [3.4, 0.898382006226318],
  ])('of shape %d', (shape, mean) => {
    nearly(meanOf({ law: 'weibull', shape, scale: 3 }), 3 * mean, 1e-14)
  })

  it('and its variance, of shape 2: scale^2 (1 - pi / 4)', () => {
    nearly(varianceOf({ law: 'weibull', shape: 2, scale: 3 }), 9 * (1 - Math.PI / 4), 1e-14)
  })
})

describe('normal law cut off', () => {
  it('at its mean: sqrt(2 / pi) deviations above it, with variance 1 - 2 / pi', () => {
    const law = { law: 'normal', mean: 0, sd: 1, atLeast: 0 } as const
    nearly(meanOf(law), Math.sqrt(2 / Math.PI), 1e-15)
    nearly(varianceOf(law), 1 - 2 / Math.PI, 1e-15)
  })

  it('5 deviations above its mean: dnorm(5) / pnorm(-5)', () => {
    nearly(meanOf({ law: 'normal', mean: 0, sd: 1, atLeast: 5 }), 5.18650396712584, 1e-13)
  })

  it('far below its mean is the normal law', () => {
    expect(meanOf({ law: 'normal', mean: 80, sd: 1, atLeast: 0 })).toBe(80)
  })
})
