/** The result document of sizing: the designs that were looked at in order of cost, and the cheapest that keeps its promises. */
import type { About } from './about.js'
import type { Condition } from './condition.js'
import { shareEstimate } from './estimate.js'
import type { LineResult } from './line-result.js'
import { orNull } from './line-result.js'
import { studentT } from './quantile.js'
import type { Made, RunResult } from './result.js'
import type { Tried } from './size.js'
import type { Warned } from './warning.js'

/** A promise as the document tells it. */
export interface PromiseResult {
  promise: string
  measure: string
  label: string
  unit: string
  value: number
  isLeast: boolean
  near: number
}

/** A design that was looked at. `share`, `low` and `high` are those of the first promise. */
export interface SizedDesign {
  /** Its place in the order of cost of all designs, from 1. */
  place: number
  set: Record<string, unknown>
  /** Cost of a shift by hand; null where nothing is priced. */
  cost: number | null
  share: number | null
  low: number | null
  high: number | null
  shifts: number
  verdict: Tried['verdict']
  /** Why without simulating; null where it was simulated. */
  without: string | null
  /** Of each promise its figure over the shifts that were looked at. */
  promises: { mean: number | null; low: number | null; high: number | null }[]
}

export interface SizeResult extends Warned {
  format: 'tapeshift-result/1'
  command: 'size'
  made: Made
  display: RunResult['display']
  shift: RunResult['shift']
  currency: string
  promises: PromiseResult[]
  /** The choices, and how many designs they make. */
  choices: { path: string; values: unknown[] }[]
  all: number
  /** By what designs stand in order: `cost`, then these. */
  order: string[]
  isFull: boolean
  /** Designs that were looked at, in order of cost. */
  designs: SizedDesign[]
  /** Place of the pick in `designs`; null where none keeps its promises. */
  pick: number | null
  /** Of the cheaper ones that were simulated and refused the place of the nearest in cost; null without one. */
  nextCheaper: number | null
  /** Designs and shifts that were simulated to find it. */
  spent: { designs: number; shifts: number }
  /** Paths of which more was taken never to hurt. */
  rising: string[]
  /** The pick simulated for itself, and the piece that has least to spare by hand. */
  picked: (LineResult & { shifts: number; bottleneck: string | null }) | null
  about?: About
  assumed: RunResult['assumed']
  notes: string[]
  shifts: string
}

/** A promise's figure over shifts with its interval: of shares Wilson's, of means Student's. */
export function promiseFigure(
  { isShare }: Condition,
  { sums, squares, shifts }: Tried,
  index: number,
  confidence: number,
): SizedDesign['promises'][number] {
  if (shifts === 0) return { mean: null, low: null, high: null }
  const mean = sums[index]! / shifts
  if (isShare) {
    const kept = Math.round(sums[index]!)
    const { low, high } = shareEstimate(
      Array.from({ length: shifts }, (_, shift) => (shift < kept ? 1 : 0)),
      confidence,
    )
    return { mean, low, high }
  }
  const variance = (squares[index]! - shifts * mean * mean) / (shifts - 1)
  const half = studentT((1 + confidence) / 2, shifts - 1) * Math.sqrt(Math.max(0, variance) / shifts)
  return { mean: orNull(mean), low: orNull(mean - half), high: orNull(mean + half) }
}
