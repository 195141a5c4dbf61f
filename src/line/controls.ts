/** Controls: sums over the random numbers that arrivals drew, whose mean is known whatever the line does with them. */
import { Draw } from '../engine/draw.js'
import { type Distribution, meanOf } from '../scenario/law.js'
import type { Scenario } from '../scenario/schema.js'

/** Places in the controls of a shift, and how many there are. */
export const Control = { number: 0, mix: 1 } as const
const count = 2

/**
 * Two sums, of mean 0 each, in what is counted:
 *
 *   number  over the intervals X that sources drew: cases that come together x (1 - X / E[X]), cases
 *   mix     over the cases whose kind was drawn: outside length along the travel - its mean under the shares, m
 *
 * The mean is exact (Wald's identity; Ross, Stochastic Processes, ch. 3, from memory). A line may hold its sources up, and breaks and
 * the end of the shift cut intervals short, but whether a number is drawn is settled by what was before it, and the
 * number owes nothing to that: how many are drawn is a stopping time. So each summand has mean 0, given that it is
 * drawn. For the same reason every interval counts in full from the instant at which it was drawn, though the cases
 * at its end may never come; one that was drawn before the cut does not count.
 */
export class Controls {
  readonly sums = new Float64Array(count)
  /** Outside length of each kind less the mean of the mix, m. */
  private readonly deviations: Float64Array

  constructor(cases: Scenario['cases'], lengths: Float64Array) {
    const shares = Object.values(cases).map(({ share }) => share)
    const total = shares.reduce((sum, share) => sum + share, 0)
    // from one of the lengths that come on, so that alike lengths have exactly themselves as mean
    const one = lengths[shares.findIndex((share) => share > 0)] ?? 0
    const mean = shares.reduce((sum, share, kind) => sum + (share / total) * (lengths[kind]! - one), one)
    this.deviations = lengths.map((length) => length - mean)
  }

  /** Nothing has been drawn yet. */
  clear(): void {
    this.sums.fill(0)
  }

  /** Intervals of `law` between arrivals of `cases` each, told to the sum; one that is always the same says nothing. */
  ofIntervals(intervals: Draw, law: Distribution, cases: number): Draw {
    if (isFixed(law)) return intervals
    return new Told(intervals, this.sums, cases, meanOf(law))
  }

  /** A case of `kind` was drawn from the mix. */
  drawnFromMix(kind: number): void {
    this.sums[Control.mix]! += this.deviations[kind]!
  }
}

/** Intervals that are told to the sum as they are drawn. */
class Told extends Draw {
  constructor(
    private readonly intervals: Draw,
    private readonly sums: Float64Array,
    private readonly cases: number,
    private readonly mean: number,
  ) {
    super()
  }

  override next(): void {
    this.intervals.next()
    this.value = this.intervals.value
    this.sums[Control.number]! += this.cases * (1 - this.value / this.mean)
  }
}

/** Whether the law gives one value only. */
function isFixed(law: Distribution): boolean {
  switch (law.law) {
    case 'constant':
      return true
    case 'lognormal':
      return law.cv === 0
    case 'uniform':
      return law.low === law.high
    case 'normal':
      return law.sd === 0
    case 'observed':
      return law.values[0] === law.values.at(-1)
    case 'mixture':
      return law.mixture.every(
        ({ law: part }) => isFixed(part) && meanOf(part) === meanOf(law.mixture[0]!.law),
      )
    default:
      return false
  }
}
