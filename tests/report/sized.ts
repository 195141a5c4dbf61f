/** A small result of a sizing, worked out by hand: nine designs of two choices, of which five were simulated. */
import type { SizedDesign, SizeResult } from '../../src/study/size-result.js'
import { result as compared, hostile } from './compared.js'

/** A design with a share of shifts that keep the promise, give or take 5 points; not simulated where that is null. */
export function sized(
  place: number,
  set: Record<string, unknown>,
  cost: number | null,
  share: number | null,
  verdict: SizedDesign['verdict'],
  without: string | null = null,
): SizedDesign {
  const figure = {
    mean: share,
    low: share === null ? null : Math.max(0, share - 0.05),
    high: share === null ? null : Math.min(1, share + 0.05),
  }
  return {
    ...{ place, set, cost, verdict, without, promises: [figure] },
    ...{ share: figure.mean, low: figure.low, high: figure.high, shifts: share === null ? 0 : 100 },
  }
}

const of = (length: number, speed: number) => ({
  'line.infeed.length': `${length} m`,
  'line.sealer.belt-speed': `${speed} m/min`,
})

export const sizedResult: SizeResult = {
  format: 'tapeshift-result/1',
  command: 'size',
  made: { ...compared.made, shifts: 2000, scenario: { ...compared.made.scenario, title: hostile } },
  display: 'metric',
  shift: compared.shift,
  currency: 'EUR',
  promises: [
    {
      promise: '9 cases/min in 90 % of shifts',
      ...{ measure: 'throughput', label: 'Good cases out', unit: 'share' },
      ...{ value: 0.9, isLeast: true, near: 0.02 },
    },
  ],
  choices: [
    { path: 'line.infeed.length', values: ['4 m', '6 m', '8 m'] },
    { path: 'line.sealer.belt-speed', values: ['10 m/min', '20 m/min', '30 m/min'] },
  ],
  all: 9,
  order: ['cost', 'fewer machines', 'slower belts', 'shorter conveyors', 'fewer people'],
  isFull: false,
  designs: [
    sized(1, of(4, 10), 100, null, 'refused', 'the target is above what a piece can do'),
    sized(2, of(4, 20), 100, 0.4, 'refused'),
    sized(3, of(4, 30), 100, 0.6, 'refused'),
    sized(4, of(6, 10), 101, null, 'refused', 'no better than design 7, which was refused'),
    sized(5, of(6, 20), 101, 0.9, 'undecided'),
    sized(6, of(6, 30), 101, 0.94, 'accepted'),
    sized(7, of(8, 10), 102, 0.7, 'refused'),
  ],
  pick: 5,
  nextCheaper: 2,
  spent: { designs: 5, shifts: 500 },
  rising: ['line.infeed.length'],
  picked: null,
  assumed: [],
  notes: [],
  shifts: 'designs.csv',
}
