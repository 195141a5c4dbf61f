/** The result document of a study: every figure with its interval, unit and words, in a fixed order. */
import { quantile } from 'simple-statistics'
import type { Line, ShiftResult } from '../line/line.js'
import type { Scenario } from '../scenario/schema.js'
import type { Estimate } from './estimate.js'
import { controlsOf, estimate, measureName, type StudyMeasure, studyMeasures } from './figures.js'
import { relativeError } from './precision.js'
import { type Judgement, judge, type Requirement } from './requirement.js'
import type { WarmUp } from './steady.js'
import { mostHeldShifts } from './work.js'

/** A figure as it stands in the document. A number that nothing is known of is null. */
export interface Figure {
  mean: number | null
  low: number | null
  high: number | null
  sd: number | null
  n: number
  unit: string
  label: string
  /** Half-width with control variates on the arrivals over that without; where they were used. */
  shrink?: number
}

/** Cases in a place over the shift: mean over shifts and the band that holds 8 of 10 shifts. */
export interface HeldOverShift {
  place: string
  /** Instants, s since the start of the shift. */
  at: number[]
  mean: number[]
  p10: number[]
  p90: number[]
}

export interface EquipmentResult {
  type: string
  measures: Record<string, Figure>
  states: Record<string, Figure>
  heads?: Record<string, Record<string, Figure>>
  /** Time elements and key figures of ISO 22400-2, of sealers. */
  effectiveness?: Record<string, Figure>
}

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

export interface RunResult {
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
  measures: Record<string, Figure>
  costLeftOut: readonly string[]
  arrivals: Record<string, Record<string, Figure>>
  equipment: Record<string, EquipmentResult>
  crew: Record<string, Record<string, Figure>>
  /** Good cases out, shift by shift. */
  outputs: number[]
  held: HeldOverShift[]
  assumed: { path: string; value: unknown; basis: string }[]
  notes: string[]
  shifts: string
}

const orNull = (value: number) => (Number.isFinite(value) ? value : null)

/** Unit of a figure as the document names it. */
function unitName(unit: string, currency: string): string {
  return unit === 'money' ? `${currency} per 1000 cases` : unit
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
  assumed: RunResult['assumed']
  notes: string[]
}

/** Makes the document of `command: run`. */
export function runResult(record: StudyRecord): RunResult {
  const { scenario, line, shifts, made } = record
  const currency = scenario.money?.currency ?? scenario.tape.price?.currency ?? ''
  const measures = studyMeasures(line.columns, scenario.shift.campaign)
  const controls = controlsOf(shifts, { confidence: made.confidence, isPlain: made.plain })
  const estimates = new Map(
    measures.map((measure) => [measureName(measure), estimate(measure, shifts, made.confidence, controls)]),
  )
  const precision = precisionReached(record, estimates)
  const result: RunResult = {
    format: 'tapeshift-result/1',
    command: 'run',
    made,
    display: scenario.display,
    shift: {
      length: scenario.shift.length,
      runOut: scenario.shift['run-out'],
      breaks: scenario.shift.breaks,
      campaign: scenario.shift.campaign,
      start: scenario.shift.start,
    },
    target: scenario.target ?? null,
    precision,
    requirements: record.requirements.map((each) => judged(each, precision, estimates)),
    warmUp: record.warmUp,
    measures: {},
    costLeftOut: line.costLeftOut,
    arrivals: {},
    equipment: Object.fromEntries(
      Object.entries(scenario.line).map(([name, { type }]) => [name, { type, measures: {}, states: {} }]),
    ),
    crew: {},
    outputs: shifts.flatMap((shift) => [...shift.outputs]),
    held: heldOverShift(record),
    assumed: record.assumed,
    notes: record.notes,
    shifts: 'shifts.csv',
  }
  for (const measure of measures) {
    const { mean, low, high, sd, n, shrink } = estimates.get(measureName(measure))!
    place(result, measure.path, {
      mean: orNull(mean),
      low: orNull(low),
      high: orNull(high),
      sd: orNull(sd),
      n,
      unit: unitName(measure.unit, currency),
      label: measure.label,
      ...(shrink === undefined ? {} : { shrink }),
    })
  }
  return result
}

function precisionReached(
  { precision }: StudyRecord,
  estimates: ReadonlyMap<string, Estimate>,
): PrecisionReached | null {
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
  estimates: ReadonlyMap<string, Estimate>,
): RequirementJudged {
  if (requirement === 'precision')
    return { require: 'precision', judgement: precision?.isMet ? 'met' : 'not-met', measure: null }
  const measure = measureName(requirement.measure)
  return { require: requirement.text, judgement: judge(requirement, estimates.get(measure)!), measure }
}

function place(result: RunResult, path: readonly string[], figure: Figure): void {
  let at = result as unknown as Record<string, unknown>
  for (const step of path.slice(0, -1)) {
    if (at[step] === undefined) at[step] = {}
    at = at[step] as Record<string, unknown>
  }
  at[path.at(-1)!] = figure
}

function heldOverShift({ scenario, line, shifts, warmUp }: StudyRecord): HeldOverShift[] {
  const drawn = shifts.slice(0, mostHeldShifts)
  const places = line.heldPlaces
  const samples = (drawn[0]?.held.length ?? 0) / Math.max(1, places.length)
  const end = scenario.shift.length + scenario.shift['run-out']
  // of a campaign it is the last shift, which no cut touches
  const begin = scenario.shift.campaign > 1 ? 0 : (warmUp?.countFrom ?? 0)
  return places.map((place, index) => {
    const held: HeldOverShift = { place, at: [], mean: [], p10: [], p90: [] }
    for (let sample = 0; sample < samples; sample++) {
      const values = drawn.map((shift) => shift.held[index * samples + sample]!)
      held.at.push(begin + ((end - begin) * (sample + 0.5)) / samples)
      held.mean.push(values.reduce((sum, value) => sum + value, 0) / values.length)
      held.p10.push(quantile(values, 0.1))
      held.p90.push(quantile(values, 0.9))
    }
    return held
  })
}
