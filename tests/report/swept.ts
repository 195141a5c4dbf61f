/** Small results of sweeps, made from shifts that are given by hand. */

import {
  type Factor,
  pointsOf,
  type SampledDesign,
  type SweepMeasure,
  type SweepResult,
} from '../../src/questions/sweep/document.js'
import { planOf } from '../../src/questions/sweep/effects.js'
import { curveOf, eachOf, gridOf } from '../../src/questions/sweep/kinds.js'
import type { Sample } from '../../src/questions/sweep/sample.js'

export const held: SweepMeasure = {
  name: 'target-held',
  label: 'Share of shifts that reach the target',
  unit: 'share',
}
export const rate: SweepMeasure = {
  name: 'throughput',
  label: 'Throughput of good cases',
  unit: 'cases/s',
}
export const cost: SweepMeasure = {
  name: 'cost-per-1000',
  label: 'Cost of 1000 good cases',
  unit: 'EUR per 1000 cases',
}

/** Forty shifts: `heldIn` of them hold the target; the rate in cases/min and the cost wave a little about their means. */
export function design(
  at: number[],
  heldIn: number,
  perMinute: number,
  euros: number,
  wave = 0,
): SampledDesign {
  const shifts = Array.from({ length: 40 }, (_, shift) => shift)
  const sway = (shift: number) => Math.sin(shift * 2.4 + wave) * 0.003 + Math.sin(shift) * 0.02
  const sample = (kind: Sample['kind'], values: number[]): Sample => ({
    kind,
    values,
    overs: kind === 'ratio' ? values.map(() => 1) : null,
  })
  return {
    set: {},
    at,
    samples: {
      'target-held': sample(
        'share',
        shifts.map((shift) => (shift < heldIn ? 1 : 0)),
      ),
      throughput: sample(
        'mean',
        shifts.map((shift) => (perMinute + sway(shift)) / 60),
      ),
      'cost-per-1000': sample(
        'ratio',
        shifts.map((shift) => euros + 10 * sway(shift)),
      ),
    },
  }
}

export const factor = (path: string, unit: string, values: number[], base: number | null): Factor => ({
  ...{ path, unit, values, base, minutes: null },
  si: { unit: unit === 'm' ? 'm' : 'm/s', values },
})

const measures = [held, rate, cost]
export const base = design([], 34, 9.1, 150)

/** What all kinds have in common. */
export function empty(designs: readonly SampledDesign[]): SweepResult {
  return {
    ...{ format: 'tapeshift-result/1', command: 'sweep', kind: 'curve' },
    made: {
      ...{ version: '0.1.0', node: 'v20', seed: 'chart', shifts: 40, confidence: 0.95, plain: true },
      scenario: { title: 'Chart works', sha256: 'ab'.repeat(32) },
      repeat: 'tapeshift sweep line.yaml',
    },
    display: 'metric',
    shift: { length: 28800, runOut: 0, breaks: [], campaign: 1, start: 'empty' },
    ...{ target: 9 / 60, currency: 'EUR', factors: [], measures, leftOut: [], assumed: [], notes: [] },
    base: pointsOf([base], measures, 0.95)[0]!.measures,
    points: pointsOf(designs, measures, 0.95),
    ...{ curve: null, grid: null, each: null, plan: null, shifts: 'designs.csv' },
  }
}

/** A curve that rises up to 6 m and is level from there; cheapest at 6 m. */
export function curve(): SweepResult {
  const designs = [
    design([4], 10, 8.8, 160, 1),
    design([5], 26, 9, 152, 2),
    design([6], 38, 9.2, 148, 3),
    design([7], 39, 9.2, 150, 4),
    design([8], 38, 9.2, 153, 5),
  ]
  const parts = { designs, base, measures, target: 9 / 60, confidence: 0.95, factorUnit: 'm' }
  return {
    ...empty(designs),
    factors: [
      { ...factor('line.infeed.length', 'm', [4, 5, 6, 7, 8], 7), minutes: [0.8, 0.9, 1.2, 1.4, 1.5] },
    ],
    curve: { ...curveOf(parts), byHand: null },
  }
}

/** Three lengths by three speeds. */
export function grid(): SweepResult {
  const holds = [
    [20, 32, 36],
    [30, 37, 39],
    [34, 39, 40],
  ]
  const designs = holds.flatMap((row, up) =>
    row.map((shifts, along) => design([4 + along, 10 + 2 * up], shifts, 8.6 + shifts / 60, 160 - shifts / 4)),
  )
  const factors = [
    { ...factor('line.infeed.length', 'm', [4, 5, 6], 5), minutes: [0.8, 0.9, 1.2] },
    factor('line.sealer.belt-speed', 'm/min', [10, 12, 14], 12),
  ]
  const result = { ...empty(designs), kind: 'grid' as const, factors }
  return { ...result, grid: gridOf(result.points, factors, measures) }
}

/** Three inputs: one that matters far more than the others, one that does nothing. */
export function each(): SweepResult {
  const input = (path: string, own: string, low: SampledDesign | null, high: SampledDesign | null) => ({
    ...{ path, base: own, low: low && 'less', high: high && 'more', ends: { low, high } },
  })
  const result = eachOf(
    [
      input('line.infeed.length', '7 m', design([], 33, 9.08, 150.5, 1), design([], 35, 9.12, 149.5, 2)),
      input('crew.operator.people', '1', null, design([], 34, 9.1, 210, 0.4)),
      input(
        'arrivals.packing.time-between',
        'mean 6.4 s',
        design([], 40, 10, 140, 3),
        design([], 0, 8.3, 163, 4),
      ),
      input('tape.thickness', '48 um', base, base),
    ],
    base,
    measures,
    0.95,
  )
  return { ...empty([]), kind: 'each', each: result, leftOut: [{ path: 'target', reason: 'it is no input' }] }
}

/** Eight designs of three factors, the rate a straight line of the first two. */
export function plan(): SweepResult {
  const rows = [0, 1, 2, 3, 4, 5, 6, 7].map((row) => [row / 7, ((row * 3) % 8) / 7, ((row * 5) % 8) / 7])
  const designs = rows.map(([a, b, c], index) =>
    design([4 + 4 * a!, 10 + 10 * b!, 2 + c!], 20 + index, 9 + 0.3 * a! - 0.1 * b!, 150, 0),
  )
  const factors = [
    factor('line.infeed.length', 'm', [4, 8], 7),
    factor('line.sealer.belt-speed', 'm/min', [10, 20], 12),
    factor('line.outfeed.length', 'm', [2, 3], 5),
  ]
  const result = { ...empty(designs), kind: 'plan' as const, factors }
  const plan = planOf(result.points, designs, factors, measures, 0.95)
  return { ...result, plan }
}
