/** A response curve over one factor: what each step brings, where the slope changes, and where a level is crossed. */
import { differenceOf } from '../../answers/difference-figure.js'
import { layoutOfParts, type Part } from '../../answers/difference-with-inputs.js'
import type { Layout } from '../../statistics/layout.js'
import { type PairedDifference, pairedDifference } from '../../statistics/paired.js'
import { perShift, type Sample } from './sample.js'

/** A comparison along a curve, its difference at any confidence on (0, 1). Places count the points from 0. */
export interface CurveComparison {
  /** `step`: a point less the one before. `onward`: the last less this one. `change`: the slope after a point less that before. */
  what: 'step' | 'onward' | 'change'
  /** The point that a step or the way to the last begins at; of a change the point where it is. */
  place: number
  at: (confidence: number) => PairedDifference
  /** What the draws of the points say of it; null without. */
  layout: Layout | null
}

/**
 * All comparisons along the points `x`, which ascend: each step, from each point but the last two to the last, and the change of slope
 * at each point inside. A change is a contrast of three designs, shift by shift, in the measure's unit over that of x;
 * its interval is Student's, of shares too. `draws`: of each point those of its inputs.
 */
export function curveComparisons(
  x: readonly number[],
  samples: readonly Sample[],
  draws: readonly Part['draws'][] = [],
): CurveComparison[] {
  const last = x.length - 1
  const comparisons: CurveComparison[] = []
  /** `times`: factors of the points in it, by their places. */
  const add = (
    { what, place, at }: Omit<CurveComparison, 'layout'>,
    ...times: readonly (readonly [point: number, factor: number])[]
  ) => {
    const parts = times.map(([point, factor]) => ({ times: factor, draws: draws[point] ?? [] }))
    comparisons.push({ what, place, at, layout: layoutOfParts(parts) })
  }
  const less = (what: 'step' | 'onward', of: number, place: number) =>
    add(
      { what, place, at: (confidence) => differenceOf(samples[of]!, samples[place]!, confidence) },
      [of, 1],
      [place, -1],
    )
  for (let place = 0; place < last; place++) less('step', place + 1, place)
  for (let place = 0; place < last - 1; place++) less('onward', last, place)
  const rows = samples.map(perShift)
  const slopes = rows
    .slice(1)
    .map((row, place) =>
      row.map((value, shift) => (value - rows[place]![shift]!) / (x[place + 1]! - x[place]!)),
    )
  for (let place = 1; place < last; place++) {
    const [before, after] = [1 / (x[place]! - x[place - 1]!), 1 / (x[place + 1]! - x[place]!)]
    add(
      {
        ...{ what: 'change', place },
        at: (confidence) => pairedDifference(slopes[place - 1]!, slopes[place]!, confidence),
      },
      [place + 1, after],
      [place, -after - before],
      [place - 1, before],
    )
  }
  return comparisons
}

/** The place of the largest change of slope among those that are shown; null where none is. */
export function kneeOf(
  changes: readonly { place: number; mean: number | null; isShown: boolean }[],
): number | null {
  const shown = changes.filter(({ isShown, mean }) => isShown && mean !== null)
  if (shown.length === 0) return null
  return shown.reduce((most, each) => (Math.abs(each.mean!) > Math.abs(most.mean!) ? each : most)).place
}

/**
 * The first point from which on nothing more is shown: neither from it nor from any later one to the last, nor by a step between
 * them. Null where the last step is shown still.
 */
export function enoughOf(
  points: number,
  comparisons: readonly { what: CurveComparison['what']; place: number; isShown: boolean }[],
): number | null {
  const lastShown = comparisons
    .filter(({ what, isShown }) => what !== 'change' && isShown)
    .reduce((most, { place }) => Math.max(most, place), -1)
  return lastShown + 1 < points - 1 ? lastShown + 1 : null
}

/** Where a curve of straight pieces meets a level. */
export interface Crossing {
  level: number
  /** Interpolated between the points `from` and `from + 1`, in the unit of x. */
  at: number
  from: number
  rises: boolean
}

/** Every crossing of `level` by the points (x, y) joined by straight lines; a point that is not known (NaN) parts the line. */
export function crossings(x: readonly number[], y: readonly number[], level: number): Crossing[] {
  return x.slice(1).flatMap((_, from) => {
    const [before, after] = [y[from]! - level, y[from + 1]! - level]
    // a point on the level belongs to the side above it, so that it is crossed once
    const isCrossed = before < 0 !== after < 0 && !Number.isNaN(before + after)
    if (!isCrossed) return []
    const at = x[from]! + ((x[from + 1]! - x[from]!) * before) / (before - after)
    return [{ level, at, from, rises: before < 0 }]
  })
}
