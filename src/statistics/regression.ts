/** Least squares on several factors at once: a straight line in each, and how much of the figures it explains. */
import { studentT } from './quantile.js'

/** A slope with its interval. */
export interface Slope {
  mean: number
  low: number
  high: number
  /** In standard deviations of the figure for one standard deviation of the factor, and the half-width of that. */
  standardised: number
  standardisedHalf: number
  /** It lies off 0 by more than its plus-minus. */
  isShown: boolean
}

export interface Regression {
  intercept: number
  slopes: Slope[]
  /** Share of the variance of the figures that the straight lines explain; NaN where they do not vary. */
  explained: number
  /** Standard deviation of what is left. */
  residual: number
  degreesOfFreedom: number
}

/** Length that a column has kept of its own, as a share, below which the others make it up. */
const hair = 1e-9

/** What is no more than this share of the largest figure is its rounding. */
const rounding = 1e-12

/**
 * Fits y = intercept + sum of slope x factor to the rows of `factors`; null where there are no more rows than factors and
 * intercept, or one factor follows from the others. Intervals are Student's at `confidence`, on (0, 1), of `comparisons` that hold together
 * (Bonferroni). Orthogonal columns by Gram and Schmidt, each taken twice; Draper & Smith, Applied Regression Analysis, ch. 5
 * and 6 (from memory).
 */
export function regression(
  factors: readonly (readonly number[])[],
  y: readonly number[],
  confidence: number,
  comparisons = 1,
): Regression | null {
  const n = y.length
  const count = factors[0]?.length ?? 0
  const degreesOfFreedom = n - count - 1
  if (degreesOfFreedom < 1 || y.some((value) => !Number.isFinite(value))) return null
  const average = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / n
  const columns = Array.from({ length: count }, (_, factor) => factors.map((row) => row[factor]!))
  const means = columns.map(average)
  const centred = columns.map((column, factor) => column.map((value) => value - means[factor]!))
  const parted = orthogonal(centred)
  if (!parted) return null
  const { triangle, basis } = parted
  const meanY = average(y)
  const size = y.reduce((most, value) => Math.max(most, Math.abs(value)), 0)
  const isRounding = (deviation: number) => deviation <= rounding * size
  const apart = y.map((value) => value - meanY)
  const rest = isRounding(Math.sqrt(dot(apart, apart) / n)) ? apart.map(() => 0) : apart
  const total = dot(rest, rest)
  const along = basis.map((unit) => takeAway(rest, unit))
  const slopes = solved(triangle, along).map((slope, factor) =>
    isRounding(Math.abs(slope) * Math.sqrt(dot(centred[factor]!, centred[factor]!) / n)) ? 0 : slope,
  )
  const left = isRounding(Math.sqrt(dot(rest, rest) / n)) ? 0 : dot(rest, rest)
  const residual = Math.sqrt(left / degreesOfFreedom)
  const t = studentT(1 - (1 - confidence) / comparisons / 2, degreesOfFreedom)
  return {
    intercept: meanY - slopes.reduce((sum, slope, factor) => sum + slope * means[factor]!, 0),
    slopes: slopes.map((mean, factor) => {
      const half = t * residual * Math.sqrt(variance(triangle, factor))
      const scale = total > 0 ? Math.sqrt(dot(centred[factor]!, centred[factor]!) / total) : 0
      return {
        ...{ mean, low: mean - half, high: mean + half },
        ...{ standardised: mean * scale, standardisedHalf: half * scale },
        isShown: Math.abs(mean) > half,
      }
    }),
    explained: total > 0 ? 1 - left / total : Number.NaN,
    residual,
    degreesOfFreedom,
  }
}

/** Columns as an upper triangle of orthogonal ones of length 1; null where one of them is made up by those before it. */
function orthogonal(
  columns: readonly (readonly number[])[],
): { triangle: number[][]; basis: number[][] } | null {
  const triangle = columns.map(() => columns.map(() => 0))
  const basis: number[][] = []
  for (const [factor, column] of columns.entries()) {
    const rest = [...column]
    for (let pass = 0; pass < 2; pass++)
      for (const [earlier, unit] of basis.entries()) triangle[earlier]![factor]! += takeAway(rest, unit)
    const length = Math.sqrt(dot(rest, rest))
    if (!(length > hair * Math.sqrt(dot(column, column)))) return null
    triangle[factor]![factor] = length
    basis.push(rest.map((value) => value / length))
  }
  return { triangle, basis }
}

/** Takes from `rest`, in place, what lies along a direction of length 1, and says how much it was. */
function takeAway(rest: number[], unit: readonly number[]): number {
  const along = dot(rest, unit)
  for (let row = 0; row < rest.length; row++) rest[row]! -= along * unit[row]!
  return along
}

/** Solves an upper triangle from below. */
function solved(triangle: readonly (readonly number[])[], right: readonly number[]): number[] {
  const values = [...right]
  for (let row = values.length - 1; row >= 0; row--) {
    for (let column = row + 1; column < values.length; column++)
      values[row]! -= triangle[row]![column]! * values[column]!
    values[row]! /= triangle[row]![row]!
  }
  return values
}

/** Diagonal of the inverse of triangle' triangle: squares of a row of the inverse triangle. */
function variance(triangle: readonly (readonly number[])[], row: number): number {
  return triangle.reduce((sum, _, column) => {
    const unit = triangle.map((__, index) => (index === column ? 1 : 0))
    return sum + solved(triangle, unit)[row]! ** 2
  }, 0)
}

function dot(a: readonly number[], b: readonly number[]): number {
  let total = 0
  for (let index = 0; index < a.length; index++) total += a[index]! * b[index]!
  return total
}
