/** Hand figures as the inputs may be: each worked out anew for many draws of them. */
import { drawInputs } from '../inputs/draw.js'
import type { Resolved } from '../scenario/resolve.js'
import { type HandCalculation, handCalculation } from './hand.js'

/** In the mean 5 % and 95 % of what may be lies below the 3rd and the 57th of so many. */
const draws = 59

/** Figures by their keys, each between what 5 % and 95 % of the draws lie below, in SI. Those that do not move are not there. */
export interface Likely {
  draws: number
  ranges: Record<string, { low: number; high: number }>
}

/** Null where nothing says how well it is known. */
export function likelyFigures(resolved: Pick<Resolved, 'scenario' | 'evidence'>): Likely | null {
  if (resolved.evidence.length === 0) return null
  const { seed } = resolved.scenario.study
  const found = Array.from({ length: draws }, (_, index) =>
    figuresOf(handCalculation(drawInputs(resolved, seed, index + 1).scenario)),
  )
  const ranges: Likely['ranges'] = {}
  for (const key of Object.keys(found[0]!)) {
    const values = Float64Array.from(found, (figures) => figures[key] ?? Number.NaN).sort()
    const rank = Math.round(0.05 * (draws + 1))
    const [low, high] = [values[rank - 1]!, values[draws - rank]!]
    // what cannot be worked out in some draws has no range
    if (!values.some(Number.isNaN) && high - low > 1e-9 * Math.abs(high)) ranges[key] = { low, high }
  }
  return { draws, ranges }
}

/** The figures that matter, by keys: of the line, of its pieces and crews, and those that a run measures too by their measure. */
function figuresOf({ line, expected, crews, rows }: HandCalculation): Record<string, number> {
  return {
    expected: expected.output?.throughput ?? Number.NaN,
    limitAfterStops: line.limitAfterStops,
    ...Object.fromEntries(line.pieces.map(({ name, rateAfterStops }) => [`pieces.${name}`, rateAfterStops])),
    ...Object.fromEntries(crews.map(({ name, load }) => [`crews.${name}`, load])),
    ...Object.fromEntries(rows.map(({ measure, value }) => [measure, value])),
  }
}
