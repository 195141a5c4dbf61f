/** A small result of a sizing, worked out by hand: nine designs of two choices, of which five were simulated. */

import type { JudgedAfresh, SizedDesign, SizeResult } from '../../src/questions/size/document.js'
import type { Shown } from '../../src/questions/size/promise-figure.js'
import { result as compared, figure, hostile } from './compared.js'

/** A design with a share of shifts that keep the promise, without an interval, as after a test; not simulated where that is null. */
export function sized(
  place: number,
  set: Record<string, unknown>,
  cost: number | null,
  share: number | null,
  verdict: SizedDesign['verdict'],
  without: string | null = null,
): SizedDesign {
  return {
    ...{ place, set, cost, verdict, without, promises: [{ mean: share, low: null, high: null }] },
    ...{ share, low: null, high: null, shifts: share === null ? 0 : 100 },
  }
}

/** A design on 200 fresh shifts, its share give or take 3 points; its palletiser has least to spare, its sealer loses cases. */
export function afresh(share: number, shown: Shown): JudgedAfresh {
  const state = (mean: number, label: string) => ({ ...figure(mean, 'share', label), low: mean, high: mean })
  const step = (key: string, label: string, of: number) => ({
    ...{ key, label, share: of, cases: figure(1000 * of, 'cases', label) },
  })
  return {
    ...{ firstShift: 2001, shifts: 200, bottleneck: 'palletiser' },
    promises: [{ mean: share, low: share - 0.03, high: share + 0.03, shown }],
    measures: {
      throughput: { ...figure(0.15, 'cases/s'), low: 0.149, high: 0.151 },
      output: { ...figure(3800, 'cases'), low: 3790, high: 3810 },
    },
    ...{ costLeftOut: [], arrivals: {}, crew: {}, outputs: [], held: [] },
    equipment: {
      palletiser: {
        ...{ type: 'station', measures: {} },
        states: {
          working: state(0.72, 'palletiser: working'),
          waiting: state(0.28, 'palletiser: starved'),
          'on-break': state(0, 'palletiser: on break'),
        },
      },
    },
    losses: {
      machines: [
        {
          ...{ machine: 'sealer', type: 'sealer', rate: 0.2, how: '', could: 1000, isFollowed: false },
          losses: [
            step('waiting', 'starved', 0.1),
            step('blocked', 'blocked', 0.2),
            step('gaps', 'wide gaps', 0.0004),
          ],
          leaves: figure(700, 'cases'),
        },
      ],
      line: [],
      output: figure(700, 'cases'),
    },
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
      ...{ measure: 'throughput', label: 'Throughput of good cases', unit: 'share' },
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
    sized(1, of(4, 10), 100, null, 'refused', 'the target is above the capacity of a piece'),
    sized(2, of(4, 20), 100, 0.4, 'refused'),
    sized(3, of(4, 30), 100, 0.6, 'refused'),
    sized(4, of(6, 10), 101, null, 'refused', 'no better than design 7, which was rejected'),
    sized(5, of(6, 20), 101, 0.9, 'undecided'),
    sized(6, of(6, 30), 101, 0.94, 'accepted'),
    sized(7, of(8, 10), 102, 0.7, 'refused'),
  ],
  pick: 5,
  nextCheaper: 2,
  spent: { designs: 5, shifts: 500 },
  rising: ['line.infeed.length'],
  picked: afresh(0.93, 'kept'),
  nearest: null,
  assumed: [],
  notes: [],
  shifts: 'designs.csv',
}

/** The same without the one that holds: the undecided one is nearest. */
export const undecidedResult: SizeResult = {
  ...sizedResult,
  designs: sizedResult.designs.filter(({ verdict }) => verdict !== 'accepted'),
  ...{ pick: null, nextCheaper: null, picked: null },
  nearest: {
    ...{ design: 4, afresh: afresh(0.89, 'open'), byHand: null },
    atEnds: [],
  },
}

/** And without that one: one that was refused, at the end of two choices. */
export const refusedResult: SizeResult = {
  ...undecidedResult,
  designs: undecidedResult.designs.filter(({ verdict }) => verdict === 'refused'),
  nearest: {
    ...{ design: 4, afresh: afresh(0.72, 'missed'), byHand: null },
    atEnds: [
      { path: 'line.infeed.length', value: '8 m', end: 'largest' },
      { path: 'line.sealer.belt-speed', value: '10 m/min', end: 'smallest' },
    ],
  },
}

/** All ruled out by hand. */
export const ruledOutResult: SizeResult = {
  ...undecidedResult,
  designs: [sizedResult.designs[0]!],
  spent: { designs: 0, shifts: 0 },
  nearest: {
    ...{ design: 0, afresh: null, atEnds: [] },
    byHand: {
      ...{ atMost: 0.125, promised: 0.15, path: 'line.sealer.belt-speed' },
      message: '`sealer` passes 7.5 cases/min at most: the target of 9 cases/min cannot be reached.',
      fix: 'faster belts',
    },
  },
}
