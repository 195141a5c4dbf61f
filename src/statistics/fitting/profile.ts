/**
 * Intervals of a figure of a law from the profile of the likelihood: the values with which the likeliest law is not much less likely
 * than the likeliest of all. Venzon & Moolgavkar, Applied Statistics 37 (1988) 87-94; Meeker & Escobar, Statistical
 * Methods for Reliability Data (1998), ch. 8 (both from memory).
 */
import { studentT } from '../quantile.js'
import { type Figure, isWithin, placeOf } from './chart.js'
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
/** How far from the estimate an end is looked for: by a factor of e to this, or so many widths of ln x. Beyond, it is as good as open. */
const farthest = 10
const closeEnough = 1e-7

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

/** A figure whose interval is looked for. */
interface Looked {
  value: number
  /** Whether it is above 0, so that its logarithm is the better scale. */
  isPositive: boolean
  /** About its size, or the width of ln x. */
  unit: number
  /** About its standard error. */
  se: number
}

/**
 * Ends of the interval where twice the log-likelihood has fallen by `fall`. One that is not reached is 0, -Infinity or Infinity. `se`: about
 * the figure's standard error.
 */
export function profileInterval(profiled: Profiled, se: number, fall: number): Ends {
  const { figure, law } = profiled
  const { isPositive } = figure
  const value = figure.of(law)
  // on the logarithm, or in widths
  const unit = isPositive ? value : Math.exp(placeOf(law).logWidth)
  return intervalOf(() => restOf(profiled), { value, isPositive, unit, se }, fall)
}

/** The same of any figure; `restOf` gives the root of the fall at its values, one after another away from the estimate. */
export function intervalOf(
  restOf: () => (value: number) => number,
  { value, isPositive, unit, se }: Looked,
  fall: number,
): Ends {
  const root = Math.sqrt(fall)
  const back = (at: number) => (isPositive ? value * Math.exp(at) : value + unit * at)
  const rest = (direction: number) => {
    const fallen = restOf()
    return (at: number) => fallen(back(direction * at)) - root
  }
  const stride = Math.min(1, (root * se) / unit)
  const [down, up] = [endOf(rest(-1), root, stride), endOf(rest(1), root, stride)]
  const nothing = isPositive ? 0 : Number.NEGATIVE_INFINITY
  return {
    low: down === null ? nothing : back(-down),
    high: up === null ? Number.POSITIVE_INFINITY : back(up),
  }
}

/**
 * How far out `rest`, which grows from -`root` at 0 nearly as a straight line, is 0; null where it is not as far as is looked. The chord with
 * the Illinois rule closes in: Dowell & Jarratt, BIT 11 (1971) 168-174.
 */
function endOf(rest: (at: number) => number, root: number, stride: number): number | null {
  const around = bracketOf(rest, root, stride)
  if (around === null) return null
  let { near, below, far, above } = around
  for (let round = 0; round < rounds; round++) {
    const middle = far - (above * (far - near)) / (above - below)
    const here = rest(middle)
    if (!Number.isFinite(here)) return null
    if (Math.abs(here) < closeEnough * root) return middle
    if (here > 0 === above > 0) below /= 2
    else [near, below] = [far, above]
    ;[far, above] = [middle, here]
  }
  return far
}

/** Places on both sides of the end, by strides that double, and halve where nothing is known so far out. */
function bracketOf(rest: (at: number) => number, root: number, stride: number) {
  let [near, below, far] = [0, -root, stride]
  for (let lost = 0; lost < 5; ) {
    const above = rest(far)
    if (above >= 0 && above < Number.POSITIVE_INFINITY) return { near, below, far, above }
    if (above < 0) {
      if (far >= farthest) return null
      ;[near, below, far] = [far, above, Math.min(farthest, 2 * far)]
    } else {
      far = (near + far) / 2
      lost++
    }
  }
  return null
}

/** The root of the fall at a value of the figure, the other coordinate free; each search for that begins where the last one ended. NaN where none is found. */
function restOf({ figure, logLikelihood, law, top }: Profiled): (value: number) => number {
  const rootOf = (height: number) => Math.sqrt(Math.max(0, 2 * (top - height)))
  const { free } = figure
  if (free === null) return (value) => rootOf(logLikelihood(figure.lawWith(value, Number.NaN)))
  let last = placeOf(law)[free]
  return (value) => {
    const begin = last
    const width = Math.exp(placeOf(figure.lawWith(value, begin)).logWidth)
    const unit = free === 'centre' ? width : 1
    const heightAt = ([by]: readonly number[]) => {
      const near = figure.lawWith(value, begin + unit * by!)
      return isWithin(placeOf(near)) ? logLikelihood(near) : Number.NEGATIVE_INFINITY
    }
    const found = maximise(heightAt, [0])
    if (found === null) return Number.NaN
    last = begin + unit * found.at[0]!
    return rootOf(found.value)
  }
}
