/** Two parts against published ones. */
import { describe, expect, it } from 'vitest'
import { type Mixture, mixturesOf } from '../../src/statistics/fitting/expectation.js'
import { distributionOf } from '../../src/statistics/fitting/law.js'
import { logLikelihood } from '../../src/statistics/fitting/likelihood.js'
import { fitMixture } from '../../src/statistics/fitting/mixture.js'
import { roughly } from '../../src/statistics/fitting/rough.js'
import { complete, fitted, valuesOf } from './data/samples.js'
import { waiting } from './data/waiting.js'

/**
 * Waiting times for the geyser as two normal laws: the mixtools vignette, Benaglia et al., J. Stat. Softw. 32(6) (2009), prints
 * a log-likelihood of -1034.002, .361, means 54.6 and 80.1; further digits by R 4.2.2. Normal laws of x are lognormal ones of exp x, whose
 * density is that of x over exp x.
 */
describe('waiting for the geyser', () => {
  const raised = complete(waiting.map(Math.exp))
  const sum = waiting.reduce((total, each) => total + each, 0)

  it('falls into two parts', () => {
    const found = fitMixture(raised)
    if ('why' in found) throw new Error(found.why)
    expect(found.law.family).toBe('mixture')
    const [share, location, spread, secondLocation, secondSpread] = valuesOf(found)
    expect(share).toBeCloseTo(0.3608861, 5)
    expect(location).toBeCloseTo(54.614856, 3)
    expect(spread).toBeCloseTo(5.871219, 3)
    expect(secondLocation).toBeCloseTo(80.091069, 3)
    expect(secondSpread).toBeCloseTo(5.867734, 3)
    expect(found.logLikelihood + sum).toBeCloseTo(-1034.00175, 5)
    expect(found.bic).toBeLessThan(fitted(raised, 'lognormal').bic)
  })

  it('one normal law is much less likely (R: -1095.288801)', () => {
    expect(fitted(raised, 'lognormal').logLikelihood + sum).toBeCloseTo(-1095.288801, 5)
  })

  it('by expectation and maximisation alone, to what their slow end leaves', () => {
    const heightOf = (law: Mixture) => logLikelihood(raised, distributionOf(law))
    const law = mixturesOf(roughly(raised), 1e-7).sort((a, b) => heightOf(b) - heightOf(a))[0]!
    expect(law.share).toBeCloseTo(0.3608861, 4)
    expect(law.first.location).toBeCloseTo(54.614856, 2)
    expect(law.second.spread).toBeCloseTo(5.867734, 2)
  })
})
