/** What a count leaves open of a chance or a rate, and what is believed of a guess. */
import { describe, expect, it } from 'vitest'
import { chanceAt, gammaAt, guessAt, rateAt } from '../../src/inputs/posterior.js'

describe('a chance of which events were counted', () => {
  // Brown, Cai & DasGupta, Statistical Science 16 (2001) 101-133, table of 95 % intervals by the prior of Jeffreys, n = 7 (from memory)
  it.each([
    [1, 0.016, 0.501],
    [2, 0.065, 0.648],
    [3, 0.139, 0.766],
  ])('%d in 7 lies between %f and %f with 95 %', (events, low, high) => {
    // rounded there to three digits, the last of which is remembered with less certainty
    expect(Math.abs(chanceAt(0.025, events, 7) - low)).toBeLessThan(0.001)
    expect(Math.abs(chanceAt(0.975, events, 7) - high)).toBeLessThan(0.001)
  })

  it('of none lies below what none in so many allows: near half a chi-square with one degree of freedom', () => {
    // chi-square with 1 degree: 95 % below 3.841459
    expect(chanceAt(0.95, 0, 40_000) * 40_000).toBeCloseTo(3.841459 / 2, 3)
  })

  it('of all is that of none turned over', () =>
    expect(chanceAt(0.3, 9, 9)).toBeCloseTo(1 - chanceAt(0.7, 0, 9), 10))
})

describe('a rate of which events were counted', () => {
  // chi-square with 3 degrees of freedom: 5 % below 0.351846, 95 % below 7.814728 (NIST 1.3.6.7.4); the rate is half of it over the exposure
  it('1 in 10 lies between halves of chi-square with 3 degrees', () => {
    expect(rateAt(0.05, 1, 10)).toBeCloseTo(0.351846 / 20, 7)
    expect(rateAt(0.95, 1, 10)).toBeCloseTo(7.814728 / 20, 6)
  })

  it('has the mean (r + 1/2) / T', () => {
    const n = 4000
    const mean = Array.from({ length: n }, (_, index) => rateAt((index + 0.5) / n, 18, 640)).reduce(
      (sum, rate) => sum + rate / n,
      0,
    )
    expect(mean).toBeCloseTo(18.5 / 640, 5)
  })

  it.each([0.001, 0.05, 0.5, 0.95, 0.999])('goes on smoothly where shapes become large, share %f', (u) => {
    const [before, after] = [gammaAt(u, 1e5 - 1e-6), gammaAt(u, 1e5)]
    expect(Math.abs(after / before - 1)).toBeLessThan(1e-8)
  })
})

describe('a guess', () => {
  it.each([
    ['lognormal', 60, 150, Math.sqrt(60 * 150)],
    ['normal', -10, 5, -2.5],
    // in odds: 1/9 and 1, so 1/3
    ['logit-normal', 0.1, 0.5, 0.25],
  ] as const)(
    '%s has 5 %% below one end, half below the middle, 5 %% above the other',
    (spread, low, high, middle) => {
      const at = (u: number) => guessAt(u, { low, high, spread })
      expect(at(0.05)).toBeCloseTo(low, 9)
      expect(at(0.5)).toBeCloseTo(middle, 9)
      expect(at(0.95)).toBeCloseTo(high, 9)
    },
  )
})
