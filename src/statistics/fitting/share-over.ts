/** What share of the times of a fitted law is over a length, and how well that is known: what a log leaves out is reckoned by it. */
import { type Figure, lawAt } from './chart.js'
import { leastSpread } from './expectation.js'
import type { Fit } from './fit.js'
import { distributionOf, type Family } from './law.js'
import { logLikelihood } from './likelihood.js'
import { type Ends, fallAt, profileInterval } from './profile.js'
import { mixtureInterval, overOfParts } from './profile-mixture.js'
import { roughly } from './rough.js'
import type { Sample } from './sample.js'

/** A share of times with the ends of its interval, from 0 to 1. */
export interface ShareOver extends Ends {
  share: number
}

/** The share over `from`, s, above 0, by the law that was fitted to `sample`, with its interval at `confidence` from the profile of the likelihood. */
export function shareOver(sample: Sample, fit: Fit, from: number, confidence: number): ShareOver {
  const { law, logLikelihood: top } = fit
  const share = distributionOf(law).above(from)
  // a first stride: the more is missing, the less is known of it
  const se = Math.max(1 - share, 0.02) / 4
  const fall = fallAt(confidence, fit.events)
  const heightOf = (of: typeof law) => logLikelihood(sample, distributionOf(of))
  const floor = law.family === 'mixture' ? leastSpread(roughly(sample)) : 0
  const { low, high } =
    law.family === 'mixture'
      ? mixtureInterval({ law, top, heightOf, floor, figure: overOfParts(from) }, se, fall)
      : profileInterval({ figure: overFigure(law.family, from), logLikelihood: heightOf, law, top }, se, fall)
  return { share, low, high: Math.min(1, high) }
}

/** The share over `from` as a figure of a law: a law of each width is moved until it has that share. */
const overFigure = (family: Family, from: number): Figure => ({
  name: 'share over',
  isPositive: true,
  of: (law) => distributionOf(law).above(from),
  lawWith: (over, other) => {
    const logWidth = family === 'exponential' ? 0 : other
    const { quantile } = distributionOf(lawAt(family, { centre: 0, logWidth }))
    const centre = over < 1 ? Math.log(from / quantile(1 - over)) : Number.NaN
    return lawAt(family, { centre, logWidth })
  },
  free: family === 'exponential' ? null : 'logWidth',
})
