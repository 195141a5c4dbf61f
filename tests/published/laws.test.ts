/** The laws of times and factors against printed quantiles and the moments of handbooks. */
import { describe, expect, it } from 'vitest'
import type { Law } from '../../src/engine/variates.js'
import { inverse } from '../engine/inverse.js'

/**
 * Mean and standard deviation of a law by the midpoint rule over its quantiles: an average over all equal
 * shares.
 */
function moments(law: Law): { mean: number; sd: number } {
  const quantile = inverse(law)
  const count = 400_000
  let sum = 0
  let squares = 0
  for (let index = 0; index < count; index++) {
    const value = quantile((index + 0.5) / count)
    sum += value
    squares += value * value
  }
  return { mean: sum / count, sd: Math.sqrt(squares / count - (sum / count) ** 2) }
}

describe('gamma law against the table of chi-square', () => {
  // chi-square with k degrees of freedom is gamma with shape k / 2 and scale 2. NIST/SEMATECH e-Handbook of
  // Statistical Methods, sec. 1.3.6.7.4, critical values as printed, three decimals
  it.each([
    { k: 1, values: { 0.9: 2.706, 0.95: 3.841, 0.975: 5.024, 0.99: 6.635, 0.999: 10.828 } },
    {
      k: 2,
      values: {
        0.01: 0.02,
        0.05: 0.103,
        0.1: 0.211,
        0.9: 4.605,
        0.95: 5.991,
        0.975: 7.378,
        0.99: 9.21,
        0.999: 13.816,
      },
    },
    {
      k: 5,
      values: {
        0.01: 0.554,
        0.05: 1.145,
        0.1: 1.61,
        0.9: 9.236,
        0.95: 11.07,
        0.975: 12.833,
        0.99: 15.086,
        0.999: 20.515,
      },
    },
    {
      k: 10,
      values: {
        0.01: 2.558,
        0.05: 3.94,
        0.1: 4.865,
        0.9: 15.987,
        0.95: 18.307,
        0.975: 20.483,
        0.99: 23.209,
        0.999: 29.588,
      },
    },
    {
      k: 100,
      values: { 0.05: 77.929, 0.1: 82.358, 0.9: 118.498, 0.95: 124.342, 0.99: 135.807, 0.999: 149.449 },
    },
  ])('$k degrees of freedom', ({ k, values }) => {
    const quantile = inverse({ law: 'gamma', mean: k, cv: Math.sqrt(2 / k) })
    for (const [p, value] of Object.entries(values))
      expect(Math.abs(quantile(Number(p)) - value), `p ${p}`).toBeLessThan(6e-4)
  })

  it('an Erlang law is the gamma law of whole shape', () => {
    // 5 phases of mean 2: chi-square with 10 degrees of freedom
    const quantile = inverse({ law: 'erlang', mean: 10, phases: 5 })
    expect(quantile(0.95)).toBeCloseTo(18.307, 3)
    expect(quantile(0.05)).toBeCloseTo(3.94, 3)
    // one phase: the exponential law
    expect(inverse({ law: 'erlang', mean: 3, phases: 1 })(0.7)).toBeCloseTo(-3 * Math.log(0.3), 5)
  })
})

describe('other laws: quantiles', () => {
  it('exponential', () => {
    const quantile = inverse({ law: 'exponential', mean: 4 })
    // median = mean ln 2; 95 % lie below three means, nearly
    expect(quantile(0.5)).toBeCloseTo(4 * Math.LN2, 6)
    expect(quantile(0.95)).toBeCloseTo(4 * 2.995732, 5)
  })

  it('lognormal', () => {
    // mean sqrt(e) and cv sqrt(e - 1) make the logarithm standard normal: quantiles exp(0), exp(1.644854),
    // exp(-1.959964)
    const quantile = inverse({ law: 'lognormal', mean: Math.sqrt(Math.E), cv: Math.sqrt(Math.E - 1) })
    expect(quantile(0.5)).toBeCloseTo(1, 5)
    expect(quantile(0.95)).toBeCloseTo(5.180252, 4)
    expect(quantile(0.025)).toBeCloseTo(0.1408635, 5)
  })

  it('Weibull', () => {
    // 63.2 % lie below the scale, whatever the shape. NIST/SEMATECH, sec. 8.1.6.2 (from memory): with shape
    // 1.5 and scale 5000 the share below 1000 is 0.08556
    for (const shape of [0.5, 1, 3.4])
      expect(inverse({ law: 'weibull', shape, scale: 9 })(1 - Math.exp(-1))).toBeCloseTo(9, 9)
    expect(inverse({ law: 'weibull', shape: 1.5, scale: 5000 })(0.085559)).toBeCloseTo(1000, 1)
  })

  it('triangular, uniform and constant', () => {
    // of the law on 2, 2.6, 4 the share (mode - low) / (high - low) = 0.3 lies below the mode
    const triangular = inverse({ law: 'triangular', low: 2, mode: 2.6, high: 4 })
    expect(triangular(0.3)).toBeCloseTo(2.6, 9)
    expect(triangular(0.075)).toBeCloseTo(2.3, 9)
    expect(triangular(0.825)).toBeCloseTo(3.3, 9)
    expect(inverse({ law: 'uniform', low: 1, high: 3 })(0.25)).toBeCloseTo(1.5, 12)
    expect(inverse({ law: 'constant', value: 90 })(0.999)).toBe(90)
  })

  it('normal, not cut and cut', () => {
    const plain = inverse({ law: 'normal', mean: 100, sd: 15, atLeast: -1000 })
    expect(plain(0.975)).toBeCloseTo(100 + 15 * 1.959964, 3)
    expect(plain(0.05)).toBeCloseTo(100 - 15 * 1.644854, 3)
    // cut at its mean it is the half-normal law: its median is the upper quartile of the normal, 0.6744898
    const half = inverse({ law: 'normal', mean: 0, sd: 1, atLeast: 0 })
    expect(half(0.5)).toBeCloseTo(0.6744898, 5)
    expect(half(0.95)).toBeCloseTo(1.959964, 5)
    // cut far above its mean only the tail is left: its upper 2.866516e-7 halves at 5.132018 (recomputed)
    expect(inverse({ law: 'normal', mean: 0, sd: 1, atLeast: 5 })(0.5)).toBeCloseTo(5.132018, 5)
  })
})

describe('moments', () => {
  // Johnson, Kotz and Balakrishnan, Continuous Univariate Distributions (1994, 1995) (from memory)
  it.each<{ law: Law; mean: number; sd: number }>([
    { law: { law: 'exponential', mean: 4 }, mean: 4, sd: 4 },
    { law: { law: 'lognormal', mean: 75, cv: 0.8 }, mean: 75, sd: 60 },
    { law: { law: 'gamma', mean: 3, cv: 0.4 }, mean: 3, sd: 1.2 },
    { law: { law: 'gamma', mean: 3, cv: 2 }, mean: 3, sd: 6 },
    { law: { law: 'erlang', mean: 12, phases: 3 }, mean: 12, sd: 6.928203 },
    // scale x gamma(1 + 1 / shape): 0.8862269 and 0.4632514 for shape 2
    { law: { law: 'weibull', shape: 2, scale: 1 }, mean: 0.8862269, sd: 0.4632514 },
    // variance (a^2 + b^2 + c^2 - ab - ac - bc) / 18
    { law: { law: 'triangular', low: 2, mode: 2.6, high: 4 }, mean: 2.8666667, sd: 0.4189935 },
    { law: { law: 'uniform', low: 1, high: 3 }, mean: 2, sd: 0.5773503 },
    // the half-normal law: sqrt(2 / pi) and sqrt(1 - 2 / pi)
    { law: { law: 'normal', mean: 0, sd: 1, atLeast: 0 }, mean: 0.7978846, sd: 0.6028103 },
    // cut two deviations below the mean: mean + sd x density / share kept = 3 + 0.5 x 0.0539910 / 0.9772499
    { law: { law: 'normal', mean: 3, sd: 0.5, atLeast: 2 }, mean: 3.0276239, sd: 0.4707579 },
  ])('$law', ({ law, mean, sd }) => {
    const found = moments(law)
    expect(Math.abs(found.mean / mean - 1)).toBeLessThan(1e-4)
    // the rule leaves out the very tail, which weighs more in the squares
    expect(Math.abs(found.sd / sd - 1)).toBeLessThan(2e-3)
  })
})
