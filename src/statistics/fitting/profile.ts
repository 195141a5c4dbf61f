/**
 * Intervals of a figure of a law from the profile of the likelihood: the values with which the likeliest law is not much less likely
 * than the likeliest of all. Venzon & Moolgavkar, Applied Statistics 37 (1988) 87-94; Meeker & Escobar, Statistical
 * Methods for Reliability Data (1998), ch. 8 (both from memory).
 */
import { studentT } from '../quantile.js'
import { type Figure, placeOf } from './chart.js'
import type { SimpleLaw } from './law.js'
import { maximise } from './maximise.js'

/**
 * Twice the fall of the log-likelihood at the ends of an interval at `confidence` from so many `events`. With many it is the quantile of
 * chi-square; with few a little more, such that of complete lognormal times the location has Student's interval exactly.
 */
export function fallAt(confidence: number, events: number): number {
  const n = Math.max(2, events)
  const t = studentT((1 + confidence) / 2, n - 1)
  return n * Math.log1p((t * t) / (n - 1))
}

/** Steps of a search; it needs about five. */
const rounds = 60
/** How far from the estimate, in natural logarithms or standard errors, an end is looked for. */
const farthest = 50
const closeEnough = 1e-9

interface Profiled {
  figure: Figure
  /** ln of the likelihood of a law. */
  logLikelihood(law: SimpleLaw): number
  /** The likeliest law, and the height of the likelihood there. */
  law: SimpleLaw
  top: number
}

/** Ends of an interval. */
export interface Ends {
  low: number
  high: number
}

/** Ends of the interval where twice the log-likelihood has fallen by `fall`. One that is not reached is 0, -Infinity or Infinity. `se`: about the figure's standard error. */
export function profileInterval(profiled: Profiled, se: number, fall: number): Ends {
  const { figure, law } = profiled
  const value = figure.of(law)
  const [begin, unit] = figure.isPositive ? [Math.log(value), se / value] : [value, se]
  const back = (at: number) => (figure.isPositive ? Math.exp(at) : at)
  const low = endOf(profiled, begin, -unit * Math.sqrt(fall), Math.sqrt(fall), back)
  const high = endOf(profiled, begin, unit * Math.sqrt(fall), Math.sqrt(fall), back)
  return {
    low: low ?? (figure.isPositive ? 0 : Number.NEGATIVE_INFINITY),
    high: high ?? Number.POSITIVE_INFINITY,
  }
}

/**
 * Where, away from `begin` in the direction of `stride`, the root of the fall reaches `root`, to which it grows nearly as a straight line; null where it does not.
 * Doubled strides find an end beyond it, the chord with the Illinois rule closes in: Dowell & Jarratt, BIT 11 (1971) 168-174.
 */
function endOf(
  profiled: Profiled,
  begin: number,
  stride: number,
  root: number,
  back: (at: number) => number,
): number | null {
  const rest = restOf(profiled, (at) => back(begin + at))
  let [near, far] = [0, stride]
  let [below, above] = [-root, rest(far) - root]
  while (above < 0) {
    if (Math.abs(far) > Math.max(farthest, 100 * Math.abs(stride))) return null
    ;[near, below, far] = [far, above, 2 * far]
    above = rest(far) - root
  }
  if (Number.isNaN(above)) return null
  for (let round = 0; round < rounds; round++) {
    const middle = far - (above * (far - near)) / (above - below)
    const here = rest(middle) - root
    if (Number.isNaN(here)) return null
    if (Math.abs(here) < closeEnough * root) return back(begin + middle)
    if (here > 0 === above > 0) below /= 2
    else [near, below] = [far, above]
    ;[far, above] = [middle, here]
  }
  return back(begin + far)
}

/** The root of the fall at a value of the figure, the other coordinate free; each search for that begins where the last one ended. NaN where none is found. */
function restOf(
  { figure, logLikelihood, law, top }: Profiled,
  valueAt: (at: number) => number,
): (at: number) => number {
  const rootOf = (height: number) => Math.sqrt(Math.max(0, 2 * (top - height)))
  const { free } = figure
  if (free === null) return (at) => rootOf(logLikelihood(figure.lawWith(valueAt(at), Number.NaN)))
  const place = placeOf(law)
  const unit = free === 'centre' ? Math.exp(place.logWidth) : 1
  let last = place[free]
  return (at) => {
    const value = valueAt(at)
    const begin = last
    const found = maximise(([by]) => logLikelihood(figure.lawWith(value, begin + unit * by!)), [0])
    if (found === null) return Number.NaN
    last = begin + unit * found.at[0]!
    return rootOf(found.value)
  }
}
