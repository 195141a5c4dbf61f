/** The result document of a study: every figure with its interval, unit and words, in a fixed order. */

import type { Line, ShiftResult } from '../line/line.js'
import type { Scenario } from '../scenario/schema.js'
import type { About } from './about.js'
import { measureName, type StudyMeasure } from './figures.js'
import { type Layout, layoutOf } from './layout.js'
import { type Estimates, estimatesOf, type LineResult, lineResult, orNull } from './line-result.js'
import { type Losses, lossesOf } from './losses.js'
import { relativeError } from './precision.js'
import { type Judgement, judge, type Requirement } from './requirement.js'
import type { WarmUp } from './steady.js'
import type { Stretch } from './stretch.js'
import { headed, type Warned, type Warning } from './warning.js'

/** What made the document: with this it can be made again. */
export interface Made {
  version: string
  node: string
  seed: string
  scenario: { title: string; sha256: string }
  shifts: number
  confidence: number
  /** Without control variates. */
  plain: boolean
  repeat: string
}

/** How well the study was to know its figures, and whether it does. */
export interface PrecisionReached {
  /** Largest relative error asked for. */
  asked: number
  of: { measure: string; label: string; reached: number | null; isMet: boolean }[]
  /** Shifts after which it would have stopped in any case. */
  most: number
  isMet: boolean
}

/** What the user required of the result, and what it says of that. */
export interface RequirementJudged {
  require: string
  judgement: Judgement
  /** The measure it is about; null where it is about the precision. */
  measure: string | null
}

/** What was worked out by hand, without simulating, for the figures of the run to be set beside. SI. */
export interface ByHand {
  /** `measure` is the dotted path of the figure in this document; `how` says how `value` comes about. */
  rows: { measure: string; label: string; value: number | null; unit: string; how: string }[]
  /** Part of the cases that come which each source brings. */
  shareOfArrivals: Record<string, number>
  /** The piece with least to spare; null where no piece needs time. */
  bottleneck: string | null
  /** Part of what comes that this piece lets in: 1 where the line keeps up. */
  shareAdmitted: number
}

export interface RunResult extends LineResult, Warned {
  format: 'tapeshift-result/1'
  command: 'run'
  made: Made
  display: 'metric' | 'us'
  /** Lengths in seconds, target in cases a second. */
  shift: {
    length: number
    runOut: number
    breaks: { at: number; for: number }[]
    campaign: number
    start: Scenario['shift']['start']
  }
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
  /** A stretch of one shift as it happened; only where files are written. */
  stretch?: Stretch
  about?: About
  assumed: { path: string; value: unknown; basis: string }[]
  notes: string[]
  shifts: string
}

/** What a study was asked for and what it is made of. */
export interface StudyRecord {
  scenario: Scenario
  /** The line of that scenario. */
  line: Line
  /** In their order, at least two. */
  shifts: readonly ShiftResult[]
  made: Made
  warmUp: WarmUp | null
  precision: { share: number; of: readonly StudyMeasure[]; most: number } | null
  /** `precision` stands for the requirement that the precision asked for was reached. */
  requirements: readonly (Requirement | 'precision')[]
  byHand?: ByHand
  stretch?: Stretch
  about?: About
  warnings?: readonly Warning[]
  assumed: RunResult['assumed']
  notes: string[]
}

/** Makes the document of `command: run`. */
export function runResult(record: StudyRecord): RunResult {
  const { scenario, line, shifts, made, warmUp } = record
  const how = { confidence: made.confidence, isPlain: made.plain }
  const countFrom = warmUp?.countFrom ?? 0
  const estimates = estimatesOf(line, scenario, shifts, how, countFrom)
  const precision = precisionReached(record, estimates)
  const { measures, costLeftOut, arrivals, equipment, crew, outputs, held } = lineResult(
    line,
    scenario,
    shifts,
    estimates,
    countFrom,
  )
  return {
    format: 'tapeshift-result/1',
    command: 'run',
    made,
    ...headed(record.warnings),
    display: scenario.display,
    shift: shiftOf(scenario),
    target: scenario.target ?? null,
    precision,
    requirements: record.requirements.map((each) => judged(each, precision, estimates)),
    warmUp,
    measures,
    costLeftOut,
    byHand: record.byHand ?? null,
    arrivals,
    equipment,
    crew,
    outputs,
    held,
    losses: lossesOf(line, scenario, shifts, {
      ...how,
      countFrom,
      bottleneck: record.byHand?.bottleneck ?? null,
    }),
    layout: layoutOf(scenario),
    ...(record.stretch ? { stretch: record.stretch } : {}),
    ...(record.about ? { about: record.about } : {}),
    assumed: record.assumed,
    notes: record.notes,
    shifts: 'shifts.csv',
  }
}

/** The shift as the document tells it. */
export const shiftOf = ({ shift }: Scenario): RunResult['shift'] => ({
  length: shift.length,
  runOut: shift['run-out'],
  breaks: shift.breaks,
  campaign: shift.campaign,
  start: shift.start,
})

function precisionReached({ precision }: StudyRecord, estimates: Estimates): PrecisionReached | null {
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
