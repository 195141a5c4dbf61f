/** Which law is chosen, worked by hand. */
import { describe, expect, it } from 'vitest'
import { type Candidate, choose, fewEvents } from '../../src/statistics/fitting/choose.js'
import type { FittedLaw } from '../../src/statistics/fitting/law.js'

const laws = {
  exponential: { family: 'exponential', mean: 1 },
  weibull: { family: 'weibull', shape: 1, scale: 1 },
  gamma: { family: 'gamma', shape: 1, scale: 1 },
  lognormal: { family: 'lognormal', location: 0, spread: 1 },
  mixture: {
    family: 'mixture',
    share: 0.5,
    first: { family: 'lognormal', location: 0, spread: 1 },
    second: { family: 'lognormal', location: 1, spread: 1 },
  },
} satisfies Record<string, FittedLaw>

interface Told {
  bic: number
  p: number | null
  events?: number
  logLikelihood?: number
  quantiles?: number
  means?: { law: number; log: number; error: number } | null
}

const parameters = { exponential: 1, weibull: 2, gamma: 2, lognormal: 2, mixture: 5 }

function candidate(family: keyof typeof laws, told: Told): Candidate {
  const { bic, p, events = 50, logLikelihood = 0, quantiles = 0.3, means = null } = told
  const known = { value: 1, low: 0.5, high: 2 }
  return {
    fit: {
      law: laws[family],
      n: events,
      events,
      logLikelihood,
      parameters: Array.from({ length: parameters[family] }, (_, index) => ({
        ...known,
        name: `${index}`,
        se: 1,
      })),
      covariance: [],
      mean: known,
      aic: bic,
      bic,
    },
    goodness:
      p === null
        ? null
        : {
            largestGap: { statistic: 0.1, pValue: p },
            weightedGap: { statistic: 1, pValue: p },
            bootstraps: 199,
            tested: events,
            misfit: { quantiles, means },
          },
  }
}

const told = (...candidates: Candidate[]) => {
  const { chosen, reason, alike } = choose(candidates)
  return {
    chosen: chosen?.fit.law.family ?? null,
    reason,
    alike: alike.map(({ fit }) => fit.law.family),
  }
}

describe('the choice by hand', () => {
  it('the lowest BIC of those that are not refused, and which it cannot be told apart from', () => {
    expect(
      told(
        candidate('exponential', { bic: 90, p: 0.005 }),
        candidate('weibull', { bic: 105.99, p: 0.3 }),
        candidate('gamma', { bic: 100, p: 0.5 }),
        candidate('lognormal', { bic: 106, p: 0.06 }),
      ),
    ).toEqual({ chosen: 'gamma', reason: 'lowest-bic', alike: ['weibull'] })
  })

  it('a mixture has to make up for its five parameters', () => {
    const rest = [
      candidate('exponential', { bic: 110, p: 0.01 }),
      candidate('lognormal', { bic: 100, p: 0.2 }),
    ]
    expect(told(...rest, candidate('mixture', { bic: 101, p: 0.9 }))).toEqual({
      chosen: 'lognormal',
      reason: 'lowest-bic',
      alike: ['mixture'],
    })
    expect(told(...rest, candidate('mixture', { bic: 90, p: 0.9 })).chosen).toBe('mixture')
  })

  it('where nothing fits, the observed times', () => {
    expect(
      told(candidate('exponential', { bic: 100, p: 0.005 }), candidate('gamma', { bic: 90, p: 0.05 })),
    ).toEqual({ chosen: null, reason: 'refused', alike: [] })
  })

  it('where many times refuse all, but one is near: its quantiles within 5 % of the mean, its mean within 2 %', () => {
    const exponential = candidate('exponential', { bic: 9000, p: 0.005, quantiles: 0.02 })
    const close = { law: 99, log: 100, error: 0.2 }
    const gamma = (quantiles: number, means: typeof close | null) =>
      candidate('gamma', { bic: 8000, p: 0.005, quantiles, means })
    expect(told(exponential, gamma(0.05, close)).chosen).toBe('gamma')
    expect(told(exponential, gamma(0.05, close)).reason).toBe('small-misfit')
    expect(told(exponential, gamma(0.051, close)).chosen).toBe('exponential')
    expect(told(exponential, gamma(0.05, { ...close, law: 97.9 })).chosen).toBe('exponential')
  })

  it('what could not be tested is not refused', () => {
    expect(told(candidate('exponential', { bic: 10, p: null }))).toEqual({
      chosen: 'exponential',
      reason: 'lowest-bic',
      alike: [],
    })
  })

  it('of nothing, none', () => {
    expect(told()).toEqual({ chosen: null, reason: 'none', alike: [] })
  })
})

describe('of few times', () => {
  const few = (ratio: number, p = 0.4) => [
    candidate('exponential', { bic: 20, p, events: fewEvents - 1, logLikelihood: -9 }),
    candidate('weibull', { bic: 19, p: 0.5, events: fewEvents - 1, logLikelihood: -9 + ratio / 2 }),
    candidate('lognormal', { bic: 16, p: 0.6, events: fewEvents - 1, logLikelihood: -7.5 }),
  ]

  it('an exponential law, unless the likelihood ratio to Weibull is 3.84 or more', () => {
    expect(told(...few(3.8))).toEqual({
      chosen: 'exponential',
      reason: 'few',
      alike: ['lognormal', 'weibull'],
    })
    expect(told(...few(3.9))).toEqual({
      chosen: 'lognormal',
      reason: 'lowest-bic',
      alike: ['weibull', 'exponential'],
    })
  })

  it('or the test refuses it all the same', () => {
    expect(told(...few(1, 0.01)).chosen).toBe('lognormal')
  })

  it('where nothing else could be fitted, an exponential law', () => {
    expect(told(few(1)[0]!)).toEqual({ chosen: 'exponential', reason: 'few', alike: [] })
  })
})
