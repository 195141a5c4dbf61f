/** Arrivals by a rate for each hour of the shift: `by-hour`. */

import { never } from '../engine/clock.js'
import type { Draw } from '../engine/draw.js'
import { unset } from '../engine/unset.js'
import type { Scenario } from '../scenario/schema.js'
import type { Floor } from './floor.js'
import { Pace, Time } from './pace.js'

type HourlyKeys = NonNullable<Scenario['arrivals'][string]['by-hour']>

const hour = 3600
/** Rounding of sums of rate times time that must not move a case into the next hour, as a share of all cases. */
const hair = 1e-12
/** Rounding of an instant that is counted from the start of a later shift, s. */
const instant = 1e-6

/**
 * The rate r(t) is that of the hour of the shift, and 0 in breaks and the start-up. From an arrival to the next one its integral grows
 * by 1 (evenly) or by an exponential variate of mean 1 (at random), times the batch. At random this is the
 * inversion of a Poisson process whose rate changes: Cinlar, Introduction to Stochastic Processes (1975), ch. 4 (from
 * memory). So a break keeps what is left of the interval, and the rate at which it runs on is that of the hour then.
 */
export class HourlyPace extends Pace {
  private readonly growth: Draw
  /** Edges of parts of constant rate, s, the end of the shift the last; the integral up to each; the rate after it. */
  private readonly edges: Float64Array
  private readonly sums: Float64Array
  private readonly rates: Float64Array
  /** When the next cases come, s, and what the rate will have summed up to by then. */
  private dueAt = unset
  private dueSum = unset
  /** The part that now lies in, and the part that the next arrival lies in. */
  private here = 0
  private ahead = 0

  constructor(
    floor: Floor,
    owner: string,
    keys: HourlyKeys,
    override readonly batch: number,
  ) {
    super()
    // stream and law are those of exponential times between, so that a steady rate gives the same arrivals
    const law =
      keys.spaced === 'evenly'
        ? { law: 'constant' as const, value: batch }
        : { law: 'exponential' as const, mean: batch }
    this.growth = floor.intervals(owner, 'time between', law, batch)
    const { length } = floor.scenario.shift
    const breaks = [{ at: 0, for: floor.scenario.shift['start-up'] }, ...floor.scenario.shift.breaks]
    const edges = new Set([0, length])
    for (let index = 1; index < keys.cases.length && index * hour < length; index++) edges.add(index * hour)
    for (const pause of breaks) edges.add(pause.at).add(Math.min(pause.at + pause.for, length))
    this.edges = Float64Array.from(edges).sort()
    this.rates = new Float64Array(this.edges.length - 1)
    this.sums = new Float64Array(this.edges.length)
    for (let part = 0; part < this.rates.length; part++) {
      const from = this.edges[part]!
      const isBreak = breaks.some((pause) => from >= pause.at && from < pause.at + pause.for)
      const inHour = keys.cases[Math.min(Math.floor(from / hour), keys.cases.length - 1)]!
      this.rates[part] = isBreak ? 0 : inHour
      this.sums[part + 1] = this.sums[part]! + this.rates[part]! * (this.edges[part + 1]! - from)
    }
  }

  override reset(): void {
    this.here = 0
    this.ahead = 0
    this.dueAt = 0
    this.dueSum = 0
  }

  override next(): void {
    const { edges, sums, rates } = this
    const now = this.times[Time.now]!
    // an arrival in time keeps its exact sum: read back from its time it would drift
    const from = Math.abs(now - this.dueAt) < instant ? this.dueSum : this.sumAt(now)
    this.growth.next()
    const sum = from + this.growth.value
    const total = sums[rates.length]!
    this.dueSum = sum
    while (
      this.ahead < rates.length &&
      (rates[this.ahead] === 0 || sums[this.ahead + 1]! < sum - hair * total)
    )
      this.ahead++
    if (this.ahead === rates.length) this.dueAt = never
    else {
      const time = edges[this.ahead]! + (sum - sums[this.ahead]!) / rates[this.ahead]!
      this.dueAt = Math.max(now, Math.min(time, edges[this.ahead + 1]!))
    }
    this.times[Time.due] = this.dueAt
  }

  /** Integral of the rate from the start of the shift to `now`, cases. */
  private sumAt(now: number): number {
    while (this.here < this.rates.length - 1 && this.edges[this.here + 1]! <= now) this.here++
    return this.sums[this.here]! + this.rates[this.here]! * (now - this.edges[this.here]!)
  }

  /** The breaks are part of the rate already. */
  override afterBreak(due: number, _began: number, now: number): number {
    return Math.max(due, now)
  }
}
