/** How often something happens, with exact limits: events in an exposure, two of them against each other, some of so many. */
import { chanceLimits, countLimits } from './events.js'
import { binomialTest } from './tails.js'

/** A figure with its limits, in the unit of the figure; `high` may be Infinity. */
export interface Limited {
  value: number
  low: number
  high: number
}

/**
 * Rate of `events` (whole, at least 0) in an `exposure` above 0, with limits that hold with `confidence`, on (0, 1), or oftener:
 * Garwood, Biometrika 28 (1936) 437-442. Of none the low limit is 0.
 */
export function rateOf(events: number, exposure: number, confidence: number): Limited {
  const { low, high } = countLimits(events, confidence)
  return { value: events / exposure, low: low / exposure, high: high / exposure }
}

/** Chance of what happened `some` times in `n` (at least 1), with limits: Clopper & Pearson, Biometrika 26 (1934) 404-413. */
export const chanceOf = (some: number, n: number, confidence: number): Limited => ({
  value: some / n,
  ...chanceLimits(some, n, confidence),
})

/** Events in an exposure above 0. */
export interface Observed {
  events: number
  exposure: number
}

/**
 * Rate of the first over that of the second, with limits, and the two-sided p-value of no difference. Given all events, those of the first are
 * binomial with the chance ratio x exposure / (ratio x exposure + other exposure): Przyborowski & Wilenski, Biometrika 31 (1940)
 * 313-323 (from memory). Where neither has events nothing is known: value NaN, limits 0 and Infinity, p 1.
 */
export function rateRatio(
  first: Observed,
  second: Observed,
  confidence: number,
): Limited & { pValue: number } {
  const all = first.events + second.events
  if (all === 0) return { value: Number.NaN, low: 0, high: Infinity, pValue: 1 }
  const { low, high } = chanceLimits(first.events, all, confidence)
  const exposures = second.exposure / first.exposure
  return {
    value: second.events === 0 ? Infinity : (first.events / second.events) * exposures,
    low: (low / (1 - low)) * exposures,
    high: high === 1 ? Infinity : (high / (1 - high)) * exposures,
    pValue: binomialTest(first.events, all, first.exposure / (first.exposure + second.exposure)),
  }
}

/**
 * One figure above 0 over another, each with limits of its own that were found apart from those of the other: on the logarithm the distances of the limits add
 * as squares. Zou & Donner, Statistics in Medicine 27 (2008) 1693-1702 (from memory).
 */
export function ratioOf(one: Limited, other: Limited): Limited {
  const distance = (up: number, down: number) => Math.hypot(Math.log(up), Math.log(down))
  const value = one.value / other.value
  return {
    value,
    low: value * Math.exp(-distance(one.value / one.low, other.high / other.value)),
    high: value * Math.exp(distance(one.high / one.value, other.value / other.low)),
  }
}
