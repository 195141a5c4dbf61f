/** Tallies: what is known of one shift when it ends. Updated on change only; nothing is stored per case. */

import type { Clock } from './clock.js'
import { exp, ln } from './logarithms.js'
import { unset } from './unset.js'

/** Bins of a duration histogram to a factor of e: 1 % wide. */
const binsPerE = 100
const smallest = 1e-2
const bins = 2400

/** Values seen one by one: count, mean, largest and quantiles to 1 %. */
export class Observations {
  /** The value that `add` notes, not negative: handed over, a number may be allocated. */
  latest = unset
  count = 0
  sum = unset
  largest = unset
  private readonly histogram = new Uint32Array(bins)

  constructor() {
    this.reset()
  }

  reset(): void {
    this.count = 0
    this.sum = 0
    this.largest = 0
    this.histogram.fill(0)
  }

  /** Notes `latest`. */
  add(): void {
    const value = this.latest
    this.count++
    this.sum += value
    if (value > this.largest) this.largest = value
    const bin = value <= smallest ? 0 : Math.min(bins - 1, 1 + Math.floor(ln(value / smallest) * binsPerE))
    this.histogram[bin]!++
  }

  /** Mean; NaN of no values. */
  mean(): number {
    return this.sum / this.count
  }

  /** The value below which the share `p` of the values lies, within 1 %; NaN of no values. */
  quantile(p: number): number {
    if (this.count === 0) return Number.NaN
    let left = p * this.count
    for (let bin = 0; bin < bins; bin++) {
      const here = this.histogram[bin]!
      if (here > 0 && left <= here) {
        if (bin === 0) return 0
        const within = (bin - 1 + left / here) / binsPerE
        return Math.min(this.largest, smallest * exp(within))
      }
      left -= here
    }
    return this.largest
  }
}

/**
 * A whole number that stays the same between changes: time-average, largest, share of time at each level, and
 * its value at evenly spaced instants for a picture.
 */
export class Level {
  value = 0
  largest = 0
  private timeAt = new Float64Array(64)
  /** Since when it has its value, s. */
  private since = unset
  /** Its integral over time. */
  private area = unset
  /** Time between samples, and of the next one, s. */
  private sampleStep = Infinity
  private nextSample = Infinity
  /** Since when it is counted, s. */
  private start = unset
  private sampled = 0
  readonly samples: Float64Array

  /** `samples`: number of instants to note; 0 for none. */
  constructor(
    private readonly clock: Pick<Clock, 'now'>,
    samples = 0,
  ) {
    this.samples = new Float64Array(samples)
  }

  /** Starts at level 0 now; samples spread from `from` to `end`, each in the middle of its part. */
  reset(from: number, end: number): void {
    this.value = 0
    this.restart(from, end)
  }

  /**
   * Forgets what was before now: mean, quantile, share and largest are those of the time from now on, at first at the
   * level that it has. Samples as with `reset`; `from` not before now.
   */
  restart(from: number, end: number): void {
    const { now } = this.clock
    this.largest = this.value
    this.area = 0
    this.since = now
    this.start = now
    this.timeAt.fill(0)
    this.sampled = 0
    this.samples.fill(0)
    this.sampleStep = this.samples.length > 0 ? (end - from) / this.samples.length : Infinity
    this.nextSample = from + this.sampleStep / 2
  }

  /** The level changes by `by` now. */
  change(by: number): void {
    this.settle()
    this.value += by
    if (this.value > this.largest) this.largest = this.value
    this.widen(this.value)
  }

  /** Running numbers of the next that comes up, and that goes down, by `tell`. */
  ups = 0
  downs = 0

  /**
   * Changes that are told when all of them are known: one up at each of the times `up`, from number `ups` to before `end`; one down
   * at each of `down`, from number `downs` as far as that has come up; in the order of time, those before `until`. Rings of `mask` + 1 times. Of
   * two at one instant down is first.
   */
  tell(up: Float64Array, down: Float64Array, mask: number, end: number, until: number): void {
    let { ups, downs, value, since, area, largest } = this
    this.widen(value + end - ups)
    for (;;) {
      const comes = ups < end ? up[ups & mask]! : Infinity
      const goes = downs < ups ? down[downs & mask]! : Infinity
      const isUp = comes < goes
      const now = isUp ? comes : goes
      if (!(now < until)) break
      const passed = now - since
      area += value * passed
      this.timeAt[value]! += passed
      since = now
      if (now > this.nextSample) this.sample(now, value)
      if (isUp) {
        ups++
        value++
      } else {
        downs++
        value--
      }
      largest = Math.max(largest, value)
    }
    this.ups = ups
    this.downs = downs
    this.value = value
    this.since = since
    this.area = area
    this.largest = largest
  }

  /**
   * The same where nothing but the mean is asked for: since the last change its level was `area` over time, and it is `value` at `until`, which is
   * booked.
   */
  tellArea(area: number, value: number, until: number): void {
    this.area += area
    this.value = value
    this.since = until
  }

  /** Time at level 0 up to the last `settle`, s. */
  get timeEmpty(): number {
    return this.timeAt[0]!
  }

  private sample(now: number, value: number): void {
    while (now > this.nextSample) {
      this.samples[this.sampled++] = value
      this.nextSample = this.sampled < this.samples.length ? this.nextSample + this.sampleStep : Infinity
    }
  }

  /** Room for times at this level. */
  private widen(value: number): void {
    if (value < this.timeAt.length) return
    const wider = new Float64Array(value * 2)
    wider.set(this.timeAt)
    this.timeAt = wider
  }

  /** Books the time since the last change; call once more when the shift ends. */
  settle(): void {
    const { now } = this.clock
    const passed = now - this.since
    this.area += this.value * passed
    this.timeAt[this.value]! += passed
    this.since = now
    if (now > this.nextSample) this.sample(now, this.value)
  }

  /** Time that is counted, up to the last `settle`, s. */
  private get counted(): number {
    return this.since - this.start
  }

  /** Mean over time up to the last `settle`; 0 of no time. */
  mean(): number {
    return this.counted > 0 ? this.area / this.counted : 0
  }

  /** Smallest level that held, with all below it, for the share `p` of the time. */
  quantile(p: number): number {
    let left = p * this.counted
    for (let level = 0; level <= this.largest; level++) {
      left -= this.timeAt[level]!
      if (left <= 0) return level
    }
    return this.largest
  }

  /** Share of the time at `level` or above. */
  shareFrom(level: number): number {
    let time = 0
    for (let each = level; each <= this.largest; each++) time += this.timeAt[each]!
    return this.counted > 0 ? time / this.counted : 0
  }
}
