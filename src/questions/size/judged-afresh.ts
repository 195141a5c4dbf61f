/**
 * The design that a search ends with on shifts that it did not see, where inputs were drawn with both kinds of what is not known. Those that
 * it saw ended because they looked good: of 95 % intervals over them 88 % covered the truth (tests/slow/size-coverage). Shifts of other
 * numbers have other random numbers, so whatever the search went by, an interval over them covers as often as it says, if their number
 * was fixed before.
 */
import type { Condition } from '../../answers/condition.js'
import {
  type ContributionsTold,
  contributionsTo,
  type DrawsTold,
  drawsTold,
} from '../../answers/contributions.js'
import type { ChosenDesign } from '../../answers/designs.js'
import { intervalOf } from '../../answers/difference-figure.js'
import { controlsOf, estimationOf, measureName } from '../../answers/figures.js'
import { estimatesOf, figureOf, lineResult } from '../../answers/line-result.js'
import { lossesWithInputs } from '../../answers/losses-with-inputs.js'
import { type Draws, withLayout } from '../../answers/with-inputs.js'
import { handCalculation } from '../../hand/hand.js'
import type { Line } from '../../line/line.js'
import type { Evidence } from '../../scenario/known.js'
import type { Simulation } from '../../shifts/simulation.js'
import type { Estimate } from '../../statistics/estimate.js'
import type { JudgedAfresh } from './document.js'
import { layoutOfPromise, promiseEstimate, shownBy } from './promise-figure.js'
import type { SizeGoal, Tried } from './search.js'

/** Fewest shifts that make a figure useful: of 200 a share of 90 % is known to about 4 points. */
const fewest = 200

/**
 * The first and the number of the fresh shifts of a design after a search that went up to shift `most` of any: as many as the search
 * took of it, and 200 at least, but never more than `most`. Both are fixed before the first of them is simulated.
 */
export const freshShifts = (
  { shifts }: Pick<Tried, 'shifts'>,
  most: number,
): { first: number; count: number } => ({
  first: most + 1,
  count: Math.min(most, Math.max(fewest, shifts)),
})

/** What is to be judged. */
interface ToJudge {
  tried: Tried
  design: ChosenDesign
  /** The line of that design. */
  line: Line
  conditions: readonly Condition[]
  /** Draws of its inputs; null where these are held fixed. */
  draws: Draws | null
  /** What was drawn. */
  evidence: readonly Evidence[]
}

/** What a document tells of the draws: also what each input adds to each promise. */
export type DrawsOfPromises = DrawsTold & { promises: (ContributionsTold | null)[] }

/** Simulates the design on fresh shifts. */
export async function judgeAfresh(
  { tried, design, line, conditions, draws, evidence }: ToJudge,
  { confidence, most }: Pick<SizeGoal, 'confidence' | 'most'>,
  simulation: Simulation,
): Promise<{ afresh: JudgedAfresh; told: DrawsOfPromises | null }> {
  const { scenario } = design
  const { first, count } = freshShifts(tried, most)
  const fresh = await simulation.afresh(tried.design, first, count)
  const countFrom = simulation.countFrom(tried.design)
  const simulated = { line, scenario, shifts: fresh, countFrom }
  const estimation = estimationOf(scenario, { confidence, isPlain: false }, countFrom)
  const controls = controlsOf(fresh, estimation)
  const bottleneck = handCalculation(scenario).line.bottleneck?.name ?? null
  const estimates = estimatesOf(simulated, estimation, draws)
  return {
    afresh: {
      firstShift: first,
      shifts: count,
      promises: conditions.map((condition) => {
        const estimate = promiseEstimate(condition, fresh, estimation, controls)
        const figure = intervalOf(estimate)
        return {
          ...figure,
          shown: shownBy(figure, condition),
          ...inputsOf(condition, estimate, draws, confidence),
        }
      }),
      bottleneck,
      ...lineResult(simulated, estimates),
      losses: lossesWithInputs(simulated, { ...estimation, bottleneck }, draws),
    },
    told: draws && {
      // the draws saw other shifts than these fresh ones
      ...drawsTold(draws, evidence, { line, scenario, shifts: [] }, estimates),
      promises: conditions.map((condition) => {
        const told = { measure: measureName(condition.measure), label: condition.text }
        return contributionsTo(told, layoutOfPromise(condition, draws), draws, evidence)
      }),
    },
  }
}

/** What draws of the inputs add to the figure of a promise. */
function inputsOf(
  condition: Condition,
  estimate: Estimate,
  draws: Draws | null,
  confidence: number,
): Pick<JudgedAfresh['promises'][number], 'inputs'> {
  const layout = draws && layoutOfPromise(condition, draws)
  if (!layout || Number.isNaN(estimate.low) || Number.isNaN(estimate.high)) return {}
  const { measure, isShare } = condition
  const { isTimeOfEvents = false } = measure
  const sort = isShare
    ? ({ kind: 'share', unit: 'share' } as const)
    : { kind: measure.kind, unit: measure.unit, isTimeOfEvents }
  const { inputs } = figureOf(withLayout(estimate, layout, sort, confidence), { unit: sort.unit, label: '' })
  return inputs ? { inputs } : {}
}
