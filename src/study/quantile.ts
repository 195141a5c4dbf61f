/** Quantiles of the laws that intervals are made of. */
import jStat from 'jstat'

/** Value of Student's t with `degreesOfFreedom` (at least 1) below which the share `p`, on (0, 1), lies. */
export const studentT = (p: number, degreesOfFreedom: number): number =>
  jStat.studentt.inv(p, degreesOfFreedom)

/** Value of the standard normal law below which the share `p`, on (0, 1), lies. */
export const standardNormal = (p: number): number => jStat.normal.inv(p, 0, 1)
