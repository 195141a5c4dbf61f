/** Fits of a family to times by maximum likelihood, with intervals. */
import { chiSquare } from '../quantile.js'
import { type Figure, isWithin, lawAt, meanOf, type Place, parametersOf, placeOf } from './chart.js'
import { inverseOf, type Matrix, triangleOf } from './cholesky.js'
import { fitComplete } from './complete.js'
import { distributionOf, type Family, type FittedLaw, type SimpleLaw } from './law.js'
import { logLikelihood } from './likelihood.js'
import { maximise } from './maximise.js'
import { type Ends, fallAt, profileInterval } from './profile.js'
import { eventsIn, obstacleTo, roughly, timesIn, type Why } from './rough.js'
import type { Sample } from './sample.js'

/** A figure of a law with its interval. An end that nothing bounds is 0, -Infinity or Infinity. */
export interface Known extends Ends {
  value: number
}

/** A parameter as it is named in `FittedLaw`. */
export interface Parameter extends Known {
  name: string
  /** Standard error from the observed information. */
  se: number
}

/** A law that is fitted. */
export interface Fit {
  law: FittedLaw
  /** Times in the record. */
  n: number
  /** Those of them that were seen to end: not right-censored. */
  events: number
  logLikelihood: number
  parameters: readonly Parameter[]
  /** Covariances of the estimates of `parameters`, in their order. */
  covariance: Matrix
  /** Mean of the law, s. */
  mean: Known
  aic: number
  bic: number
}

/** No fit, and why. */
export interface Unfitted {
  why: Why
}

/** Standard error in widths of ln x, or of the logarithm of the width, from which the record says nothing. Project rule. */
const saysNothing = 100

/**
 * The law of `family` that makes `sample` likeliest, with intervals at `confidence`, on (0, 1): of an exponential law exact where no time is
 * rounded, else from the profile of the likelihood.
 */
export function fit(sample: Sample, family: Family, confidence = 0.95): Fit | Unfitted {
  const why = obstacleTo(sample, family)
  if (why !== null) return { why }
  const found = likeliest(sample, family)
  if (found === null) return { why: 'no-maximum' }
  const { law, top, lawNear, covariance: near } = found
  const events = eventsIn(sample)
  const figures = parametersOf(family)
  const covariance = covarianceOf(figures, lawNear, near)
  const interval = intervals(sample, law, top, events, confidence)
  const n = timesIn(sample)
  const mean = meanOf(family)
  const meanSe = Math.sqrt(covarianceOf([mean], lawNear, near)[0]![0]!)
  return {
    law,
    n,
    events,
    logLikelihood: top,
    parameters: figures.map((figure, index) => {
      const se = Math.sqrt(covariance[index]![index]!)
      return { name: figure.name, value: figure.of(law), se, ...interval(figure, se) }
    }),
    covariance,
    mean: { value: mean.of(law), ...interval(mean, meanSe) },
    ...criteria(top, figures.length, n),
  }
}

/** Akaike's and the Bayesian criterion of a law with so many parameters: Burnham & Anderson, Model Selection (2002), from memory. */
export const criteria = (top: number, parameters: number, n: number): { aic: number; bic: number } => ({
  aic: 2 * parameters - 2 * top,
  bic: parameters * Math.log(n) - 2 * top,
})

/** The likeliest law, the laws near it in coordinates whose origin it is, and their covariances. */
function likeliest(sample: Sample, family: Family) {
  const likelihood = (law: SimpleLaw) => logLikelihood(sample, distributionOf(law))
  const start = startOf(sample, family, likelihood)
  if (start === null) return null
  const unit = Math.exp(start.logWidth)
  const placeAt = ([along, wider = 0]: readonly number[]): Place => ({
    centre: start.centre + unit * along!,
    logWidth: start.logWidth + wider,
  })
  const found = topOf(
    (x) => (isWithin(placeAt(x)) ? likelihood(lawAt(family, placeAt(x))) : Number.NEGATIVE_INFINITY),
    family === 'exponential' ? [0] : [0, 0],
    (x) => lawAt(family, placeAt(x)),
  )
  return found && { ...found, top: likelihood(found.law) }
}

/**
 * The law at the top that is reached from `start`, the laws near it in coordinates whose origin it is, and their covariances. Null where there is no
 * top, or the record says nothing of a coordinate.
 */
export function topOf<L>(
  heightAt: (x: readonly number[]) => number,
  start: readonly number[],
  lawAt: (x: readonly number[]) => L,
) {
  const top = maximise(heightAt, start)
  const triangle = top === null ? null : triangleOf(top.information)
  if (top === null || triangle === null) return null
  const covariance = inverseOf(triangle)
  if (covariance.some((row, index) => !(row[index]! < saysNothing ** 2))) return null
  const lawNear = (by: readonly number[]) => lawAt(top.at.map((each, index) => each + by[index]!))
  return { law: lawNear(start.map(() => 0)), lawNear, covariance }
}

/** Where a search begins: at the likeliest of a few laws that fit about, null where none is possible. */
function startOf(sample: Sample, family: Family, likelihood: (law: SimpleLaw) => number): Place | null {
  const { values, weights } = roughly(sample)
  const rough = fitComplete(family, values, weights)
  if (rough === null) return null
  const place = placeOf(rough)
  // with the short ones missing, or the long ones cut off, the times lie farther apart than they look
  const places =
    family === 'exponential'
      ? [place]
      : [0, 0.5, 1].map((wider) => ({ ...place, logWidth: place.logWidth + wider }))
  const tried = places.map((each) => ({ each, height: likelihood(lawAt(family, each)) }))
  const best = tried.reduce((one, other) => (other.height > one.height ? other : one))
  return Number.isFinite(best.height) ? best.each : null
}

/** Step, in widths, of the differences that carry covariances over to figures. */
const step = 1e-4

/** Covariances of the estimates of figures, from those of the coordinates: exact at a top. */
export function covarianceOf<L>(
  figures: readonly { of(law: L): number }[],
  lawNear: (by: readonly number[]) => L,
  covariance: Matrix,
): number[][] {
  const slopes = figures.map((figure) =>
    covariance.map((_, index) => {
      const at = (by: number) =>
        figure.of(lawNear(covariance.map((_row, other) => (other === index ? by : 0))))
      return (8 * (at(step) - at(-step)) - (at(2 * step) - at(-2 * step))) / (12 * step)
    }),
  )
  return slopes.map((one) =>
    slopes.map((other) =>
      one.reduce(
        (sum, slope, row) =>
          sum + slope * other.reduce((across, each, column) => across + each * covariance[row]![column]!, 0),
        0,
      ),
    ),
  )
}

/** Intervals of figures of the likeliest law. */
function intervals(
  sample: Sample,
  law: SimpleLaw,
  top: number,
  events: number,
  confidence: number,
): (figure: Figure, se: number) => Ends {
  const isExact = sample.seen.every((each) => 'at' in each || 'over' in each)
  if (law.family === 'exponential' && isExact) return () => meanLimits(sample, events, confidence)
  const likelihood = (each: SimpleLaw) => logLikelihood(sample, distributionOf(each))
  const fall = fallAt(confidence, events)
  return (figure, se) => profileInterval({ figure, logLikelihood: likelihood, law, top }, se, fall)
}

/**
 * Limits of the mean of exponential times: twice the time that was seen to pass over quantiles of chi-square. Where times were cut off the lower end counts
 * one event more, as of a test that ends at a set time: it then holds at least as often as asked. Lawless (2003), sec. 4.1 (from memory).
 */
function meanLimits({ seen, counts, from }: Sample, events: number, confidence: number): Ends {
  const passed = seen.reduce((sum, each, index) => {
    const length = 'at' in each ? each.at : 'over' in each ? each.over : Number.NaN
    return sum + counts[index]! * Math.max(0, length - from)
  }, 0)
  const tail = (1 - confidence) / 2
  const isCutOff = seen.some((each) => 'over' in each)
  return {
    low: (2 * passed) / chiSquare(1 - tail, 2 * events + (isCutOff ? 2 : 0)),
    high: (2 * passed) / chiSquare(tail, 2 * events),
  }
}
