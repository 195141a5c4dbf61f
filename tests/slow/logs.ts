/** Logs drawn from known laws, as a plant would write them, and what fits say of them. */
import { expect } from 'vitest'
import { Stream } from '../../src/engine/stream.js'
import type { Fit, Unfitted } from '../../src/statistics/fitting/fit.js'
import { distributionOf, type FittedLaw, type SimpleLaw } from '../../src/statistics/fitting/law.js'
import type { Sample, Seen } from '../../src/statistics/fitting/sample.js'

/** Stops of one to three minutes, as even and as uneven as they come. */
export const truths: SimpleLaw[] = [
  { family: 'exponential', mean: 120 },
  { family: 'weibull', shape: 1.3, scale: 130 },
  { family: 'weibull', shape: 0.8, scale: 130 },
  { family: 'gamma', shape: 1.6, scale: 75 },
  { family: 'gamma', shape: 0.8, scale: 150 },
  { family: 'lognormal', location: 4.54, spread: 0.7 },
  { family: 'lognormal', location: 4.54, spread: 1.1 },
]

/** Share of the stops too short to be logged, and s to which the others are read. */
export interface Clock {
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

export interface Recovered {
  /** Share of the intervals of each figure that hold the truth, of the logs that were fitted. */
  covered: Map<string, number>
  /** Middle of the estimates of each figure. */
  middle: Map<string, number>
  unfitted: number
}

/** What fits of so many logs of `n` stops say of figures whose true values are given. */
export function recover(
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

export const truthOf = (law: SimpleLaw): Map<string, number> =>
  new Map([
    ...Object.entries(law).flatMap(([name, value]) =>
      typeof value === 'number' ? [[name, value] as const] : [],
    ),
    ['mean of the law', distributionOf(law).mean],
  ])

export function expectCovered({ covered }: Recovered): void {
  for (const [name, share] of covered) {
    expect(share, name).toBeGreaterThanOrEqual(0.92)
    // a larger share is no fault of an interval with open ends, which says that little is known
    expect(share, name).toBeLessThanOrEqual(0.98)
  }
}
