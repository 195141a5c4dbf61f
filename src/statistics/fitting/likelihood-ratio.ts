/** Whether a special case of a family will do: whether stops age, or end as likely however long they last. */
import { chiSquareAbove } from '../tails.js'
import type { Fit } from './fit.js'

/** A test of a law against one that holds it as a special case. */
export interface LikelihoodRatio {
  /** Twice the difference of the log-likelihoods. */
  statistic: number
  degreesOfFreedom: number
  /** Chance of as much or more where the special case is true: chi-square, right for many events. */
  p: number
}

/**
 * The likelihood ratio of `special` against `general`, fitted to the same sample: an exponential law against Weibull's or gamma asks whether the shape is 1. Not for
 * numbers of parts of a mixture, where chi-square does not hold. Lawless (2003), sec. 4.1 (from memory).
 */
export function likelihoodRatio(special: Fit, general: Fit): LikelihoodRatio {
  const statistic = Math.max(0, 2 * (general.logLikelihood - special.logLikelihood))
  const degreesOfFreedom = general.parameters.length - special.parameters.length
  return { statistic, degreesOfFreedom, p: chiSquareAbove(statistic, degreesOfFreedom) }
}
