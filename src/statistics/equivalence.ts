/** Is a mean difference small enough not to matter? Two one-sided tests against a margin that was named beforehand. */
import { mean, sampleStandardDeviation } from 'simple-statistics'
import { studentT, studentTBeyond } from './quantile.js'

/** `within`: shown to lie within the margin; `outside`: shown to lie outside of it; `not-shown`: neither. */
export type Verdict = 'within' | 'not-shown' | 'outside'

export interface Equivalence {
  mean: number
  /** The interval of 1 - 2 risk that decides; null of fewer than two differences, and of such as are all alike. */
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
 * Schuirmann, Journal of Pharmacokinetics and Biopharmaceutics 15 (1987) 657-680 (from memory): the mean is shown to lie within -margin to
 * +margin iff its Student interval of confidence 1 - 2 `risk` does. Differences that are all alike say nothing of their spread: not shown.
 */
export function equivalence(differences: readonly number[], margin: number, risk: number): Equivalence {
  const n = differences.length
  const centre = n > 0 ? mean(differences as number[]) : Number.NaN
  const degreesOfFreedom = Math.max(0, n - 1)
  const error = n > 1 ? sampleStandardDeviation(differences as number[]) / Math.sqrt(n) : 0
  // equal ones differ by their rounding
  if (!(error > hair * Math.max(...differences.map(Math.abs), 0)))
    return { mean: centre, low: null, high: null, t: null, degreesOfFreedom, p: null, verdict: 'not-shown' }
  const half = studentT(1 - risk, degreesOfFreedom) * error
  const t = [(centre + margin) / error, (centre - margin) / error] as const
  const [low, high] = [centre - half, centre + half]
  return {
    ...{ mean: centre, low, high, t, degreesOfFreedom },
    p: Math.max(above(t[0], degreesOfFreedom), above(-t[1], degreesOfFreedom)),
    verdict:
      low >= -margin && high <= margin ? 'within' : low > margin || high < -margin ? 'outside' : 'not-shown',
  }
}

/** Chance that Student's t lies above `t`. */
function above(t: number, degreesOfFreedom: number): number {
  const both = studentTBeyond(Math.abs(t), degreesOfFreedom)
  return t >= 0 ? both / 2 : 1 - both / 2
}
