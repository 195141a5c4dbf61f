/** Promises that a line must keep, such as `9 cases/min in 95 % of shifts`. */

import { type Condition, chanceStops, meanCondition, shareCondition } from '../../answers/condition.js'
import type { StudyMeasure } from '../../answers/figures.js'
import { parseRequirement, quantityWritten, valueWritten } from '../../answers/requirement.js'
import { misuse } from '../../scenario/fault.js'

/** A share of shifts counts as kept or missed within so much of it, where nobody says: two points. */
export const usualNear = 0.02

/**
 * Reads `[MEASURE SIGN] VALUE in SHARE of shifts`, or `MEASURE SIGN VALUE`, each with `within AMOUNT` for how near counts as
 * either. A value alone is a throughput. Throws `Fault` `asked`; where the measure is unknown it calls `unknown` for the words.
 */
export function parsePromise(
  text: string,
  measures: readonly StudyMeasure[],
  unknown: (name: string) => string,
): Condition {
  const [promise, near, ...more] = text.trim().split(/\s+within\s+/) as [string, string | undefined]
  if (more.length > 0) throw misuse('give "within" only once')
  const ofShifts = /^(.*?)\s+in\s+(.+?)\s+of\s+(?:the\s+)?shifts$/.exec(promise)
  if (!ofShifts) {
    const requirement = parseRequirement(promise, measures, unknown)
    const { measure } = requirement
    if (measure.kind === 'quantile')
      throw misuse(
        'a quantile has no value for a single shift; write it as a share of shifts, such as "output >= 3000 in 90 % of shifts"',
      )
    if (measure.kind === 'share') refuseCertainty(requirement.value)
    if (near !== undefined)
      return meanCondition(requirement, above0(valueWritten(near, measure)), chanceStops(measures))
    if (measure.kind === 'share') return meanCondition(requirement, usualNear)
    const { unit } = measure
    throw misuse(
      `add the miss that does not matter, in the unit of the measure, such as "${promise} within 0.1${nearUnits[unit] ?? ''}"`,
    )
  }
  const [, inner, written] = ofShifts as unknown as [string, string, string]
  // a rate alone is what the line puts out
  const requirement = parseRequirement(
    /^\s*[\d.+]/.test(inner) ? `throughput >= ${inner}` : inner,
    measures,
    unknown,
  )
  if (requirement.measure.kind === 'share' || requirement.measure.kind === 'quantile')
    throw misuse(`${inner} has no value for a single shift; leave out "in ${written} of shifts"`)
  const share = quantityWritten(written, 'share')
  refuseCertainty(share)
  return shareCondition(
    promise,
    requirement,
    share,
    near === undefined ? usualNear : above0(quantityWritten(near, 'share')),
  )
}

/** Units that an amount must be written with. */
const nearUnits: Partial<Record<string, string>> = {
  'cases/s': ' cases/min',
  s: ' s',
  m: ' m',
  'm/case': ' m',
  kg: ' kg',
}

function refuseCertainty(share: number): void {
  if (share > 0 && share < 1) return
  throw misuse('the share of shifts must be above 0 % and below 100 %: nothing is certain for all shifts')
}

function above0(value: number): number {
  if (value > 0) return value
  throw misuse('"within" must be above 0')
}
