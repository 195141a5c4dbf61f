/** What is known of a value by what it rests on: one plain interval for each. */
import { Stream } from '../engine/stream.js'
import { valueAt } from '../scenario/issues.js'
import type { Evidence } from '../scenario/known.js'
import {
  type Distribution,
  meanOf,
  type Observed,
  type PlainDistribution,
  varianceOf,
} from '../scenario/law.js'
import type { Scenario } from '../scenario/schema.js'
import { chanceLimits, countLimits } from '../statistics/events.js'
import { halfWidthOfMean, studentT } from '../statistics/quantile.js'
import { lawBehind } from './refit.js'

/** In SI; of a law its mean. */
export interface WhatIsKnown {
  value: number
  low: number
  high: number
  confidence: number
}

/** Confidence of what is counted or observed, and what a guess says of itself. */
const [ofCounts, ofGuesses] = [0.95, 0.9]

/** Laws behind a fit that its interval is read off: 2.5 % and 97.5 % of them are the 10th and the 390th. */
const laws = 399

/** A number, or of a law its mean. */
export const numberOf = (value: unknown): number =>
  typeof value === 'number' ? value : meanOf(value as Distribution)

/**
 * Exact limits of chances, rates and mean times that were counted; the mean of a law from laws that may have brought what it was
 * fitted to; Student t of observed values, or of their days; the ends of a guess.
 */
export function whatIsKnown(scenario: Scenario, { path, at, known }: Evidence): WhatIsKnown {
  const found = valueAt(scenario, at)
  const value = numberOf(found)
  const told = { value, confidence: ofCounts }
  switch (known.form) {
    case 'guess':
      return { value, low: known.low, high: known.high, confidence: ofGuesses }
    case 'count': {
      const { events, exposure } = known
      if (known.of === 'chance') return { ...told, ...chanceLimits(events, exposure, ofCounts) }
      const { low, high } = countLimits(events, ofCounts)
      return known.of === 'rate'
        ? { ...told, low: low / exposure, high: high / exposure }
        : { ...told, low: exposure / high, high: exposure / low }
    }
    case 'fitted': {
      const stream = new Stream(path, 'what is known')
      stream.begin('', known.observations)
      const means = Float64Array.from({ length: laws }, () =>
        meanOf(lawBehind(found as PlainDistribution, known.observations, stream)),
      ).sort()
      const rank = Math.round(((1 - ofCounts) / 2) * (laws + 1))
      return { ...told, low: means[rank - 1]!, high: means[laws - rank]! }
    }
    case 'observed': {
      const half = halfWidth(found as Distribution, known.observations) * value
      return { ...told, low: Math.max(0, value - half), high: value + half }
    }
  }
}

/** Half-width of the 95 % interval of the mean of `n` observations with the spread of `law`, as a share of the mean: t cv / root n. */
export function halfWidth(law: Distribution, n: number): number {
  if (n < 2) return Number.POSITIVE_INFINITY
  if (law.law === 'observed' && law.byDay) return halfWidthByDays(law, law.byDay)
  // observed values have the variance of their sample: that of what they were drawn from is larger
  const variance = varianceOf(law) * (law.law === 'observed' ? n / (n - 1) : 1)
  return halfWidthOfMean(n, Math.sqrt(variance) / meanOf(law), ofCounts)
}

/**
 * The same where days are what was drawn: the mean is a ratio, of the sums of the days over their numbers. Cochran, Sampling Techniques, 3rd
 * ed. (1977), sec. 2.11 and 9A.1 (from memory).
 */
function halfWidthByDays(
  { values, ...law }: Observed,
  { of, count }: NonNullable<Observed['byDay']>,
): number {
  const mean = meanOf({ ...law, values })
  // sums of what the values of a day lie above the mean
  const above = new Float64Array(count)
  for (const [index, day] of of.entries()) above[day]! += values[index]! - mean
  const squares = above.reduce((sum, each) => sum + each * each, 0)
  const error = Math.sqrt((count / (count - 1)) * squares) / values.length
  return (studentT(1 - (1 - ofCounts) / 2, count - 1) * error) / mean
}
