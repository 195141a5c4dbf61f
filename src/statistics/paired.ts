/**
 * Differences of two designs over the same shifts, with intervals: pairs that had the same luck are told apart sooner.
 */
import { mean, sampleVariance } from 'simple-statistics'
import { type Estimate, ofFew, wilsonEstimate } from './estimate.js'
import { isFewOf } from './events.js'
import { signTest, standardNormal, studentT, studentTBeyond } from './quantile.js'
import { skewedInterval, skewnessOfMean, withoutSkewness } from './skewness.js'

/** A difference, other less base, with its interval and what a test says of it. */
interface Difference extends Estimate {
  /**
   * Chance of a difference at least as far from 0, on either side, if there were none in truth. NaN without an
   * interval.
   */
  pValue: number
}

/** A difference of pairs. `n` is the number of pairs, `sd` the spread of their differences. */
export interface PairedDifference extends Difference {
  /**
   * By what factor the pairing shrank the variance: that of independent samples over that of the pairs. Below 1 where
   * it widened it, Infinity where the pairs differ alike and the shifts do not, 1 where nothing varies, NaN of fewer
   * than two pairs.
   */
  varianceRatio: number
}

/** A difference of two shifts, or a spread, that is no more than this share of the largest figure is rounding. */
const hair = 1e-12

/**
 * Mean of other less base with the interval and p-value of the paired t test; pairs of which either says nothing (NaN)
 * are left out of both. Student, Biometrika 6 (1908) 1-25; Law, Simulation Modeling and Analysis, sec. 10.2.1 (from
 * memory). Lists of unequal length get a RangeError.
 */
export function pairedDifference(
  base: readonly number[],
  other: readonly number[],
  confidence: number,
): PairedDifference {
  const pairs = allSay([base, other])
  const differences = pairs.map(([before, after]) => lessRounding(after! - before!, before!, after!))
  return ofPairs(pairs, differences, differences.filter((each) => each !== 0).length, confidence)
}

/** The difference of pairs of which so many `differ`. Where few of them do, those that have not been seen may outweigh them: no interval. */
function ofPairs(
  pairs: readonly (readonly number[])[],
  differences: readonly number[],
  differ: number,
  confidence: number,
): PairedDifference {
  const n = pairs.length
  const centre = n > 0 ? mean(differences as number[]) : Number.NaN
  if (n < 2) return { ...saysNothing(centre, n), varianceRatio: Number.NaN }
  const size = largest(pairs.flat())
  const variance = varianceOf(differences, size)
  const independent = [0, 1].map((side) =>
    varianceOf(
      pairs.map((pair) => pair[side]!),
      size,
    ),
  )
  const ratio = { n, varianceRatio: varianceRatio(independent[0]! + independent[1]!, variance) }
  const sd = Math.sqrt(variance)
  if (isFewOf(differ, n))
    return {
      ...ofFew({ mean: centre, sd, n, low: 0, high: 0 }, { events: differ, of: 'shifts' }),
      pValue: Number.NaN,
      ...ratio,
    }
  return {
    ...student(centre, sd, sd / Math.sqrt(n), n - 1, confidence, skewnessOfMean(differences)),
    ...ratio,
  }
}

/**
 * Difference of two ratios, total over total, each with the residuals of `ratioEstimate`, paired shift by shift: to
 * first order a ratio is the mean of its linearised shifts, and so is the difference of two. The linearised ratio:
 * Cochran, Sampling Techniques (1977), ch. 6, the difference of two of one sample: sec. 6.17 (both from memory).
 * Shifts of which one of the four numbers says nothing (NaN) are left out; where a base to divide by is 0 in total
 * nothing is said. Lists of unequal length get a RangeError.
 */
export function pairedRatioDifference(
  baseValues: readonly number[],
  baseOvers: readonly number[],
  otherValues: readonly number[],
  otherOvers: readonly number[],
  confidence: number,
): PairedDifference {
  const said = allSay([baseValues, baseOvers, otherValues, otherOvers])
  const base = linearised(said.map(([value, over]) => [value!, over!]))
  const other = linearised(said.map(([, , value, over]) => [value!, over!]))
  const pairs = allSay([base, other])
  const differences = pairs.map(([before, after]) => lessRounding(after! - before!, before!, after!))
  // a ratio moves all of its linearised shifts: which of them differ is told by what it is made of
  const differ = said.filter((row) => row[0] !== row[2] || row[1] !== row[3]).length
  return ofPairs(pairs, differences, differ, confidence)
}

/** Shifts as numbers whose mean is the ratio and whose spread is that of its residuals; NaN where it has none. */
export function linearised(shifts: readonly (readonly [number, number])[]): number[] {
  const total = shifts.reduce((sum, [, over]) => sum + over, 0)
  const ratio = shifts.reduce((sum, [value]) => sum + value, 0) / total
  const meanOver = total / shifts.length
  return shifts.map(([value, over]) =>
    total === 0 ? Number.NaN : ratio + lessRounding(value - ratio * over, value, ratio * over) / meanOver,
  )
}

/**
 * Difference of two shares of the same shifts (each 0 or 1 per shift), honest near none and all: Wilson's intervals of
 * both squared and added, less what they have in common by the phi correlation with its correction for continuity.
 * Newcombe, Statistics in Medicine 17 (1998) 2635-2650, method 10 (from memory). The p-value is that of the exact test
 * of McNemar, Psychometrika 12 (1947) 153-157: of the shifts that differ as many go each way. It is the more cautious
 * of the two, so that an interval may lie off 0 where the test does not say so yet. Lists of unequal length get a
 * RangeError.
 */
export function pairedShareDifference(
  base: readonly number[],
  other: readonly number[],
  confidence: number,
): PairedDifference {
  const pairs = allSay([base, other])
  const n = pairs.length
  if (n === 0) return { ...saysNothing(Number.NaN, 0), varianceRatio: Number.NaN }
  const before = wilsonEstimate(
    pairs.map(([value]) => value!),
    confidence,
  )
  const after = wilsonEstimate(
    pairs.map(([, value]) => value!),
    confidence,
  )
  const ups = pairs.filter(([was, is]) => is! > was!).length
  const downs = pairs.filter(([was, is]) => is! < was!).length
  const both = pairs.filter(([was, is]) => was! + is! === 2).length
  const phi = correlation(both, ups, downs, n - both - ups - downs)
  const centre = (ups - downs) / n
  const variance = (ups + downs) / n - centre * centre
  return {
    mean: centre,
    low: centre - apart(after.mean - after.low, before.high - before.mean, phi),
    high: centre + apart(after.high - after.mean, before.mean - before.low, phi),
    sd: Math.sqrt(variance),
    n,
    pValue: signTest(ups, downs),
    varianceRatio: n < 2 ? Number.NaN : varianceRatio(before.sd ** 2 + after.sd ** 2, variance),
  }
}

/** Phi of two by two counts, a positive one made less by half a shift on each; 0 where one share is none or all. */
function correlation(both: number, ups: number, downs: number, neither: number): number {
  const margins = (both + ups) * (downs + neither) * (both + downs) * (ups + neither)
  if (margins === 0) return 0
  const product = both * neither - ups * downs
  const half = (both + ups + downs + neither) / 2
  return (product > 0 ? Math.max(0, product - half) : product) / Math.sqrt(margins)
}

/** Length of the third side: sides `a` and `b`, `phi` the cosine between them. Rounding does not take it below 0. */
const apart = (a: number, b: number, phi: number): number =>
  Math.sqrt(Math.max(0, a * a - 2 * phi * a * b + b * b))

/**
 * Fewest shifts, at least 2, of which a test at this confidence shows a difference of `matter` (above 0) with chance
 * `power`, on [0.5, 1), if pairs differ with this standard deviation: n = (t(confidence) + t(power))^2 sd^2 / matter^2
 * with t of n - 1 degrees of freedom, which n itself must meet. A deviation of 0 gives 2, NaN gives NaN. NIST/SEMATECH
 * e-Handbook, sec. 7.2.2.2 (from memory).
 */
export function shiftsToShow(
  sdOfDifference: number,
  matter: number,
  confidence: number,
  power = 0.8,
): number {
  const unit = (sdOfDifference / matter) ** 2
  const tail = (1 + confidence) / 2
  // t is farther out than the normal law, which therefore never asks for too many: a start close below
  let n = Math.max(2, Math.ceil((standardNormal(tail) + standardNormal(power)) ** 2 * unit))
  if (!Number.isFinite(n)) return n
  while ((studentT(tail, n - 1) + studentT(power, n - 1)) ** 2 * unit > n) n++
  return n
}

/** The shifts of which each list says something, a row a shift. */
function allSay(lists: readonly (readonly number[])[]): number[][] {
  const [first, ...others] = lists
  const odd = others.find((list) => list.length !== first!.length)
  if (odd) throw new RangeError(`${first!.length} and ${odd.length} shifts are no pairs`)
  return first!
    .map((_, shift) => lists.map((list) => list[shift]!))
    .filter((row) => !row.some((value) => Number.isNaN(value)))
}

const lessRounding = (difference: number, a: number, b: number): number =>
  Math.abs(difference) <= hair * Math.max(Math.abs(a), Math.abs(b)) ? 0 : difference

const largest = (values: readonly number[]): number =>
  values.reduce((most, value) => Math.max(most, Math.abs(value)), 0)

/** Variance of figures made of numbers up to `size`: 0 where it is no more than their rounding. */
function varianceOf(values: readonly number[], size: number): number {
  const variance = sampleVariance(values as number[])
  return Math.sqrt(variance) <= hair * size ? 0 : variance
}

const saysNothing = (centre: number, n: number) => ({
  mean: centre,
  low: Number.NaN,
  high: Number.NaN,
  sd: Number.NaN,
  n,
  pValue: Number.NaN,
})

/**
 * Student's interval and p-value about `centre`, of a mean of that skewness; what does not vary has no width and is either none or
 * certain.
 */
function student(
  centre: number,
  sd: number,
  deviation: number,
  degreesOfFreedom: number,
  confidence: number,
  skewness: number,
): Omit<Difference, 'n'> {
  if (deviation === 0) return { mean: centre, low: centre, high: centre, sd, pValue: centre === 0 ? 1 : 0 }
  const t = studentT((1 + confidence) / 2, degreesOfFreedom)
  const pValue = studentTBeyond(withoutSkewness(centre / deviation, skewness), degreesOfFreedom)
  return { mean: centre, ...skewedInterval(centre, deviation, t, skewness), sd, pValue }
}

const varianceRatio = (independent: number, paired: number): number =>
  independent === 0 && paired === 0 ? 1 : independent / paired
