/** Estimates over shifts: a shift is one observation, and every figure comes with its interval. */
import { max, mean, min, quantile, sampleVariance } from 'simple-statistics'
import type { ControlBasis } from './control.js'
import { bunching, chanceLimits, countLimits, enoughEvents } from './events.js'
import { binomialAtMost, standardNormal, studentT } from './quantile.js'
import { leastForSkewness, skewedInterval, skewnessOfMean } from './skewness.js'

/**
 * A figure with its interval at the study's confidence. `sd` is the spread over shifts, `n` the number of shifts that
 * say something of it. Without two of those low, high and sd are NaN; without one, mean is too.
 */
export interface Estimate {
  mean: number
  low: number
  high: number
  sd: number
  n: number
  /** Half-width with control variates over that without; only where they were used. */
  shrink?: number
  /** What it rests on, where that is too little: then low and high are NaN, or, of a count, the exact limits of its number. */
  few?: Few
  /** Of a count: variance over mean, where its events are shown to come in bunches. */
  bunches?: number
  /** The scenario allows no other value, so that an interval without width is no accident. */
  isFixed?: boolean
  /** What the inputs add, where they were drawn: low and high are those of the simulation alone. */
  inputs?: OfInputs
}

/** What is not known of the inputs, as it makes itself felt in a figure. */
export interface OfInputs {
  /** The whole interval: both kinds. */
  low: number
  high: number
  /** That of the inputs alone. */
  alone: { low: number; high: number }
  /** Part of the variance of the whole that is theirs, 0 to 1. */
  share: number
  /** Draws that say something of it. */
  draws: number
}

/**
 * So few `events` that a figure rests on. Of these: those that it tells of; stops that waited for the end of a break, one of which
 * outweighs many others; shifts that were unlike the rest, or all shifts, where a rare long stop moves the figure by much.
 */
export interface Few {
  events: number
  of: 'events' | 'in breaks' | 'shifts'
}

/** What is known without an interval: a mean at most. */
export function bare(centre: number, n: number): Estimate {
  return { mean: centre, low: Number.NaN, high: Number.NaN, sd: Number.NaN, n }
}

/** The same of too little: what it comes to, and nothing on how far off that may be. */
export const ofFew = (estimate: Estimate, few: Few): Estimate => {
  const { shrink: _, inputs: __, ...rest } = estimate
  return { ...rest, low: Number.NaN, high: Number.NaN, few }
}

/**
 * Mean over shifts with a Student t interval, from 30 shifts on with their skewness taken into account; shifts that say nothing
 * (NaN) do not count. With `controls`, one row for each value, the estimate is that of the control variates. Law, Simulation Modeling and Analysis, ch. 9.
 */
export function meanEstimate(
  values: readonly number[],
  confidence: number,
  controls: ControlBasis | null = null,
): Estimate {
  const said = values.filter((value) => !Number.isNaN(value))
  // the controls know the shifts by their place: where one says nothing they are left out
  return around(
    said.length > 0 ? mean(said) : Number.NaN,
    said,
    confidence,
    said.length === values.length ? controls : null,
  )
}

/**
 * Mean number of events a shift. `exposure`: shifts that a value stands for. While few came, exact limits of a Poisson count, which hold at
 * least as often as asked; where the events come in bunches, of the bunches. From `enoughEvents` on as any mean.
 */
export function countEstimate(
  values: readonly number[],
  confidence: number,
  exposure: number,
  controls: ControlBasis | null = null,
): Estimate {
  const counts = values.map((value) => value * exposure)
  const events = Math.round(counts.reduce((sum, count) => sum + count, 0))
  const spread = bunching(counts)
  const told = spread === null ? {} : { bunches: spread }
  const about = { ...(ofTwo(values, confidence) ?? meanEstimate(values, confidence, controls)), ...told }
  if (events >= enoughEvents || !(values.length > 0)) return about
  const { shrink: _, ...plain } = { ...about, ...meanEstimate(values, confidence) }
  const { low, high } = countLimits(events, confidence, spread ?? 1)
  const shifts = values.length * exposure
  return { ...plain, low: low / shifts, high: high / shifts, few: { events, of: 'events' } }
}

/**
 * Of a number that is one of two in all shifts, such as rolls changed: it is the smaller, and one of the other in a share of the shifts, whose interval it
 * has; null elsewhere. Few shifts would not show that there are but two.
 */
function ofTwo(values: readonly number[], confidence: number): Estimate | null {
  if (values.length < leastForSkewness) return null
  const [less, more] = [min(values as number[]), max(values as number[])]
  if (less === more || values.some((value) => value !== less && value !== more)) return null
  const { low, high } = shareEstimate(
    values.map((value) => (value === more ? 1 : 0)),
    confidence,
  )
  const at = (share: number) => less + share * (more - less)
  return { ...meanEstimate(values, confidence), low: at(low), high: at(high) }
}

/** The numbers of a measure over shifts. `overs`: the denominators of a ratio; `exposure`: shifts that a value of a count stands for. */
export interface Observations {
  kind: 'mean' | 'total' | 'count' | 'share' | 'ratio'
  values: readonly number[]
  overs: readonly number[] | null
  exposure?: number
  /** Of a ratio: time over the events that came in it. */
  isTimeOfEvents?: boolean
}

/** The estimate that goes with the kind of a measure. */
export function estimateOf(
  { kind, values, overs, exposure = 1, isTimeOfEvents = false }: Observations,
  confidence: number,
  controls: ControlBasis | null = null,
): Estimate {
  if (kind === 'share') return shareEstimate(values, confidence)
  if (kind === 'count') return countEstimate(values, confidence, exposure, controls)
  if (overs === null) return meanEstimate(values, confidence, controls)
  return isTimeOfEvents
    ? timePerEventEstimate(values, overs, confidence, controls)
    : ratioEstimate(values, overs, confidence, controls)
}

/** `centre` with the interval of the mean of `values`, moved and narrowed by what the controls explain. */
function around(
  centre: number,
  values: readonly number[],
  confidence: number,
  controls: ControlBasis | null,
): Estimate {
  const n = values.length
  if (n < 2) return bare(centre, n)
  const sd = Math.sqrt(sampleVariance(values as number[]))
  const t = (degreesOfFreedom: number) => studentT((1 + confidence) / 2, degreesOfFreedom)
  const half = (t(n - 1) * sd) / Math.sqrt(n)
  const varies = half > Math.abs(centre) * 1e-12
  const interval = (at: number, error: number, degreesOfFreedom: number, of: readonly number[]) =>
    skewedInterval(at, error, t(degreesOfFreedom), varies ? skewnessOfMean(of) : 0)
  const plain = { mean: centre, ...interval(centre, sd / Math.sqrt(n), n - 1, values), sd, n }
  if (controls === null || !varies) return plain
  const { shift, deviation, degreesOfFreedom, rest } = controls.explain(values)
  // a shift as rare as one in n, not seen yet, that is a standard deviation off moves the mean by so much: where the controls leave less, as of
  // tape per case, more shifts would not make it true (held in 91 of 100 studies of 100 shifts, and of 200, where 95 are asked)
  if (deviation < sd / n) return plain
  const moved = centre - shift
  // a straight line may lead out of all that was seen, such as below none: then it does not describe this figure
  const average = mean(values as number[])
  if (average - shift < min(values as number[]) || average - shift > max(values as number[])) return plain
  const shrink = (t(degreesOfFreedom) * deviation) / half
  return { mean: moved, ...interval(moved, deviation, degreesOfFreedom, rest), sd, n, shrink }
}

/** Shifts on each side from which a share has Wilson's interval: of fewer it covers 84 % where 95 % are asked. */
const enoughOfEach = 5

/** Share of shifts with a Wilson score interval; where nearly all or nearly none do, with exact limits. */
export function shareEstimate(values: readonly number[], confidence: number): Estimate {
  const n = values.length
  const some = values.reduce((sum, value) => sum + value, 0)
  const wilson = wilsonEstimate(values, confidence)
  if (n === 0 || Math.min(some, n - some) >= enoughOfEach) return wilson
  return { ...wilson, ...chanceLimits(some, n, confidence) }
}

/** Share of shifts with a Wilson score interval. Wilson, J. Am. Stat. Assoc. 22 (1927) 209-212. */
export function wilsonEstimate(values: readonly number[], confidence: number): Estimate {
  const n = values.length
  if (n === 0) return bare(Number.NaN, n)
  const share = mean(values as number[])
  const z = standardNormal((1 + confidence) / 2)
  const shrink = 1 + (z * z) / n
  const centre = (share + (z * z) / (2 * n)) / shrink
  const half = (z / shrink) * Math.sqrt((share * (1 - share)) / n + (z * z) / (4 * n * n))
  const low = share === 0 ? 0 : Math.max(0, centre - half)
  const high = share === 1 ? 1 : Math.min(1, centre + half)
  return { mean: share, low, high, sd: Math.sqrt(share * (1 - share)), n }
}

/**
 * Total over total with the variance of the ratio estimator: residuals value - ratio x over, divided by the mean of
 * `over`. Cochran, Sampling Techniques, ch. 6 (from memory). `sd` is that of the scaled residuals.
 */
export function ratioEstimate(
  values: readonly number[],
  overs: readonly number[],
  confidence: number,
  controls: ControlBasis | null = null,
): Estimate {
  const n = values.length
  const total = overs.reduce((sum, over) => sum + over, 0)
  if (n === 0 || total === 0) return bare(Number.NaN, 0)
  const ratio = values.reduce((sum, value) => sum + value, 0) / total
  const meanOver = total / n
  const scaled = values.map((value, index) => (value - ratio * overs[index]!) / meanOver)
  return around(ratio, scaled, confidence, controls)
}

/**
 * Mean time per event: one over their rate, and its interval that of the rate turned over. Of 30 to 45 events in 50 to 200 shifts that
 * held the truth in 96 to 97 of 100, where the ratio itself held it in 91, its upper end too low. `high` is NaN where the rate may be 0.
 */
function timePerEventEstimate(
  times: readonly number[],
  events: readonly number[],
  confidence: number,
  controls: ControlBasis | null,
): Estimate {
  const rate = ratioEstimate(events, times, confidence, controls)
  const high = rate.low > 0 ? 1 / rate.low : Number.NaN
  return { ...rate, mean: 1 / rate.mean, low: 1 / rate.high, high, sd: rate.sd / rate.mean ** 2 }
}

/**
 * The value below which the share `p` of all shifts lies, on (0, 1), with a distribution-free interval: the closest
 * pair of order statistics with at most half of what confidence leaves in each tail. Where so few shifts allow none, its end is
 * NaN. The estimate itself is that of R's type 7. Conover, Practical Nonparametric Statistics (1999), sec. 3.2 (from
 * memory).
 */
export function quantileEstimate(values: readonly number[], p: number, confidence: number): Estimate {
  const n = values.length
  if (n === 0) return bare(Number.NaN, n)
  const sorted = Float64Array.from(values).sort()
  const { lower, upper } = orderStatistics(n, p, confidence)
  return {
    mean: quantile(values as number[], p),
    low: sorted[lower - 1] ?? Number.NaN,
    high: sorted[upper - 1] ?? Number.NaN,
    sd: Number.NaN,
    n,
  }
}

/** Ranks, from 1, of the order statistics that enclose the quantile `p` of `n` values; 0 or n + 1 where there is none. */
export function orderStatistics(n: number, p: number, confidence: number): { lower: number; upper: number } {
  const tail = (1 - confidence) / 2
  let lower = 0
  while (lower < n && binomialAtMost(lower, n, p) <= tail) lower++
  let upper = n + 1
  while (upper > 1 && 1 - binomialAtMost(upper - 2, n, p) <= tail) upper--
  return { lower, upper }
}
