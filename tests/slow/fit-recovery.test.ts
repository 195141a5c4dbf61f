/**
 * Fits recover the law that logs were drawn from: how often intervals at 95 % hold the truth, and that rounding and short stops that are missing do not
 * shift it. Of so many logs a coverage of 95 % is seen with a standard error of 0.7 % (1000) or 1.1 % (400); asked are 92 to 98 %.
 */
import { describe, expect, it } from 'vitest'
import { Stream } from '../../src/engine/stream.js'
import { type Fit, fit as fitOf, type Unfitted } from '../../src/statistics/fitting/fit.js'
import { distributionOf, type FittedLaw, type SimpleLaw } from '../../src/statistics/fitting/law.js'
import { fitMixture } from '../../src/statistics/fitting/mixture.js'
import type { Sample, Seen } from '../../src/statistics/fitting/sample.js'

/** Stops of one to three minutes, as even and as uneven as they come. */
const truths: SimpleLaw[] = [
  { family: 'exponential', mean: 120 },
  { family: 'weibull', shape: 1.3, scale: 130 },
  { family: 'weibull', shape: 0.8, scale: 130 },
  { family: 'gamma', shape: 1.6, scale: 75 },
  { family: 'gamma', shape: 0.8, scale: 150 },
  { family: 'lognormal', location: 4.54, spread: 0.7 },
  { family: 'lognormal', location: 4.54, spread: 1.1 },
]

/** Share of the stops too short to be logged, and s to which the others are read. */
interface Clock {
  missing: number
  grain: number
}

/** `n` stops as a log shows them. */
function logOf(law: FittedLaw, n: number, stream: Stream, { missing, grain }: Clock): Sample {
  const truth = distributionOf(law)
  const times = Array.from({ length: n }, () => truth.quantile(missing + (1 - missing) * stream.next()))
  const from = missing === 0 ? 0 : truth.quantile(missing)
  if (grain === 0) return { seen: times.map((at) => ({ at })), counts: times.map(() => 1), from }
  const counts = new Map<number, number>()
  for (const time of times) {
    const read = grain * Math.floor(stream.next() + time / grain)
    counts.set(read, (counts.get(read) ?? 0) + 1)
  }
  return {
    seen: [...counts.keys()].map((clocked): Seen => ({ clocked, grain })),
    counts: [...counts.values()],
    from,
  }
}

interface Recovered {
  /** Share of the intervals of each figure that hold the truth, of the logs that were fitted. */
  covered: Map<string, number>
  /** Middle of the estimates of each figure. */
  middle: Map<string, number>
  unfitted: number
}

/** What fits of so many logs of `n` stops say of figures whose true values are given. */
function recover(
  law: FittedLaw,
  truth: ReadonlyMap<string, number>,
  { logs, n, clock }: { logs: number; n: number; clock: Clock },
  fitted: (sample: Sample) => Fit | Unfitted,
): Recovered {
  const stream = new Stream('log', law.family)
  stream.begin('recovery', n)
  const held = new Map<string, number>()
  const values = new Map<string, number[]>()
  let unfitted = 0
  for (let log = 0; log < logs; log++) {
    const found = fitted(logOf(law, n, stream, clock))
    if ('why' in found) {
      unfitted++
      continue
    }
    for (const { name, value, low, high } of [
      ...found.parameters,
      { name: 'mean of the law', ...found.mean },
    ]) {
      const at = truth.get(name)!
      held.set(name, (held.get(name) ?? 0) + (low <= at && at <= high ? 1 : 0))
      values.set(name, [...(values.get(name) ?? []), value])
    }
  }
  const covered = new Map([...held].map(([name, count]) => [name, count / (logs - unfitted)]))
  const middle = new Map(
    [...values].map(([name, all]) => [name, all.sort((a, b) => a - b)[all.length >> 1]!]),
  )
  const shares = [...covered].map(([name, share]) => `${name} ${(100 * share).toFixed(1)} %`)
  console.log(`${JSON.stringify(law)} n ${n}: ${shares.join(', ')}; ${unfitted} of ${logs} not fitted`)
  return { covered, middle, unfitted }
}

const truthOf = (law: SimpleLaw): Map<string, number> =>
  new Map([
    ...Object.entries(law).flatMap(([name, value]) =>
      typeof value === 'number' ? [[name, value] as const] : [],
    ),
    ['mean of the law', distributionOf(law).mean],
  ])

function expectCovered({ covered }: Recovered): void {
  for (const [name, share] of covered) {
    expect(share, name).toBeGreaterThanOrEqual(0.92)
    // a larger share is no fault of an interval with open ends, which says that little is known
    expect(share, name).toBeLessThanOrEqual(0.98)
  }
}

describe('complete logs', () => {
  const clock = { missing: 0, grain: 0 }

  it.each(truths.flatMap((law) => [20, 50, 200].map((n) => [law.family, n, law] as const)))(
    '%s, %d stops: parameters and mean',
    (family, n, law) => {
      const found = recover(law, truthOf(law), { logs: 1000, n, clock }, (sample) => fitOf(sample, family))
      expect(found.unfitted).toBe(0)
      expectCovered(found)
    },
  )
})

describe('logs to the minute without the shortest 30 % of the stops', () => {
  const clock = { missing: 0.3, grain: 60 }

  it.each(truths.flatMap((law) => [20, 50, 200].map((n) => [law.family, n, law] as const)))(
    '%s, %d stops: parameters and mean',
    (family, n, law) => {
      const found = recover(law, truthOf(law), { logs: 400, n, clock }, (sample) => fitOf(sample, family))
      // a few logs of 20 look like those of a law at the edge of its family, which is said
      expect(found.unfitted).toBeLessThanOrEqual(n < 200 ? 40 : 4)
      expectCovered(found)
      // half of the estimates are above the truth: of 200 stops the middle one is off by little
      if (n < 200) return
      const mean = found.middle.get('mean of the law')! / distributionOf(law).mean
      expect(mean).toBeGreaterThan(0.93)
      expect(mean).toBeLessThan(1.07)
    },
  )
})

describe('two parts', () => {
  const law: FittedLaw = {
    family: 'mixture',
    share: 0.75,
    first: { family: 'lognormal', location: 4, spread: 0.5 },
    second: { family: 'lognormal', location: 6.5, spread: 0.6 },
  }
  const truth = new Map([
    ['share', 0.75],
    ['first.location', 4],
    ['first.spread', 0.5],
    ['second.location', 6.5],
    ['second.spread', 0.6],
    ['mean of the law', distributionOf(law).mean],
  ])

  it.each([
    ['complete', { missing: 0, grain: 0 }],
    ['to the minute', { missing: 0, grain: 60 }],
    ['to the minute without the shortest 10 %', { missing: 0.1, grain: 60 }],
  ])('%s, 200 stops', (_, clock) => {
    const found = recover(law, truth, { logs: 200, n: 200, clock }, (sample) => fitMixture(sample))
    expect(found.unfitted).toBeLessThanOrEqual(10)
    // intervals by curvature, and 1.5 % of luck with 200 logs: four of these below 95 %
    for (const [name, share] of found.covered) expect(share, name).toBeGreaterThanOrEqual(0.89)
  })
})
