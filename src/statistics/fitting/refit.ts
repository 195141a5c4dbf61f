/** Fits that begin near their end: of a log that was drawn from a law, by the family of that law. For bootstraps, which need many. */
import { dot } from '../columns.js'
import { lawAt, placeOf } from './chart.js'
import { inverseOf, triangleOf } from './cholesky.js'
import { fitComplete } from './complete.js'
import { leastSpread } from './expectation.js'
import { distributionOf, type FittedLaw } from './law.js'
import { logLikelihood } from './likelihood.js'
import { roughly } from './rough.js'
import type { Sample } from './sample.js'

/** Step of the differences, in coordinates in which a law bends within about 1. */
const step = 0.01
const rounds = 40
/** Rise of the log-likelihood that the quadratic promises below which it is the top: a hundredth of a standard error away. */
const arrived = 1e-4
const shortest = 2 ** -12

/** The law of the family of `law` that makes a log likeliest, for logs like `sample`, of which `law` is the fit; null where none is found. */
export function refits(law: FittedLaw, sample: Sample): (log: Sample) => FittedLaw | null {
  if (law.family !== 'mixture' && isComplete(sample)) {
    const { family } = law
    return ({ seen, counts }) =>
      fitComplete(
        family,
        Float64Array.from(seen, (each) => ('at' in each ? each.at : Number.NaN)),
        Float64Array.from(counts),
      )
  }
  const { origin, lawOf } = coordinatesOf(law)
  // a part that shrinks about one time is likely without end, and no part
  const floor = law.family === 'mixture' ? leastSpread(roughly(sample)) : 0
  const isWide = (each: FittedLaw) =>
    each.family !== 'mixture' || Math.min(each.first.spread, each.second.spread) > floor
  const heightOf = (log: Sample) => (x: readonly number[]) => {
    const there = lawOf(x)
    return isWide(there) ? logLikelihood(log, distributionOf(there)) : Number.NEGATIVE_INFINITY
  }
  const spread = spreadAt(heightOf(sample), origin)
  return (log) => {
    const top = climb(heightOf(log), origin, spread)
    return top === null ? null : lawOf(top)
  }
}

const isComplete = ({ seen, from }: Sample): boolean => from === 0 && seen.every((each) => 'at' in each)

/** Coordinates of the family of a law in which likelihoods are nearly round, and where the law stands: at the origin. */
function coordinatesOf(law: FittedLaw): {
  origin: readonly number[]
  lawOf: (x: readonly number[]) => FittedLaw
} {
  if (law.family === 'mixture') {
    const parts = [law.first, law.second] as const
    const logit = Math.log(law.share / (1 - law.share))
    const moved = (index: 0 | 1, along: number, wider: number) => {
      const { location, spread } = parts[index]
      return {
        family: 'lognormal',
        location: location + spread * along,
        spread: spread * Math.exp(wider),
      } as const
    }
    return {
      origin: [0, 0, 0, 0, 0],
      lawOf: ([share, one, wider, other, widerOther]) => ({
        family: 'mixture',
        share: 1 / (1 + Math.exp(-logit - share!)),
        first: moved(0, one!, wider!),
        second: moved(1, other!, widerOther!),
      }),
    }
  }
  const { family } = law
  const { centre, logWidth } = placeOf(law)
  const unit = Math.exp(logWidth)
  return {
    origin: family === 'exponential' ? [0] : [0, 0],
    lawOf: ([along, wider = 0]) =>
      lawAt(family, { centre: centre + unit * along!, logWidth: logWidth + wider }),
  }
}

type Height = (x: readonly number[]) => number

const along = (x: readonly number[], index: number, by: number): number[] =>
  x.map((each, other) => (other === index ? each + by : each))

const slopesAt = (f: Height, x: readonly number[]): number[] =>
  x.map((_, index) => (f(along(x, index, step)) - f(along(x, index, -step))) / (2 * step))

/** Inverse of the negative second derivatives at a top: the covariances there. Where they are none, a rough start is made. */
function spreadAt(f: Height, x: readonly number[]): number[][] {
  const bends = x.map((_, index) => {
    const [up, down] = [slopesAt(f, along(x, index, step)), slopesAt(f, along(x, index, -step))]
    return up.map((each, other) => -(each - down[other]!) / (2 * step))
  })
  const even = bends.map((row, i) => row.map((each, j) => (each + bends[j]![i]!) / 2))
  const triangle = triangleOf(even)
  return triangle === null ? x.map((_, i) => x.map((__, j) => (i === j ? step : 0))) : inverseOf(triangle)
}

/** The top by the method of Broyden, Fletcher, Goldfarb and Shanno, halving steps that do not lead up: Nocedal & Wright, Numerical Optimization, ch. 6 (from memory). */
function climb(
  f: Height,
  start: readonly number[],
  spread: readonly (readonly number[])[],
): readonly number[] | null {
  let [x, height] = [start, f(start)]
  let slopes = slopesAt(f, x)
  let inverse = spread
  for (let round = 0; round < rounds; round++) {
    const way = inverse.map((row) => dot(row, slopes))
    const promised = dot(way, slopes) / 2
    if (!(promised >= 0)) return null
    if (promised < arrived) return x.map((each, index) => each + way[index]!)
    let share = Math.min(1, 1 / Math.max(...way.map(Math.abs)))
    let next = x
    let reached = Number.NaN
    for (; share > shortest && !(reached > height); share /= 2) {
      next = x.map((each, index) => each + share * way[index]!)
      reached = f(next)
    }
    if (!(reached > height)) return null
    const slopesThere = slopesAt(f, next)
    inverse = updated(
      inverse,
      next.map((each, index) => each - x[index]!),
      slopes.map((each, index) => each - slopesThere[index]!),
    )
    ;[x, height, slopes] = [next, reached, slopesThere]
  }
  return null
}

/** The inverse of the second derivatives with what a step, and the fall of the slopes along it, say of them. */
function updated(
  inverse: readonly (readonly number[])[],
  by: readonly number[],
  fall: readonly number[],
): readonly (readonly number[])[] {
  const bend = dot(by, fall)
  if (!(bend > 0)) return inverse
  const carried = inverse.map((row) => dot(row, fall))
  const front = (1 + dot(fall, carried) / bend) / bend
  return inverse.map((row, i) =>
    row.map(
      (each, j) => each + front * by[i]! * by[j]! - (by[i]! * carried[j]! + carried[i]! * by[j]!) / bend,
    ),
  )
}
