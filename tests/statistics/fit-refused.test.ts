/** What cannot be fitted says why; what can has figures that are numbers, whatever the record shows. */
import { describe, expect, it } from 'vitest'
import { Stream } from '../../src/engine/stream.js'
import { type Fit, fit as fitOf, type Unfitted } from '../../src/statistics/fitting/fit.js'
import { families } from '../../src/statistics/fitting/law.js'
import { fitMixture } from '../../src/statistics/fitting/mixture.js'
import type { Sample, Seen } from '../../src/statistics/fitting/sample.js'

const of = (seen: Seen[], from = 0): Sample => ({ seen, counts: seen.map(() => 1), from })
const exact = (...times: number[]) => of(times.map((at) => ({ at })))

describe('refused', () => {
  it.each([
    ['no time at all', of([]), 'no-events'],
    [
      'none that was seen to end',
      of([{ over: 5 }, { over: 9 }, { between: [3, Number.POSITIVE_INFINITY] }]),
      'no-events',
    ],
    ['all alike', exact(4, 4, 4, 4), 'few-values'],
    ['two different ones', exact(4, 5, 4, 5), 'few-values'],
    ['one of 0 s', exact(0, 4, 5, 6), 'zero'],
    ['one below 0', exact(-1, 4, 5, 6), 'impossible'],
    ['one that is no number', exact(Number.NaN, 4, 5, 6), 'impossible'],
    ['one shorter than what is seen', of([{ at: 2 }, { at: 4 }, { at: 5 }], 3), 'impossible'],
    [
      'an interval shorter than what is seen',
      of([{ between: [1, 2] }, { at: 4 }, { at: 5 }], 3),
      'impossible',
    ],
    ['an interval without width', of([{ between: [4, 4] }, { at: 4 }, { at: 5 }]), 'impossible'],
    [
      'a reading that is too short',
      of(
        [
          { clocked: 0, grain: 60 },
          { clocked: 120, grain: 60 },
        ],
        90,
      ),
      'impossible',
    ],
  ])('%s: %#', (_, sample, why) => {
    for (const family of ['weibull', 'gamma', 'lognormal'] as const)
      expect(fitOf(sample, family)).toEqual({ why })
    expect(fitMixture(sample)).toEqual({ why })
  })

  it('an exponential law takes one time, alike ones and one of 0 s, but not only such', () => {
    for (const sample of [exact(4), exact(4, 4), exact(0, 4)])
      expect(fitOf(sample, 'exponential')).toHaveProperty('law')
    expect(fitOf(exact(0, 0), 'exponential')).toEqual({ why: 'no-maximum' })
    expect(fitOf(of([{ over: 4 }]), 'exponential')).toEqual({ why: 'no-events' })
  })

  it('readings that one time explains have no spread to find', () => {
    const sample = of([60, 61, 62].map((clocked) => ({ clocked, grain: 60 })))
    for (const family of ['weibull', 'gamma', 'lognormal'] as const)
      expect(fitOf(sample, family)).toEqual({ why: 'no-maximum' })
  })

  it('two parts of which one rests on fewer than ten times', () => {
    const times = (count: number, about: number) =>
      Array.from({ length: count }, (_, index) => about * Math.exp((index - (count - 1) / 2) / count))
    expect(fitMixture(exact(...times(40, 10), ...times(9, 2000)))).toEqual({ why: 'thin-part' })
    expect(fitMixture(exact(...times(40, 10), ...times(12, 2000)))).toHaveProperty('law')
  })

  it('too few for two parts', () => {
    expect(fitMixture(exact(1, 2, 3, 50, 60))).toEqual({ why: 'few-values' })
  })
})

/** A sample of up to 12 times of all sorts, some absurd. */
function strange(stream: Stream): Sample {
  const unit = 10 ** Math.round(stream.next() * 8 - 2)
  const time = () => (Math.round(-Math.log(stream.next()) * 100) / 10) * unit
  const from = stream.next() < 0.5 ? 0 : 2 * unit
  const seen = Array.from({ length: 1 + Math.floor(stream.next() * 12) }, (): Seen => {
    const kind = stream.next()
    const length = from + time()
    if (kind < 0.4) return { at: length }
    if (kind < 0.6) return { over: length }
    if (kind < 0.8) return { between: [Math.max(0, length - time()), length + time() + unit] }
    return { clocked: 5 * unit * Math.floor(length / (5 * unit)), grain: 5 * unit }
  })
  return { seen, counts: seen.map(() => 1 + Math.floor(stream.next() * 3)), from }
}

function expectSound(found: Fit | Unfitted): void {
  if ('why' in found) return
  expect(Number.isFinite(found.logLikelihood)).toBe(true)
  for (const { value, low, high } of [...found.parameters, found.mean]) {
    expect(Number.isFinite(value)).toBe(true)
    expect(low).toBeLessThanOrEqual(value)
    expect(high).toBeGreaterThanOrEqual(value)
  }
  for (const { se } of found.parameters) expect(se).toBeGreaterThan(0)
}

describe('whatever a record shows', () => {
  it('a fit is a fit or says why, and ends', () => {
    const stream = new Stream('record', 'strange')
    stream.begin('times', 0)
    let fits = 0
    for (let index = 0; index < 25; index++) {
      const sample = strange(stream)
      for (const found of [...families.map((family) => fitOf(sample, family)), fitMixture(sample)]) {
        expectSound(found)
        if (!('why' in found)) fits++
      }
    }
    expect(fits).toBeGreaterThan(40)
  })

  it('nearly alike, very small, very large and very uneven times', () => {
    const samples = [
      exact(100, 100.01, 100.02, 100.03),
      exact(1e-9, 2e-9, 5e-9, 7e-9),
      exact(1e12, 2e12, 5e12, 7e12),
      exact(1e-6, 1, 1e6, 1e9),
      exact(1, 1, 1, 1, 1, 1, 1, 2, 3),
    ]
    for (const sample of samples)
      for (const family of families) {
        const found = fitOf(sample, family)
        expect(found).toHaveProperty('law')
        expectSound(found)
      }
  })
})
