/** The result document of a study: every figure with its interval, unit and words, in a fixed order. */

import { type DrawsTold, drawsTold } from '../../answers/contributions.js'
import { measureName, type Simulated } from '../../answers/figures.js'
import {
  type Estimates,
  estimatesOf,
  type LineResult,
  lineResult,
  orNull,
} from '../../answers/line-result.js'
import type { Losses } from '../../answers/losses.js'
import { lossesWithInputs } from '../../answers/losses-with-inputs.js'
import {
  type ByHand,
  beginOf,
  type Made,
  type PrecisionReached,
  type RequirementJudged,
  type StudyDocument,
} from '../../answers/made.js'
import { relativeError } from '../../answers/precision.js'
import { judge, type Requirement } from '../../answers/requirement.js'
import type { InputsTold } from '../../answers/rests-on.js'
import type { Draws } from '../../answers/with-inputs.js'
import { withKindsTold } from '../../pictures/kinds-told.js'
import { type Layout, layoutOf } from '../../pictures/layout.js'
import type { ReadScenario } from '../../scenario/read.js'
import type { WarmUp } from '../../shifts/steady.js'
import type { Stretch } from '../../shifts/stretch.js'
import type { RunAsked } from './asked.js'

export interface RunResult extends LineResult, StudyDocument<'run'> {
  /** Cases a second. */
  target: number | null
  precision: PrecisionReached | null
  requirements: RequirementJudged[]
  /** Of lines that do not start every shift empty: how long they take to come to their stride. */
  warmUp: WarmUp | null
  /** Null where nothing was worked out. */
  byHand: ByHand | null
  /** From what its machines could put out to what the line does; null where nothing is to be told. Not in older documents. */
  losses?: Losses | null
  /** Where each piece stands. Not in older documents. */
  layout?: Layout
  /** Draws of the inputs, where they were drawn. */
  drawn?: DrawsTold
  /** A stretch of one shift as it happened; only where files are written. */
  stretch?: Stretch
}

/** What was simulated, and what is told of a scenario whatever was simulated of it. */
export interface RunStudy extends Pick<Simulated, 'line' | 'shifts'>, Pick<RunResult, 'warmUp'> {
  stretch: Stretch | null
  draws: Draws | null
  told: { byHand: ByHand } & InputsTold & Pick<RunResult, 'about' | 'warnings' | 'assumed' | 'notes'>
}

/** Makes the document of `command: run`. */
export function runResult(
  { scenario, evidence }: ReadScenario,
  asked: RunAsked,
  { line, shifts, warmUp, stretch: recorded, draws, told }: RunStudy,
  made: Made,
): RunResult {
  const how = { confidence: made.confidence, isPlain: made.plain }
  const simulated = { scenario, line, shifts, countFrom: warmUp?.countFrom ?? 0 }
  const estimates = estimatesOf(simulated, how, draws)
  const precision = precisionReached(asked, estimates)
  const { measures, costLeftOut, ...others } = lineResult(simulated, estimates)
  const { layout, stretch } = withKindsTold({ layout: layoutOf(scenario), stretch: recorded })
  const { warnings, byHand, ...last } = told
  return {
    ...beginOf({ command: 'run' }, scenario, { made, warnings }),
    target: scenario.target ?? null,
    precision,
    requirements: asked.requirements.map((each) => judged(each, precision, estimates)),
    warmUp,
    measures,
    costLeftOut,
    byHand,
    ...others,
    losses: lossesWithInputs(simulated, { ...how, bottleneck: byHand.bottleneck }, draws),
    layout,
    ...(draws ? { drawn: drawsTold(draws, evidence, simulated, estimates) } : {}),
    ...(stretch ? { stretch } : {}),
    ...last,
    shifts: 'shifts.csv',
  }
}

function precisionReached({ precision }: RunAsked, estimates: Estimates): PrecisionReached | null {
  if (precision === null) return null
  const of = precision.of.map((measure) => {
    const reached = relativeError(estimates.get(measureName(measure))!)
    return {
      measure: measureName(measure),
      label: measure.label,
      reached: orNull(reached),
      isMet: reached <= precision.share,
    }
  })
  return { asked: precision.share, of, most: precision.most, isMet: of.every(({ isMet }) => isMet) }
}

function judged(
  requirement: Requirement | 'precision',
  precision: PrecisionReached | null,
  estimates: Estimates,
): RequirementJudged {
  if (requirement === 'precision')
    return { require: 'precision', judgement: precision?.isMet ? 'met' : 'not-met', measure: null }
  const measure = measureName(requirement.measure)
  return { require: requirement.text, judgement: judge(requirement, estimates.get(measure)!), measure }
}
