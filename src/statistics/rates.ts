/** How often something happens, with exact limits: events in an exposure, some of so many, one figure over another. */
import { chanceLimits, countLimits } from './events.js'

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
