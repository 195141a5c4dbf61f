/** A side of a case that varies from case to case, as of cartons that are cut to measure: a law between two ends. */
import normalBelow from '@stdlib/stats-base-dists-normal-cdf'
import { meanOf, type PlainDistribution } from './law.js'

/** Ends of a side, m: from a matchbox to a container, so that a slip of the unit is found. */
export const sideEnds = { from: 0.01, to: 10 }

/** What a side may follow. All have two ends: a machine, a belt, a roll must take the largest. Lengths in m. */
export type SizeLaw = Extract<PlainDistribution, { law: 'normal' | 'triangular' | 'uniform' | 'observed' }>

/** A side in m, or its law. */
export type Side = number | SizeLaw

export const meanSide = (given: Side): number => (typeof given === 'number' ? given : meanOf(given))

/** Smallest and largest, m; NaN of observed sizes that could not be read. */
export function endsOf(given: Side): [least: number, most: number] {
  if (typeof given === 'number') return [given, given]
  switch (given.law) {
    case 'normal':
      return [given.atLeast, given.atMost!]
    case 'observed':
      return [given.values[0] ?? Number.NaN, given.values.at(-1) ?? Number.NaN]
    default:
      return [given.low, given.high]
  }
}

/** Share of the sizes that are at most `x`. */
export function shareUpTo(given: Side, x: number): number {
  const [least, most] = endsOf(given)
  if (x < least) return 0
  if (x >= most || typeof given === 'number') return 1
  switch (given.law) {
    case 'normal': {
      const below = (at: number) => normalBelow((at - given.mean) / given.sd, 0, 1)
      return (below(x) - below(least)) / (below(most) - below(least))
    }
    case 'uniform':
      return (x - least) / (most - least)
    case 'triangular': {
      const { low, mode, high } = given
      return x < mode
        ? (x - low) ** 2 / ((high - low) * (mode - low))
        : 1 - (high - x) ** 2 / ((high - low) * (high - mode))
    }
    case 'observed':
      return countUpTo(given.values, x) / given.values.length
  }
}

/** How many of sorted values are at most `x`. */
function countUpTo(values: readonly number[], x: number): number {
  let [from, to] = [0, values.length]
  while (from < to) {
    const middle = (from + to) >>> 1
    if (values[middle]! <= x) from = middle + 1
    else to = middle
  }
  return from
}

/** Steps of the rule below: sizes of observed laws jump, so that a fine grid is worth more than a high order. */
const steps = 2000

/**
 * Mean difference of two sizes that are drawn apart from each other, m: the integral of F (1 - G) + G (1 - F) over all sizes, by the midpoint
 * rule. Of one law with itself it is Gini's mean difference. Johnson, Kotz & Balakrishnan, Continuous Univariate Distributions 1 (from memory).
 */
export function meanDifference(one: Side, other: Side): number {
  if (typeof one === 'number' && typeof other === 'number') return Math.abs(one - other)
  const [a, b] = [endsOf(one), endsOf(other)]
  const [from, to] = [Math.min(a[0], b[0]), Math.max(a[1], b[1])]
  const step = (to - from) / steps
  let sum = 0
  for (let index = 0; index < steps; index++) {
    const x = from + (index + 0.5) * step
    const [f, g] = [shareUpTo(one, x), shareUpTo(other, x)]
    sum += f * (1 - g) + g * (1 - f)
  }
  return sum * step
}
