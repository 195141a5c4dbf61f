/**
 * What each input adds to what is not known of a figure: first-order shares of the variance over draws, by regression on the ranks of the
 * inputs. Saltelli et al., Global Sensitivity Analysis (2008), sec. 1.2 (from memory), for regression and shares of first order.
 */
import { mean } from 'simple-statistics'
import { standardNormal } from './quantile.js'
import { regression } from './regression.js'

export interface Contributions {
  /** Of each input, 0 to 1 of the variance of the figures. */
  shares: number[]
  /** Their sum: what straight lines in the scores of the inputs explain, what that many would by chance taken off (adjusted R^2); 0 at least. */
  explained: number
  /** Of each input, what a step of 1 of its normal score brings, the others alike; 0 of one that never changes. */
  slopes: number[]
}

/** Draws for each input, one more for all: of fewer the shares are mostly chance. Project rule. */
const drawsPerInput = 2

/**
 * Shares of the inputs in the variance of the figures, one entry a draw; null where the draws are too few for so many
 * inputs. Ranks are taken as normal scores (Blom), so that inputs that spread evenly, lopsided, or far are explained alike. A share is the slope
 * times the correlation, in standard deviations, of which the sum is R^2 (Pratt 1987, from memory), less what an input without effect has by chance.
 */
export function contributionsOf(
  inputs: readonly (readonly number[])[],
  figures: readonly number[],
): Contributions | null {
  const draws = figures.length
  const scores = (inputs[0] ?? []).map((_, input) => scoresOf(inputs.map((row) => row[input]!)))
  // what never changes says nothing
  const moving = scores.flatMap((column, input) =>
    column.some((score) => score !== column[0]) ? [input] : [],
  )
  if (draws < drawsPerInput * (moving.length + 1)) return null
  const fit = regression(
    figures.map((_, draw) => moving.map((input) => scores[input]![draw]!)),
    figures,
    0.95,
  )
  if (fit === null) return null
  if (Number.isNaN(fit.explained))
    return { shares: scores.map(() => 0), explained: 0, slopes: scores.map(() => 0) }
  const byChance = (1 - fit.explained) / fit.degreesOfFreedom
  const shares = scores.map(() => 0)
  const slopes = scores.map(() => 0)
  for (const [place, input] of moving.entries()) {
    const along = fit.slopes[place]!.standardised * correlation(scores[input]!, figures)
    shares[input] = Math.max(0, along - byChance)
    slopes[input] = fit.slopes[place]!.mean
  }
  return { shares, slopes, explained: Math.max(0, fit.explained - moving.length * byChance) }
}

/** Each value by its rank, as a standard normal law would lay so many out; equal ones share theirs. Blom, Statistical Estimates (1958) (from memory). */
export function scoresOf(values: readonly number[]): number[] {
  const n = values.length
  const order = values.map((_, index) => index).sort((a, b) => values[a]! - values[b]!)
  const scores = new Array<number>(n)
  for (let from = 0; from < n; ) {
    let to = from
    while (to + 1 < n && values[order[to + 1]!] === values[order[from]!]) to++
    const score = standardNormal(((from + to) / 2 + 1 - 3 / 8) / (n + 1 / 4))
    for (let at = from; at <= to; at++) scores[order[at]!] = score
    from = to + 1
  }
  return scores
}

function correlation(x: readonly number[], y: readonly number[]): number {
  const [atX, atY] = [mean(x as number[]), mean(y as number[])]
  const sum = (of: (index: number) => number) => x.reduce((total, _, index) => total + of(index), 0)
  const both = sum((index) => (x[index]! - atX) * (y[index]! - atY))
  return both / Math.sqrt(sum((index) => (x[index]! - atX) ** 2) * sum((index) => (y[index]! - atY) ** 2))
}
