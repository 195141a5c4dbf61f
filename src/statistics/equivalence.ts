/** Is one mean near enough to another? Two one-sided tests against a margin, a share of the other, that was named beforehand. */
import { mean, sampleCovariance, sampleVariance } from 'simple-statistics'
import { studentT, studentTBeyond } from './quantile.js'

/** `within`: shown to lie within the margin; `outside`: shown to lie outside of it; `not-shown`: neither. */
export type Verdict = 'within' | 'not-shown' | 'outside'

export interface Equivalence {
  /** Mean of the other over that of the base, less 1. */
  share: number
  /** The interval of 1 - 2 risk that decides; null where there is none. */
  low: number | null
  high: number | null
  /** Statistics against the lower and the upper end of the margin. */
  t: readonly [lower: number, upper: number] | null
  degreesOfFreedom: number
  /** The larger of the two one-sided p-values: shown within where it is at most the risk. */
  p: number | null
  verdict: Verdict
}

const hair = 1e-12

/**
 * Schuirmann, Journal of Pharmacokinetics and Biopharmaceutics 15 (1987) 657-680: the mean is shown to lie within the margin iff its
 * interval of confidence 1 - 2 `risk` does. The margin is a share of the mean of `base`, which is not known exactly either: so the tests are
 * of other - (1 -+ margin) base, pair by pair, and the interval is that of a ratio; Fieller, Journal of the Royal Statistical Society B 16 (1954) 175-185 (both
 * from memory). Fewer than two pairs, pairs that differ alike and a base that may be 0 say nothing: not shown.
 */
export function equivalence(
  base: readonly number[],
  other: readonly number[],
  margin: number,
  risk: number,
): Equivalence {
  const n = base.length
  const degreesOfFreedom = Math.max(0, n - 1)
  const [below, above] = [meanOf(base), meanOf(other)]
  const nothing = { low: null, high: null, t: null, degreesOfFreedom, p: null, verdict: 'not-shown' } as const
  const share = below === 0 ? Number.NaN : above / below - 1
  if (n < 2 || !(below > 0)) return { share, ...nothing }
  const spread: Spread = {
    base: sampleVariance(base as number[]) / n,
    other: sampleVariance(other as number[]) / n,
    both: sampleCovariance(base as number[], other as number[]) / n,
  }
  const errorAt = (ratio: number) =>
    Math.sqrt(Math.max(0, spread.other - 2 * ratio * spread.both + ratio * ratio * spread.base))
  if (!(errorAt(1) > hair * below)) return { share, ...nothing }
  const ends = fieller(below, above, spread, studentT(1 - risk, degreesOfFreedom))
  if (!ends) return { share, ...nothing }
  const tAt = (ratio: number) => (above - ratio * below) / errorAt(ratio)
  const t = [tAt(1 - margin), tAt(1 + margin)] as const
  const [low, high] = ends.map((ratio) => ratio - 1) as [number, number]
  return {
    ...{ share, low, high, t, degreesOfFreedom },
    p: Math.max(beyond(t[0], degreesOfFreedom), beyond(-t[1], degreesOfFreedom)),
    verdict: verdictOf(low, high, margin),
  }
}

const meanOf = (values: readonly number[]) => (values.length > 0 ? mean(values as number[]) : Number.NaN)

/** Variances of the two means, and their covariance. */
interface Spread {
  base: number
  other: number
  both: number
}

/** All ratios that are not refused; null where they have no end, for the base may be 0. */
function fieller(below: number, above: number, spread: Spread, t: number): [number, number] | null {
  const a = below * below - t * t * spread.base
  const b = below * above - t * t * spread.both
  const c = above * above - t * t * spread.other
  if (!(a > 0)) return null
  const root = Math.sqrt(Math.max(0, b * b - a * c))
  return [(b - root) / a, (b + root) / a]
}

function verdictOf(low: number, high: number, margin: number): Verdict {
  if (low >= -margin && high <= margin) return 'within'
  return low > margin || high < -margin ? 'outside' : 'not-shown'
}

/** Chance that Student's t lies above `t`. */
function beyond(t: number, degreesOfFreedom: number): number {
  const both = studentTBeyond(Math.abs(t), degreesOfFreedom)
  return t >= 0 ? both / 2 : 1 - both / 2
}
