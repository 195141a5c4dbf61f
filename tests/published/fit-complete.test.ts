/** Fits to complete times against published ones. "R": computed with R 4.2.2 and its package fitdistrplus 1.1-8. */
import { describe, expect, it } from 'vitest'
import { parametersOf } from '../../src/statistics/fitting/chart.js'
import { fitComplete } from '../../src/statistics/fitting/complete.js'
import { distributionOf, families, type SimpleLaw } from '../../src/statistics/fitting/law.js'
import { logLikelihood } from '../../src/statistics/fitting/likelihood.js'
import { profileInterval } from '../../src/statistics/fitting/profile.js'
import { chiSquare } from '../../src/statistics/quantile.js'
import { groundBeef } from './data/ground-beef.js'
import { airConditioning, strengths, transceiverRepairs } from './data/repairs.js'
import { complete, errorsOf, fitted, valuesOf } from './data/samples.js'

describe('servings of ground beef', () => {
  // Delignette-Muller & Dutang, J. Stat. Softw. 64(4) (2015), print 2.186 and 83.348. Errors: the information in closed form, evaluated in R;
  // fitdistrplus differences it and prints .104576, 2.52686 and .3218
  it('are 254, 73.6 g on average', () => {
    expect(groundBeef).toHaveLength(254)
    expect(groundBeef.reduce((sum, each) => sum + each, 0) / 254).toBeCloseTo(73.64567, 5)
  })

  it('as Weibull times: parameters, errors, correlation, likelihood, criteria', () => {
    const found = fitted(complete(groundBeef), 'weibull')
    const [shape, scale] = valuesOf(found)
    expect(shape).toBeCloseTo(2.185612328, 8)
    expect(scale).toBeCloseTo(83.346669, 6)
    expect(errorsOf(found)).toEqual([expect.closeTo(0.104566423, 7), expect.closeTo(2.5271217, 6)])
    const [[, across], [,]] = found.covariance as [[number, number], [number, number]]
    expect(across / (errorsOf(found)[0]! * errorsOf(found)[1]!)).toBeCloseTo(0.3217337, 6)
    expect(found.logLikelihood).toBeCloseTo(-1255.22472, 4)
    expect(found.aic).toBeCloseTo(2514.449, 3)
    expect(found.bic).toBeCloseTo(2521.524, 3)
  })

  it('the shape at the ends of its profile: 1.985159 and 2.394976 at 95 % by chi-square (R)', () => {
    const sample = complete(groundBeef)
    const law = fitComplete('weibull', Float64Array.from(groundBeef))!
    const likelihood = (each: SimpleLaw) => logLikelihood(sample, distributionOf(each))
    const [figure] = parametersOf('weibull')
    const profiled = { figure: figure!, logLikelihood: likelihood, law, top: likelihood(law) }
    const { low, high } = profileInterval(profiled, 0.1, chiSquare(0.95, 1))
    expect(low).toBeCloseTo(1.985159, 6)
    expect(high).toBeCloseTo(2.394976, 6)
  })

  it('as gamma and lognormal times (R)', () => {
    const gamma = fitted(complete(groundBeef), 'gamma')
    const law = gamma.law as { shape: number; scale: number }
    // the default search of R stops at 4.00825; here the root, and the error sqrt(a / (n (a trigamma(a) - 1)))
    expect(law.shape).toBeCloseTo(4.00833903, 7)
    expect(1 / law.scale).toBeCloseTo(0.05442736, 7)
    expect(errorsOf(gamma)[0]).toBeCloseTo(0.34191282, 7)
    expect(gamma.logLikelihood).toBeCloseTo(-1253.62511, 4)
    const lognormal = fitted(complete(groundBeef), 'lognormal')
    expect(valuesOf(lognormal)).toEqual([expect.closeTo(4.1693701, 6), expect.closeTo(0.5366095, 6)])
    expect(errorsOf(lognormal)).toEqual([expect.closeTo(0.0336699, 6), expect.closeTo(0.0238078, 6)])
    expect(lognormal.logLikelihood).toBeCloseTo(-1261.3193, 4)
    expect(fitted(complete(groundBeef), 'exponential').logLikelihood).toBeCloseTo(-1346.013, 3)
  })
})

describe('46 repair times', () => {
  it('lognormal: parameters, errors, criteria, mean (R)', () => {
    const found = fitted(complete(transceiverRepairs), 'lognormal')
    expect(valuesOf(found)).toEqual([expect.closeTo(0.6583924, 6), expect.closeTo(1.101791, 6)])
    expect(errorsOf(found)).toEqual([expect.closeTo(0.1624502, 6), expect.closeTo(0.1148692, 6)])
    expect(found.logLikelihood).toBeCloseTo(-100.01632, 5)
    expect(found.aic).toBeCloseTo(204.03265, 4)
    expect(found.bic).toBeCloseTo(207.68993, 4)
    expect(found.mean.value).toBeCloseTo(3.544383, 6)
  })

  it('mean of the law: both ends are where the highest likelihood has fallen as far as it may', () => {
    // not Cox's interval, exp(mu + s^2/2 -+ 1.96 sqrt(s^2/n + s^4/(2(n-1)))) = 2.3805 to 5.4215 (Zhou & Gao, Statistics in Medicine 16 (1997)
    // 783-790, from memory): of 4000 logs of 20 such times it ended too low in 6.9 % and too high in 0.8 %, this one in 4.0 and 2.1 %
    const found = fitted(complete(transceiverRepairs), 'lognormal')
    const sample = complete(transceiverRepairs)
    for (const mean of [found.mean.low, found.mean.high]) {
      const heights = Array.from({ length: 4000 }, (_, index) => {
        const spread = 0.6 + index / 2500
        const location = Math.log(mean) - spread ** 2 / 2
        return logLikelihood(sample, distributionOf({ family: 'lognormal', location, spread }))
      })
      const fallen = 2 * (found.logLikelihood - Math.max(...heights))
      // Student's t of 45 degrees of freedom for 95 %: 2.014103
      expect(fallen).toBeCloseTo(46 * Math.log(1 + 2.014103 ** 2 / 45), 4)
    }
  })

  it("the location has Student's interval", () => {
    const found = fitted(complete(transceiverRepairs), 'lognormal')
    const [location] = found.parameters
    const spread = 1.101791 * Math.sqrt(46 / 45)
    // t of 45 degrees of freedom for 95 %: 2.014103 (any table)
    const half = (2.014103 * spread) / Math.sqrt(46)
    expect(location!.low).toBeCloseTo(0.6583924 - half, 5)
    expect(location!.high).toBeCloseTo(0.6583924 + half, 5)
  })

  it('other families (R)', () => {
    const found = families.map((family) => fitted(complete(transceiverRepairs), family))
    expect(found.map(({ logLikelihood: top }) => top)).toEqual(
      [-105.0062, -104.4697, -104.9309, -100.0163].map((each) => expect.closeTo(each, 4)),
    )
    expect(valuesOf(found[1]!)).toEqual([expect.closeTo(0.8985828, 4), expect.closeTo(3.39134, 3)])
    expect(valuesOf(found[2]!)).toEqual([expect.closeTo(0.9322923, 3), expect.closeTo(3.868445, 2)])
  })
})

describe('12 times between failures', () => {
  it("all families (R; the mean 108.0833 h is Proschan's)", () => {
    const found = families.map((family) => fitted(complete(airConditioning), family))
    expect(found.map(({ logLikelihood: top }) => top)).toEqual(
      [-68.19483, -67.61851, -67.64542, -68.06746].map((each) => expect.closeTo(each, 5)),
    )
    expect(valuesOf(found[0]!)).toEqual([expect.closeTo(108.0833, 4)])
    expect(valuesOf(found[1]!)).toEqual([expect.closeTo(0.7939438, 4), expect.closeTo(94.9649, 2)])
    expect(valuesOf(found[2]!)).toEqual([expect.closeTo(0.7064932, 4), expect.closeTo(152.9857, 1)])
    expect(valuesOf(found[3]!)).toEqual([expect.closeTo(3.828588, 6), expect.closeTo(1.529225, 6)])
  })

  it('ten strengths as Weibull (R: 5.976923, 181.4056, -48.75639)', () => {
    const found = fitted(complete(strengths), 'weibull')
    expect(valuesOf(found)).toEqual([expect.closeTo(5.976923, 3), expect.closeTo(181.4056, 2)])
    expect(found.logLikelihood).toBeCloseTo(-48.75639, 5)
  })
})
