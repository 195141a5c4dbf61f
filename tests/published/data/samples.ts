/** Samples out of lists of times. */
import { type Fit, fit as fitOf } from '../../../src/statistics/fitting/fit.js'
import type { Family } from '../../../src/statistics/fitting/law.js'
import type { Sample, Seen } from '../../../src/statistics/fitting/sample.js'

/** All known, none missing. */
export const complete = (values: readonly number[]): Sample => ({
  seen: values.map((at) => ({ at })),
  counts: values.map(() => 1),
  from: 0,
})

/** What is known of each and how often it stands. */
export const counted = (rows: readonly (readonly [Seen, number])[], from = 0): Sample => ({
  seen: rows.map(([seen]) => seen),
  counts: rows.map(([, count]) => count),
  from,
})

/** The fit of a family to a sample, which has to have one. */
export function fitted(sample: Sample, family: Family): Fit {
  const found = fitOf(sample, family)
  if ('why' in found) throw new Error(`no fit: ${found.why}`)
  return found
}

/** Values of the parameters of a fit, in their order. */
export const valuesOf = (fit: Fit): number[] => fit.parameters.map(({ value }) => value)

/** Their standard errors. */
export const errorsOf = (fit: Fit): number[] => fit.parameters.map(({ se }) => se)
