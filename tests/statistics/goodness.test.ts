/** How well a law fits a log, worked by hand; other logs like a log; fits that begin near their end. */
import { describe, expect, it } from 'vitest'
import { Stream } from '../../src/engine/stream.js'
import { distanceOf, placed, quantileOf } from '../../src/statistics/fitting/distance.js'
import { fit as fitOf } from '../../src/statistics/fitting/fit.js'
import { goodness, misfitOf, mostTested } from '../../src/statistics/fitting/goodness.js'
import { distributionOf, type FittedLaw, families } from '../../src/statistics/fitting/law.js'
import { drawLog, type Log, logOf } from '../../src/statistics/fitting/log.js'
import { refits } from '../../src/statistics/fitting/refit.js'
import type { Sample, Seen } from '../../src/statistics/fitting/sample.js'
import { spansOf } from '../../src/statistics/fitting/shown.js'

const random = (purpose: string): Stream => {
  const stream = new Stream('test', purpose)
  stream.begin('goodness', 0)
  return stream
}

const sampleOf = (seen: readonly Seen[], from = 0, counts = seen.map(() => 1)): Sample => ({
  seen,
  counts,
  from,
})

/** Exponential with the median 1: half of the times are over 1, a quarter over 2. */
const halving: FittedLaw = { family: 'exponential', mean: 1 / Math.LN2 }
const distance = (sample: Sample, law: FittedLaw = halving) =>
  distanceOf(placed(spansOf(sample, distributionOf(law)), sample.counts))

const near = (value: number, digits = 10) => expect.closeTo(value, digits)

describe('distances by hand', () => {
  it('one time at the median: D 1/2, A^2 = -1 - 2 ln 1/2', () => {
    expect(distance(sampleOf([{ at: 1 }]))).toEqual({ largest: near(0.5), weighted: near(2 * Math.LN2 - 1) })
  })

  it('times at 1/4 and 3/4: D 1/4, and the sum of Anderson & Darling', () => {
    const [first, second] = [Math.log2(4 / 3), 2]
    // -2 - (1/2) (1 (ln 1/4 + ln 1/4) + 3 (ln 3/4 + ln 3/4))
    expect(distance(sampleOf([{ at: first }, { at: second }]))).toEqual({
      largest: near(0.25),
      weighted: near(-2 - Math.log(1 / 4) - 3 * Math.log(3 / 4)),
    })
  })

  it('all cut off at the median: what is seen lies below by 1/2 there, 2 (ln 2 - 1/2) in all', () => {
    expect(distance(sampleOf([{ over: 1 }]))).toEqual({
      largest: near(0.5),
      weighted: near(2 * Math.LN2 - 1),
    })
  })

  it('one below the median, one over it, one cut off at once: nothing', () => {
    const rounded = sampleOf([{ between: [0, 1] }, { between: [1, Infinity] }, { over: 0 }])
    expect(distance(rounded)).toEqual({ largest: near(0), weighted: near(0) })
  })

  it('two of three below the median: g = u / 3 up to it and (1 - u) / 3 beyond, 3 x 2 / 9 (ln 2 - 1/2)', () => {
    const rounded = sampleOf([{ between: [0, 1] }, { between: [1, 2 ** 60] }], 0, [2, 1])
    expect(distance(rounded)).toEqual({ largest: near(1 / 6), weighted: near((2 / 3) * (Math.LN2 - 0.5)) })
  })

  it('shorter ones missing: from the median on all is as if it began there', () => {
    const [whole, cut] = [sampleOf([{ at: 0.3 }, { over: 1.4 }, { between: [1, 2] }]), 1]
    const moved = sampleOf([{ at: 1.3 }, { over: 2.4 }, { between: [2, 3] }], cut)
    const { largest, weighted } = distance(whole)
    expect(distance(moved)).toEqual({ largest: near(largest), weighted: near(weighted) })
  })

  it('far out in the tail there are digits left: one time of 1000 medians', () => {
    expect(distance(sampleOf([{ at: 1000 }])).weighted).toBeCloseTo(1000 * Math.LN2 - 1, 8)
  })

  it('alike times may stand once or often', () => {
    const often = sampleOf([
      { at: 2 },
      { clocked: 3, grain: 1 },
      { at: 2 },
      { clocked: 3, grain: 1 },
      { over: 1 },
    ])
    const once = sampleOf([{ clocked: 3, grain: 1 }, { at: 2 }, { over: 1 }], 0, [2, 2, 1])
    const { largest, weighted } = distance(often)
    expect(distance(once)).toEqual({ largest: near(largest), weighted: near(weighted) })
  })
})

describe('what a clock shows', () => {
  it('of exponential times: at most 0 in the mean of F over a grain, 1 - (1 - 2^-g) / (g ln 2)', () => {
    for (const grain of [0.001, 1, 7]) {
      const [{ low, high }] = spansOf(sampleOf([{ clocked: 0, grain }]), distributionOf(halving)) as [never]
      expect(low).toEqual({ below: 0, above: 1 })
      const above = -Math.expm1(-grain * Math.LN2) / (grain * Math.LN2)
      expect((high as { above: number }).above).toBeCloseTo(above, 10)
      expect((high as { below: number }).below).toBeCloseTo(1 - above, 10)
    }
  })

  it('readings follow each other without a gap, whatever the law, and the first begins where the log does', () => {
    const laws: FittedLaw[] = [
      { family: 'weibull', shape: 0.8, scale: 100 },
      { family: 'gamma', shape: 3, scale: 50 },
      { family: 'lognormal', location: 5, spread: 1 },
    ]
    for (const law of laws) {
      const seen = Array.from({ length: 200 }, (_, index) => ({ clocked: index * 60, grain: 60 }))
      const spans = spansOf(sampleOf(seen, 45), distributionOf(law))
      expect(spans[0]!.low.below).toBe(0)
      for (const [index, { low, high }] of spans.entries()) {
        expect(high.below).toBeGreaterThanOrEqual(low.below)
        expect(high.below + high.above).toBeCloseTo(1, 12)
        if (index > 0) expect(low.below).toBeCloseTo(spans[index - 1]!.high.below, 12)
      }
      expect(spans.at(-1)!.high.above).toBeLessThan(0.001)
    }
  })

  it('is what readings of drawn times come to', () => {
    const law: FittedLaw = { family: 'lognormal', location: 5, spread: 0.9 }
    const log: Log = {
      n: 40_000,
      from: 45,
      clocks: { what: [{ kind: 'clocked', grain: 60 }], upTo: [1] },
      cuts: null,
    }
    const drawn = drawLog(log, law, random('readings'))
    const { largest } = distance(drawn, law)
    // Kolmogorov: beyond 1.95 / sqrt n once in a thousand; of rounded times less
    expect(largest).toBeLessThan(1.95 / Math.sqrt(log.n))
  })
})

describe('quantiles of places', () => {
  it('of two exact times jump in the middle; of a rounded one they lie on a line', () => {
    const two = placed(
      spansOf(sampleOf([{ at: Math.log2(4 / 3) }, { at: 2 }]), distributionOf(halving)),
      [1, 1],
    )
    expect([0.1, 0.49, 0.51, 0.9].map((p) => quantileOf(two, p))).toEqual(
      [0.25, 0.25, 0.75, 0.75].map((u) => near(u)),
    )
    const one = placed(spansOf(sampleOf([{ between: [0, 1] }]), distributionOf(halving)), [1])
    expect(quantileOf(one, 0.3)).toBeCloseTo(0.15, 12)
  })
})

describe('the size of a misfit', () => {
  it('of the law itself it is small; of a mean twice too long the quantiles are half too long', () => {
    const law: FittedLaw = { family: 'exponential', mean: 100 }
    const even = sampleOf(
      Array.from({ length: 2000 }, (_, index) => ({
        at: distributionOf(law).quantile((index + 0.5) / 2000),
      })),
    )
    expect(misfitOf(even, distributionOf(law)).quantiles).toBeLessThan(0.01)
    const { quantiles, means } = misfitOf(even, distributionOf({ family: 'exponential', mean: 200 }))
    // largest at 95 %: ln 20 x (200 - 100) / 200
    expect(quantiles).toBeCloseTo(Math.log(20) / 2, 2)
    expect(means!.law).toBeCloseTo(200, 9)
    expect(Math.abs(means!.log / 100 - 1)).toBeLessThan(0.001)
    expect(means!.error).toBeCloseTo(100 / Math.sqrt(2000), 1)
  })

  it('means are of what the log shows: times over 50 of an exponential law are 50 longer', () => {
    const law = distributionOf({ family: 'exponential', mean: 100 })
    expect(misfitOf(sampleOf([{ at: 60 }, { clocked: 180, grain: 60 }], 50), law).means).toEqual({
      law: near(150),
      log: 120,
      error: near(60),
    })
  })

  it('where times were cut off their mean is not known', () => {
    expect(misfitOf(sampleOf([{ at: 60 }, { over: 80 }]), distributionOf(halving)).means).toBeNull()
    expect(misfitOf(sampleOf([{ between: [60, Infinity] }]), distributionOf(halving)).means).toBeNull()
  })
})

describe('another log like it', () => {
  const law: FittedLaw = { family: 'exponential', mean: 100 }

  it('has as many times, as exact and from the same length on', () => {
    const sample = sampleOf([{ at: 60 }, { at: 70 }, { at: 90 }], 50, [1, 2, 3])
    expect(logOf(sample)).toEqual({
      n: 6,
      from: 50,
      clocks: { what: [{ kind: 'exact' }], upTo: [1] },
      cuts: null,
    })
    const drawn = drawLog(logOf(sample), law, random('exact'))
    expect(drawn.counts.reduce((sum, count) => sum + count)).toBe(6)
    for (const seen of drawn.seen) expect((seen as { at: number }).at).toBeGreaterThanOrEqual(50)
  })

  it('reads with each clock as often: whole minutes twice, seconds once, and to the next 10 s', () => {
    const sample = sampleOf(
      [
        { clocked: 60, grain: 60 },
        { clocked: 0, grain: 60 },
        { clocked: 7, grain: 1 },
        { between: [0, 5] },
        { between: [25, 35] },
      ],
      0,
    )
    expect(logOf(sample).clocks).toEqual({
      what: [
        { kind: 'clocked', grain: 60 },
        { kind: 'clocked', grain: 1 },
        // a 0 that was rounded is of the same ruler as the 30
        { kind: 'ruler', width: 10, mark: 5 },
      ],
      upTo: [0.4, near(0.6), 1],
    })
    for (const seen of drawLog({ ...logOf(sample), n: 200 }, law, random('clocks')).seen) {
      if ('clocked' in seen) expect(seen.clocked % seen.grain).toBe(0)
      else {
        const [low, high] = (seen as { between: readonly [number, number] }).between
        expect(low === 0 || low % 10 === 5).toBe(true)
        expect(high % 10).toBe(5)
      }
    }
  })

  it('cuts off as Kaplan and Meier have it: at the end of a test all', () => {
    const test = sampleOf([{ at: 60 }, { at: 70 }, { over: 100 }], 0, [1, 2, 3])
    expect(logOf(test).cuts).toEqual({ what: [100, Infinity], upTo: [1, 1] })
    // of four at risk one is cut off at 10; of the two left at 30 one: 1/4, then 3/4 x 1/2
    const mixed = sampleOf([{ over: 10 }, { at: 20 }, { over: 30 }, { at: 40 }])
    expect(logOf(mixed).cuts).toEqual({ what: [10, 30, Infinity], upTo: [0.25, near(0.625), 1] })
    const drawn = drawLog({ ...logOf(mixed), n: 1000 }, law, random('cuts'))
    // 1/4 of the times that are over 10
    const atTen = drawn.counts[drawn.seen.findIndex((seen) => 'over' in seen && seen.over === 10)]!
    const expected = 250 * Math.exp(-0.1)
    expect(Math.abs(atTen - expected)).toBeLessThan(4 * Math.sqrt(expected))
  })

  it('draws each law: the shares over some times, those not over 50 missing', () => {
    const lognormal = { family: 'lognormal', location: 4, spread: 0.5 } as const
    const laws: FittedLaw[] = [
      law,
      { family: 'weibull', shape: 2, scale: 100 },
      { family: 'gamma', shape: 3, scale: 30 },
      lognormal,
      { family: 'mixture', share: 0.7, first: lognormal, second: { ...lognormal, location: 6 } },
    ]
    const log: Log = { n: 4000, from: 50, clocks: { what: [{ kind: 'exact' }], upTo: [1] }, cuts: null }
    for (const each of laws) {
      const { largest } = distance(drawLog(log, each, random('laws')), each)
      expect(largest, each.family).toBeLessThan(1.95 / Math.sqrt(4000))
    }
  })
})

describe('fits that begin near their end', () => {
  const logs: Record<string, Omit<Log, 'n'>> = {
    exact: { from: 0, clocks: { what: [{ kind: 'exact' }], upTo: [1] }, cuts: null },
    'whole minutes, half a minute and more': {
      from: 30,
      clocks: { what: [{ kind: 'clocked', grain: 60 }], upTo: [1] },
      cuts: null,
    },
    'cut off': {
      from: 0,
      clocks: { what: [{ kind: 'exact' }], upTo: [1] },
      cuts: { what: [100, 300, Infinity], upTo: [0.2, 0.6, 1] },
    },
  }
  const laws: FittedLaw[] = [
    { family: 'exponential', mean: 200 },
    { family: 'weibull', shape: 1.5, scale: 200 },
    { family: 'gamma', shape: 2.5, scale: 80 },
    { family: 'lognormal', location: 5, spread: 0.8 },
  ]
  for (const [name, log] of Object.entries(logs))
    it(`are those of the long way, within a thirtieth of a standard error: ${name}`, () => {
      const stream = random('refits')
      for (const law of laws) {
        const first = drawLog({ ...log, n: 60 }, law, stream)
        const begin = fitOf(first, law.family as (typeof families)[number])
        if ('why' in begin) throw new Error(begin.why)
        const refit = refits(begin.law, first)
        for (let round = 0; round < 5; round++) {
          const drawn = drawLog(logOf(first), begin.law, stream)
          const long = fitOf(drawn, law.family as (typeof families)[number])
          const short = refit(drawn)
          if ('why' in long) {
            expect(short).toBeNull()
            continue
          }
          for (const { name: parameter, value, se } of long.parameters)
            expect(
              Math.abs((short as unknown as Record<string, number>)[parameter]! - value) / se,
              `${law.family} ${parameter}`,
            ).toBeLessThan(1 / 30)
        }
      }
    })

  it('of a mixture lead to a top of the likelihood too', () => {
    const law: FittedLaw = {
      family: 'mixture',
      share: 0.7,
      first: { family: 'lognormal', location: 4, spread: 0.5 },
      second: { family: 'lognormal', location: 6, spread: 0.4 },
    }
    const stream = random('mixture')
    const log: Log = { n: 200, from: 0, clocks: { what: [{ kind: 'exact' }], upTo: [1] }, cuts: null }
    const sample = drawLog(log, law, stream)
    const found = refits(law, sample)(sample)!
    const { weighted } = distance(sample, found)
    // the 5 % point of A^2 of a normal law with both parameters estimated is 0.75, and this has three more
    expect(weighted).toBeLessThan(0.75)
  })
})

describe('the test', () => {
  it('refuses what does not fit, and not what does', () => {
    const law: FittedLaw = { family: 'lognormal', location: 5, spread: 0.5 }
    const log: Log = {
      n: 300,
      from: 60,
      clocks: { what: [{ kind: 'clocked', grain: 60 }], upTo: [1] },
      cuts: { what: [240, Infinity], upTo: [0.1, 1] },
    }
    const stream = random('refuses')
    const sample = drawLog(log, law, stream)
    const p = Object.fromEntries(
      families.map((family) => {
        const found = fitOf(sample, family)
        if ('why' in found) throw new Error(found.why)
        return [family, goodness(sample, found.law, stream)!.weightedGap.pValue]
      }),
    )
    expect(p.exponential).toBe(1 / 200)
    expect(p.weibull).toBeLessThanOrEqual(0.05)
    expect(p.lognormal).toBeGreaterThan(0.05)
  })

  it('of many times takes some by lot, and says how many', () => {
    const law: FittedLaw = { family: 'exponential', mean: 300 }
    const log: Log = {
      n: 100_000,
      from: 0,
      clocks: { what: [{ kind: 'clocked', grain: 60 }], upTo: [1] },
      cuts: null,
    }
    const stream = random('many')
    const found = goodness(drawLog(log, law, stream), law, stream, { most: 19, enough: 20 })!
    expect(found.tested).toBe(mostTested)
    expect(found.bootstraps).toBe(19)
    expect(found.misfit.means!.error).toBeCloseTo(300 / Math.sqrt(100_000), 1)
  })

  it('is the same again with the same stream', () => {
    const sample = sampleOf([3, 5, 9, 14, 30].map((at) => ({ at })))
    const once = () => goodness(sample, { family: 'exponential', mean: 12.2 }, random('again'))
    expect(once()).toEqual(once())
  })
})
