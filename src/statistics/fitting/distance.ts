/** How far what a log shows lies from what a law predicts that it shows. */
import type { Span } from './shown.js'

/** The distribution of places in a log, u on (0, 1), as straight lines between knots; it may jump at a knot. */
export interface Placed {
  /** Knots, as shares below and above them: from 0 to 1. */
  below: Float64Array
  above: Float64Array
  /** The distribution just before and just after a knot. */
  before: Float64Array
  after: Float64Array
  /** Times in all. */
  n: number
}

/**
 * The distribution of the places at which `counts` times stand, each spread evenly over its span: where the law is true its mean is u, for
 * whatever was rounded, cut off or missing. Of exact times it is the empirical distribution. Czado, Gneiting & Held,
 * Biometrics 65 (2009) 1254-1261 (from memory), who spread counts so.
 */
export function placed(spans: readonly Span[], counts: readonly number[]): Placed {
  const edges: { below: number; above: number; jump: number; slope: number }[] = []
  let n = 0
  for (const [index, { low, high }] of spans.entries()) {
    const count = counts[index]!
    n += count
    const width = low.below < 0.5 ? high.below - low.below : low.above - high.above
    if (width > 0)
      edges.push({ ...low, jump: 0, slope: count / width }, { ...high, jump: 0, slope: -count / width })
    else edges.push({ ...low, jump: count, slope: 0 })
  }
  edges.sort((one, other) => one.below - other.below || other.above - one.above)
  const knots = edges.length + 2
  const made: Placed = {
    below: new Float64Array(knots),
    above: new Float64Array(knots),
    before: new Float64Array(knots),
    after: new Float64Array(knots),
    n,
  }
  made.above[0] = 1
  let [sum, slope] = [0, 0]
  for (const [index, edge] of edges.entries()) {
    const knot = index + 1
    made.below[knot] = edge.below
    made.above[knot] = edge.above
    sum += slope * stride(made, knot)
    made.before[knot] = sum / n
    sum += edge.jump
    slope += edge.slope
    made.after[knot] = sum / n
  }
  made.below[knots - 1] = 1
  made.before[knots - 1] = 1
  made.after[knots - 1] = 1
  return made
}

/** From the knot before to this one. */
const stride = ({ below, above }: Placed, knot: number): number =>
  below[knot]! < 0.5 ? below[knot]! - below[knot - 1]! : above[knot - 1]! - above[knot]!

/** Distances of a distribution of places from that of a true law. */
export interface Distance {
  /** Largest difference of the distributions: Kolmogorov's D. */
  largest: number
  /** n times the integral of the squared difference over u (1 - u): A^2 of Anderson & Darling. */
  weighted: number
}

/** Shares that differ by no more are alike but for rounding. */
const hair = 1e-9

/**
 * Kolmogorov's D and Anderson & Darling's A^2. Of exact times these are the classical ones: Stephens, J. Am. Stat. Assoc. 69 (1974) 730-737. A difference that
 * is a + b u from one knot to the next gives a^2 ln(u'/u) + (a + b)^2 ln((1 - u) / (1 - u')) - b^2 (u' - u).
 */
export function distanceOf(log: Placed): Distance {
  const { below, above, before, after, n } = log
  let [largest, weighted] = [0, 0]
  for (let knot = 1; knot < below.length; knot++) {
    const length = stride(log, knot)
    if (!(length > 0)) continue
    const first = after[knot - 1]! - below[knot - 1]!
    const last = before[knot]! - below[knot]!
    largest = Math.max(largest, Math.abs(first), Math.abs(last))
    const b = (last - first) / length
    // what the straight line has at 0 and at 1
    const atBegin = first - b * below[knot - 1]!
    const atEnd = last + b * above[knot]!
    weighted +=
      squared(atBegin, length / below[knot - 1]!) + squared(atEnd, length / above[knot]!) - b * b * length
  }
  return { largest, weighted: n * weighted }
}

/** A squared difference at an end times the logarithm of 1 + `ratio`; where that is without end, the difference has to be none. */
const squared = (difference: number, ratio: number): number =>
  ratio === Infinity && Math.abs(difference) < hair ? 0 : difference * difference * Math.log1p(ratio)

/** The place u up to which the share `p`, on (0, 1), of what the log shows stands. */
export function quantileOf({ below, before, after }: Placed, p: number): number {
  let knot = 1
  while (knot < below.length - 1 && after[knot]! < p) knot++
  const [from, to] = [after[knot - 1]!, before[knot]!]
  if (p >= to) return below[knot]!
  return below[knot - 1]! + ((p - from) / (to - from)) * (below[knot]! - below[knot - 1]!)
}
