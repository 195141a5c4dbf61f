/** What draws of the inputs add to a difference of designs that saw the same draws and the same shifts. */
import type { FigureOfInputs } from '../catalogue/figure.js'
import { leastDraws } from '../scenario/limits.js'
import { ofInputs } from '../statistics/both-kinds.js'
import type { Estimate, Observations } from '../statistics/estimate.js'
import { type Layout, layoutOf, rowOf } from '../statistics/layout.js'
import { inputsOf } from './line-result.js'

/** A design in a sum of designs: its factor there, and what is known of each draw; of one that says nothing, nothing. */
export interface Part {
  times: number
  draws: readonly (Observations | null | undefined)[]
}

/** A sum that is no more than this share of what it is made of is rounding. */
const hair = 1e-12

/** The rows of the parts added up shift by shift, by draw; null of a draw of which one part says nothing. */
function rowsOf(parts: readonly Part[], draw: number): number[] | null {
  const rows = parts.map(({ draws }) => {
    const observed = draws[draw]
    // a difference is taken as it is: no logit of a share, no rate in place of a time
    return observed ? rowOf({ ...observed, kind: 'mean', isTimeOfEvents: false }) : null
  })
  if (rows.some((row) => row === null)) return null
  return rows[0]!.map((_, shift) => {
    const each = parts.map(({ times }, part) => times * rows[part]![shift]!)
    const sum = each.reduce((total, value) => total + value, 0)
    const most = each.reduce((size, value) => Math.max(size, Math.abs(value)), 0)
    return Math.abs(sum) <= hair * most ? 0 : sum
  })
}

/** What the draws say of a sum of designs, such as one less another; null where fewer than `leastDraws` of them say something. */
export function layoutOfParts(parts: readonly Part[]): Layout | null {
  const draws = Math.min(...parts.map((part) => part.draws.length))
  const all = Array.from({ length: Math.max(0, draws) }, (_, draw) => rowsOf(parts, draw))
  const rows = all.filter((row) => row !== null)
  return rows.length < leastDraws ? null : layoutOf(rows)
}

/** The same of one design less another. */
export const layoutOfDifference = (of: Part['draws'], against: Part['draws']): Layout | null =>
  layoutOfParts([
    { times: 1, draws: of },
    { times: -1, draws: against },
  ])

/** What the inputs add to a difference at a confidence; nothing where that has no interval, or the draws say nothing. */
export function addedByInputs(
  estimate: Estimate,
  layout: Layout | null | undefined,
  unit: string,
  confidence: number,
): { inputs?: FigureOfInputs } {
  if (!layout || Number.isNaN(estimate.low) || Number.isNaN(estimate.high)) return {}
  // two shares are never farther apart than all and none
  const most = unit === 'share' ? 1 : Number.POSITIVE_INFINITY
  return { inputs: inputsOf(ofInputs(estimate, layout, confidence, { ends: [-most, most] })) }
}

/** Whether an interval leaves 0 out; not without one. */
export const isOffNothing = ({ low, high }: { low: number | null; high: number | null }): boolean =>
  low !== null && high !== null && (low > 0 || high < 0)
