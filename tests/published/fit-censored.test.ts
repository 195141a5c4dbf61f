/** Fits to censored and rounded times against published ones. "R": computed with R 4.2.2 and its package fitdistrplus 1.1-8. */
import { describe, expect, it } from 'vitest'
import { likelihoodRatio } from '../../src/statistics/fitting/choose.js'
import { survivalCurve } from '../../src/statistics/fitting/survival.js'
import { halfWidthOfMean } from '../../src/statistics/quantile.js'
import { rateOf } from '../../src/statistics/rates.js'
import { unitsOnTest } from './data/repairs.js'
import { salinity } from './data/salinity.js'
import { counted, errorsOf, fitted, valuesOf } from './data/samples.js'
import { smokedFish } from './data/smoked-fish.js'

describe('ten failures of 20 units on test, NIST/SEMATECH e-Handbook 8.4.1.3', () => {
  const { failed, end, survived } = unitsOnTest
  const units = counted([...failed.map((at) => [{ at }, 1] as const), [{ over: end }, survived]])

  it('Weibull: NIST prints scale 606.5280, shape 1.7208, likelihood -75.135, mean 540.737; errors R', () => {
    const found = fitted(units, 'weibull')
    expect(valuesOf(found)).toEqual([expect.closeTo(1.720797, 4), expect.closeTo(606.5276, 2)])
    expect(errorsOf(found)).toEqual([expect.closeTo(0.502249, 3), expect.closeTo(124.928, 1)])
    expect(found.logLikelihood).toBeCloseTo(-75.134618, 6)
    expect(found.aic).toBeCloseTo(154.27, 2)
    expect(found.mean.value).toBeCloseTo(540.737, 2)
    expect([found.n, found.events]).toEqual([20, 10])
  })

  it('lognormal and gamma (R)', () => {
    const lognormal = fitted(units, 'lognormal')
    // survreg; fitdistcens stops at 6.22617 and .908955
    expect(valuesOf(lognormal)).toEqual([expect.closeTo(6.226015, 5), expect.closeTo(0.908914, 5)])
    expect(errorsOf(lognormal)).toEqual([expect.closeTo(0.250488, 3), expect.closeTo(0.225818, 3)])
    expect(lognormal.logLikelihood).toBeCloseTo(-75.196271, 6)
    // the likelihood written out in R, searched to the end in logarithms; fitdistcens differences a rate of .004 by steps of .001 and errs
    const gamma = fitted(units, 'gamma')
    const law = gamma.law as { shape: number; scale: number }
    expect(law.shape).toBeCloseTo(2.1683975, 6)
    expect(law.scale).toBeCloseTo(266.34142, 4)
    expect(errorsOf(gamma)).toEqual([expect.closeTo(0.9018, 4), expect.closeTo(151.275, 2)])
    expect(gamma.logLikelihood).toBeCloseTo(-75.069073, 6)
  })

  it('exponential: 7771 h over ten, with the limits of a test that ends at a set time (chi-square)', () => {
    const found = fitted(units, 'exponential')
    expect(found.mean.value).toBeCloseTo(777.1, 6)
    expect(found.mean.low).toBeCloseTo(422.5584, 3)
    expect(found.mean.high).toBeCloseTo(1620.5151, 3)
    expect(found.parameters).toEqual([
      { name: 'mean', ...found.mean, se: expect.closeTo(777.1 / Math.sqrt(10), 3) },
    ])
    expect(found.logLikelihood).toBeCloseTo(-76.55569, 5)
  })

  it('whether they age: 2.842145, p 0.0918216 (R)', () => {
    const ratio = likelihoodRatio(fitted(units, 'exponential'), fitted(units, 'weibull'))
    expect(ratio.statistic).toBeCloseTo(2.842145, 5)
    expect(ratio.p).toBeCloseTo(0.0918216, 6)
    expect(ratio.degreesOfFreedom).toBe(1)
  })

  it("Kaplan-Meier with Greenwood's errors (R, package survival)", () => {
    const curve = survivalCurve(units)
    const at = (time: number) => curve.find((step) => step.at === time)!
    expect(at(244).survival).toBeCloseTo(0.75, 10)
    expect(at(244).se).toBeCloseTo(0.09682458, 7)
    expect(at(386).survival).toBeCloseTo(0.5, 10)
    expect(at(386).se).toBeCloseTo(0.1118034, 7)
    expect(curve).toHaveLength(10)
  })
})

describe('times in intervals', () => {
  it('salinity, lognormal: 60 of 108 right-censored, 29 in intervals (R, survreg to the end; fitdistcens stops at 3.385423 and .4961333)', () => {
    const found = fitted(counted(salinity), 'lognormal')
    expect([found.n, found.events]).toEqual([108, 48])
    expect(valuesOf(found)).toEqual([expect.closeTo(3.385371, 6), expect.closeTo(0.496138, 6)])
    expect(errorsOf(found)).toEqual([expect.closeTo(0.0648632, 6), expect.closeTo(0.0545527, 6)])
    expect(found.logLikelihood).toBeCloseTo(-139.0549559, 6)
    expect(found.aic).toBeCloseTo(282.10991, 5)
    expect(found.bic).toBeCloseTo(287.47417, 5)
  })

  it('smoked fish, a normal law of log10, mostly left-censored (R, survreg to the end; fitdistcens stops at -1.575392 and 1.539446)', () => {
    // that is a lognormal law: location and spread are those of the natural logarithm
    const found = fitted(counted(smokedFish), 'lognormal')
    const ln10 = Math.LN10
    expect(valuesOf(found).map((each) => each / ln10)).toEqual([
      expect.closeTo(-1.5756191, 6),
      expect.closeTo(1.5394512, 6),
    ])
    expect(errorsOf(found).map((each) => each / ln10)).toEqual([
      expect.closeTo(0.2014164, 6),
      expect.closeTo(0.21181, 6),
    ])
    // chances stay; the density of the one exact value, 15, is taken over from x to log10 x
    expect(found.logLikelihood + Math.log(15 * ln10)).toBeCloseTo(-87.1094525, 6)
  })
})

describe('what so many can say', () => {
  it("half-width of a mean over it, t cv / sqrt n (tables of Student's t)", () => {
    const at = (cv: number) => [10, 20, 50, 100, 200].map((n) => halfWidthOfMean(n, cv, 0.95))
    expect(at(0.8)).toEqual([0.572, 0.374, 0.227, 0.159, 0.112].map((each) => expect.closeTo(each, 3)))
    expect(at(1)).toEqual([0.715, 0.468, 0.284, 0.198, 0.139].map((each) => expect.closeTo(each, 3)))
  })

  it('factors on a rate (Garwood; computed with scipy)', () => {
    expect(rateOf(3, 3, 0.95)).toEqual({
      value: 1,
      low: expect.closeTo(0.2062, 4),
      high: expect.closeTo(2.9224, 4),
    })
    expect(rateOf(10, 10, 0.95)).toEqual({
      value: 1,
      low: expect.closeTo(0.4795, 4),
      high: expect.closeTo(1.839, 4),
    })
    expect(rateOf(50, 50, 0.95)).toEqual({
      value: 1,
      low: expect.closeTo(0.7422, 4),
      high: expect.closeTo(1.3184, 4),
    })
  })
})
