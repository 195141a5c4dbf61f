/** What a log leaves out, and how well that is known: against what the mean of an exponential law says, and where nothing tells it. */
import { describe, expect, it } from 'vitest'
import { fit as fitOf } from '../../src/statistics/fitting/fit.js'
import { distributionOf } from '../../src/statistics/fitting/law.js'
import { fitMixture } from '../../src/statistics/fitting/mixture.js'
import type { Sample } from '../../src/statistics/fitting/sample.js'
import { shareOver } from '../../src/statistics/fitting/share-over.js'
import { standardNormal } from '../../src/statistics/quantile.js'
import { ratioOf } from '../../src/statistics/rates.js'

/** Readings of a clock of minutes, of stops from 30 s on. */
const read = (minutes: readonly number[]): Sample => ({
  seen: minutes.map((each) => ({ clocked: 60 * each, grain: 60 })),
  counts: minutes.map(() => 1),
  from: 30,
})

describe('the share over a length', () => {
  const minutes = [1, 2, 1, 3, 1, 5, 2, 1, 1, 4]

  it('of an exponential law is exp(-length / mean), and so are its ends', () => {
    const found = fitOf(read(minutes), 'exponential')
    if ('why' in found) throw new Error(found.why)
    const { value, low, high } = found.mean
    const over = shareOver(read(minutes), found, 30, 0.95)
    expect(over.share).toBeCloseTo(Math.exp(-30 / value), 10)
    expect(over.low).toBeCloseTo(Math.exp(-30 / low), 6)
    expect(over.high).toBeCloseTo(Math.exp(-30 / high), 6)
  })

  it.each(['weibull', 'gamma', 'lognormal'] as const)(
    'of a %s law has ends on both sides, no farther than none and all',
    (family) => {
      const found = fitOf(read(minutes), family)
      if ('why' in found) throw new Error(found.why)
      const { share, low, high } = shareOver(read(minutes), found, 30, 0.95)
      expect(share).toBeCloseTo(distributionOf(found.law).above(30), 12)
      expect(low).toBeGreaterThanOrEqual(0)
      expect(low).toBeLessThan(share)
      expect(high).toBeGreaterThan(share)
      expect(high).toBeLessThanOrEqual(1)
      // the more confidence is asked for, the wider
      const wider = shareOver(read(minutes), found, 30, 0.99)
      expect(wider.low).toBeLessThanOrEqual(low)
      expect(wider.high).toBeGreaterThanOrEqual(high)
    },
  )
})

describe('a mixture', () => {
  const parts = Array.from({ length: 100 }, (_, n) => standardNormal((n + 0.5) / 100))
  const times = [...parts.map((z) => Math.exp(4 + 0.3 * z)), ...parts.map((z) => Math.exp(7 + 0.4 * z))]
  const sample: Sample = { seen: times.map((at) => ({ at })), counts: times.map(() => 1), from: 0 }

  it('whose parts stand apart has the interval of its mean that Student gives, nearly', () => {
    const found = fitMixture(sample)
    if ('why' in found) throw new Error(found.why)
    const { value, low, high } = found.mean
    const mean = times.reduce((sum, each) => sum + each, 0) / times.length
    expect(value / mean).toBeCloseTo(1, 2)
    // so skewed that the interval reaches farther up than down; both within a tenth of 1.972 standard errors
    const se = Math.sqrt(
      times.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (times.length - 1) / times.length,
    )
    expect(high - value).toBeGreaterThan(value - low)
    expect((high - low) / (2 * 1.972 * se)).toBeGreaterThan(0.9)
    expect((high - low) / (2 * 1.972 * se)).toBeLessThan(1.1)
  })

  it('is not looked into where laws of fewer parameters are as good', () => {
    const found = fitMixture(sample)
    if ('why' in found) throw new Error(found.why)
    expect(fitMixture(sample, 0.95, found.bic)).toEqual({ why: 'no-better' })
    expect(fitMixture(sample, 0.95, found.bic + 1)).toEqual(found)
  })

  it('whose shorter part begins below what is logged may be of many more than are seen', () => {
    // minor stops of 45 s about, of which those under 30 s are in no log
    const minor = parts.map((z) => Math.exp(3.7 + 0.5 * z)).filter((each) => each >= 30)
    const major = parts.slice(30, 60).map((z) => Math.exp(5.8 + 0.5 * z))
    const cut: Sample = {
      seen: [...minor, ...major].map((at) => ({ at })),
      counts: [...minor, ...major].map(() => 1),
      from: 30,
    }
    const found = fitMixture(cut)
    if ('why' in found) throw new Error(found.why)
    const { share, low, high } = shareOver(cut, found, 30, 0.95)
    // 73 of 100 minor ones and 30 major ones are seen
    expect(low).toBeLessThan(103 / 130)
    expect(high).toBeGreaterThan(103 / 130)
    // what is known is lopsided: few unseen are sooner ruled out than many
    expect(Math.log(share / low)).toBeGreaterThan(Math.log(high / share))
  })
})

describe('a ratio of two figures', () => {
  it('has the limits of the first where the second is known', () => {
    const one = { value: 4, low: 2, high: 9 }
    const ratio = ratioOf(one, { value: 0.5, low: 0.5, high: 0.5 })
    expect([ratio.value, ratio.low, ratio.high]).toEqual([8, expect.closeTo(4, 12), expect.closeTo(18, 12)])
  })

  it('adds the distances of both as squares on the logarithm', () => {
    // by factors of e^3 and e^4: of e^5
    const one = { value: 1, low: Math.exp(-3), high: Math.exp(3) }
    const other = { value: 1, low: Math.exp(-4), high: Math.exp(4) }
    const { low, high } = ratioOf(one, other)
    expect(low).toBeCloseTo(Math.exp(-5), 12)
    expect(high / Math.exp(5)).toBeCloseTo(1, 12)
  })

  it('is open where the second may be none', () => {
    expect(ratioOf({ value: 1, low: 0.5, high: 2 }, { value: 0.5, low: 0, high: 1 }).high).toBe(Infinity)
  })
})
