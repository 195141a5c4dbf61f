/**
 * The two-way layout: draws of the inputs x shifts on common random numbers. What the draws differ by is what is not known of the
 * inputs, once what chance leaves in each draw is taken off. Scheffé, The Analysis of Variance (1959), ch. 7, one observation a cell
 * (from memory); for simulations Barton & Schruben, Proceedings of the Winter Simulation Conference (2001) 372-378.
 */

import { mean, quantile, sampleVariance } from 'simple-statistics'
import { exp, ln } from '../engine/logarithms.js'
import { leastDraws } from '../scenario/limits.js'
import type { Observations } from './estimate.js'

export interface Layout {
  /** What each draw comes to: the means of its rows. */
  means: readonly number[]
  /** Shifts of a draw. */
  shifts: number
  /** Mean squares: of the draws, `shifts` times the variance of their means; of what is left in a cell. */
  ofDraws: number
  ofRest: number
  /** Variance of the true means of the draws: what is not known of the inputs alone. */
  inputs: number
}

/** Of rows of as many numbers each, at least two draws of at least two shifts. */
export function layoutOf(rows: readonly (readonly number[])[]): Layout {
  const shifts = rows[0]!.length
  const means = rows.map((row) => mean(row as number[]))
  const all = mean(means)
  const ofShifts = Array.from({ length: shifts }, (_, shift) => mean(rows.map((row) => row[shift]!)))
  let squares = 0
  for (const [draw, row] of rows.entries())
    for (const [shift, value] of row.entries())
      squares += (value - means[draw]! - ofShifts[shift]! + all) ** 2
  const ofDraws = shifts * sampleVariance(means)
  const ofRest = squares / ((rows.length - 1) * (shifts - 1))
  return { means, shifts, ofDraws, ofRest, inputs: Math.max(0, (ofDraws - ofRest) / shifts) }
}

/**
 * Draws of which only one number each is known, such as a quantile over their shifts: all that they differ by counts as inputs, so that it is
 * rather too much than too little.
 */
export function layoutOfMeans(means: readonly number[], shifts: number): Layout {
  const inputs = sampleVariance(means as number[])
  return { means, shifts, ofDraws: shifts * inputs, ofRest: 0, inputs }
}

/** In which scale a figure is as good as normal: shares of shifts on the logit, mean times of events as the rate of these. */
export type Scale = 'itself' | 'logit' | 'one over it'

export const scaleOf = ({
  kind,
  isTimeOfEvents = false,
}: Pick<Observations, 'kind' | 'isTimeOfEvents'>): Scale =>
  kind === 'share' ? 'logit' : isTimeOfEvents ? 'one over it' : 'itself'

interface There {
  to(figure: number): number
  back(value: number): number
  /** Of an estimate over `n` shifts. */
  ofEstimate(mean: number, n: number): number
}

const scales: Readonly<Record<Scale, There>> = {
  itself: { to: (figure) => figure, back: (value) => value, ofEstimate: (mean) => mean },
  logit: {
    to: (share) => ln(share / (1 - share)),
    back: (value) => 1 / (1 + exp(-value)),
    ofEstimate: (mean, n) => logitOf(mean * n, n),
  },
  'one over it': { to: (figure) => 1 / figure, back: (value) => 1 / value, ofEstimate: (mean) => 1 / mean },
}

/** A figure in its scale. */
export const toScale = (figure: number, scale: Scale): number => scales[scale].to(figure)

/** The figure that a value of a scale stands for. */
export const figureOfScale = (value: number, scale: Scale): number => scales[scale].back(value)

/** The other way round, of an estimate over `n` shifts. */
export const inScale = (mean: number, n: number, scale: Scale): number => scales[scale].ofEstimate(mean, n)

/**
 * A draw as a row of the layout, in its scale: what its shifts bring, of which the mean is its estimate. Ratios are linearised about their own,
 * as the estimate of a study is; null where none of its shifts says anything.
 */
export function rowOf(observed: Observations): readonly number[] | null {
  const { values, overs } = observed
  switch (scaleOf(observed)) {
    case 'logit':
      return logitRow(values)
    case 'one over it':
      return ratioRow(overs!, values)
    case 'itself':
      if (overs !== null) return ratioRow(values, overs)
      // a shift that says nothing takes no part: a ratio over those that do
      return values.some(Number.isNaN)
        ? ratioRow(
            values.map((value) => (Number.isNaN(value) ? 0 : value)),
            values.map((value) => (Number.isNaN(value) ? 0 : 1)),
          )
        : values
  }
}

function ratioRow(values: readonly number[], overs: readonly number[]): readonly number[] | null {
  const over = mean(overs as number[])
  if (over === 0) return null
  const ratio = mean(values as number[]) / over
  return values.map((value, shift) => ratio + (value - ratio * overs[shift]!) / over)
}

/** Half a shift more on each side keeps shares of none and of all finite. Cox, The Analysis of Binary Data (1970), sec. 3.2 (from memory). */
export const logitOf = (some: number, n: number): number => ln((some + 1 / 2) / (n - some + 1 / 2))

function logitRow(values: readonly number[]): readonly number[] {
  const n = values.length
  const some = values.reduce((sum, value) => sum + value, 0)
  const about = (some + 1 / 2) / (n + 1)
  const logit = logitOf(some, n)
  return values.map((value) => logit + (value - some / n) / (about * (1 - about)))
}

/** What the draws say of a figure, one entry a draw; null where fewer than `leastDraws` of them say something. */
export function layoutOfDraws(draws: readonly Observations[]): Layout | null {
  const rows = draws.flatMap((draw) => {
    const row = rowOf(draw)
    return row === null ? [] : [row]
  })
  return rows.length < leastDraws ? null : layoutOf(rows)
}

/** The same of the value below which the share `below` of the shifts of a draw lies. */
export function layoutOfQuantiles(draws: readonly (readonly number[])[], below: number): Layout | null {
  if (draws.length < leastDraws) return null
  return layoutOfMeans(
    draws.map((values) => quantile(values as number[], below)),
    draws[0]!.length,
  )
}
