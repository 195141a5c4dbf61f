/** Which of the laws that were fitted to times a model should draw from, and why. */
import { chiSquareAbove } from '../tails.js'
import type { Fit } from './fit.js'
import type { Goodness, Misfit } from './goodness.js'

/** A law that was fitted, and how well it fits; null where that could not be tested. */
export interface Candidate {
  fit: Fit
  goodness: Goodness | null
}

/**
 * Why a law was chosen, or none. `lowest-bic`: of the laws that the test does not refuse it has the lowest BIC. `few`: times are too few for a test to refuse
 * anything, and an exponential law is not refused by the likelihood ratio. `small-misfit`: the test refuses all laws, but by so little that it hardly
 * matters. `refused`: none fits, so the times themselves are to be drawn from. `none`: no law could be fitted.
 */
export type Reason = 'lowest-bic' | 'few' | 'small-misfit' | 'refused' | 'none'

export interface Choice {
  /** The law to draw from; null: the observed times, where there are any. */
  chosen: Candidate | null
  reason: Reason
  /** Other laws that these times cannot be told apart from it by: not refused, and with a BIC that is not much higher. Lowest BIC first. */
  alike: readonly Candidate[]
}

/** Risk at which a law is refused. */
const refusal = 0.05
/** Times seen to end below which no test of fit tells laws apart. Project rule. */
export const fewEvents = 10
/**
 * Difference of BIC up to which laws are not told apart: odds of 20 to 1, for half of it is about the logarithm of the odds (Kass & Raftery, J. Am. Stat. Assoc. 90 (1995)
 * 773-795). Up to 2, "not worth more than a bare mention" there, the true family of 50 simulated times was left out up to 18 times of 100.
 */
const sameBic = 2 * Math.log(20)
/** Misfits that hardly matter: of the quantiles as a share of the mean, and of the mean. Project rule. */
const small = { quantiles: 0.05, mean: 0.02 }

/** Chooses among laws that were fitted to the same times: of each family one, the exponential among them, and a mixture where there is one. */
export function choose(candidates: readonly Candidate[]): Choice {
  const order = [...candidates].sort((one, other) => one.fit.bic - other.fit.bic)
  if (order.length === 0) return { chosen: null, reason: 'none', alike: [] }
  const kept = order.filter((each) => !isRefused(each))
  const constant = kept.find(({ fit }) => fit.law.family === 'exponential')
  if (constant && constant.fit.events < fewEvents && !isAgeing(constant, order))
    return chosen(constant, 'few', kept)
  if (kept[0]) return chosen(kept[0], 'lowest-bic', kept)
  const near = order.filter(({ goodness }) => goodness !== null && isSmall(goodness.misfit))
  return near[0] ? chosen(near[0], 'small-misfit', near) : { chosen: null, reason: 'refused', alike: [] }
}

/** A choice with those of the others that it cannot be told apart from. */
const chosen = (one: Candidate, reason: Reason, others: readonly Candidate[]): Choice => ({
  chosen: one,
  reason,
  alike: others.filter((other) => other !== one && other.fit.bic - one.fit.bic <= sameBic),
})

const isRefused = ({ goodness }: Candidate): boolean =>
  goodness !== null && goodness.weightedGap.pValue <= refusal

/** Whether the likelihood ratio shows that the shape of a Weibull law is not 1. */
function isAgeing(constant: Candidate, all: readonly Candidate[]): boolean {
  const weibull = all.find(({ fit }) => fit.law.family === 'weibull')
  return weibull !== undefined && likelihoodRatio(constant.fit, weibull.fit).p <= refusal
}

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

/** Whether a misfit hardly matters, whatever a test says of it. */
const isSmall = ({ quantiles, means }: Misfit): boolean =>
  quantiles <= small.quantiles &&
  (means === null || Math.abs(means.law - means.log) <= small.mean * means.log)
