/** The result document of a study: every figure with its interval, unit and words, in a fixed order. */
import { quantile } from 'simple-statistics'
import { type Column, Line, type ShiftResult } from '../line/line.js'
import type { Scenario } from '../scenario/schema.js'
import { type Estimate, meanEstimate, ratioEstimate, shareEstimate } from './estimate.js'

/** A figure as it stands in the document. A number that nothing is known of is null. */
export interface Figure {
  mean: number | null
  low: number | null
  high: number | null
  sd: number | null
  n: number
  unit: string
  label: string
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
  repeat: string
}

export interface RunResult {
  format: 'tapeshift-result/1'
  command: 'run'
  made: Made
  display: 'metric' | 'us'
  /** Lengths in seconds, target in cases a second. */
  shift: { length: number; runOut: number; breaks: { at: number; for: number }[]; campaign: number }
  target: number | null
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

/** Shifts that the held-over-the-shift picture is drawn from: more change nothing that an eye could see. */
const mostHeldShifts = 500

const orNull = (value: number) => (Number.isFinite(value) ? value : null)

/** Unit of a figure as the document names it. */
function unitName(unit: string, currency: string): string {
  return unit === 'money' ? `${currency} per 1000 cases` : unit
}

/** Makes the document of `command: run` from the shifts, in their order. At least two shifts. */
export function runResult(
  scenario: Scenario,
  shifts: readonly ShiftResult[],
  made: Made,
  assumed: RunResult['assumed'],
  notes: string[],
): RunResult {
  const line = new Line(scenario)
  const currency = scenario.money?.currency ?? scenario.tape.price?.currency ?? ''
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
    },
    target: scenario.target ?? null,
    measures: {},
    costLeftOut: line.costLeftOut,
    arrivals: {},
    equipment: Object.fromEntries(
      Object.entries(scenario.line).map(([name, { type }]) => [name, { type, measures: {}, states: {} }]),
    ),
    crew: {},
    outputs: [],
    held: heldOverShift(line, scenario, shifts),
    assumed,
    notes,
    shifts: 'shifts.csv',
  }
  for (const [index, column] of line.columns.entries()) {
    if (column.part === 'over') continue
    const { measure } = column
    const estimate = estimateColumn(column, index, shifts, made.confidence)
    const figure: Figure = {
      mean: orNull(estimate.mean),
      low: orNull(estimate.low),
      high: orNull(estimate.high),
      sd: orNull(estimate.sd),
      n: estimate.n,
      unit: unitName(measure.unit, currency),
      label: measure.label,
    }
    place(result, measure.path, figure)
  }
  result.outputs = shifts.flatMap((shift) => [...shift.outputs])
  return result
}

function estimateColumn(
  column: Column,
  index: number,
  shifts: readonly ShiftResult[],
  confidence: number,
): Estimate {
  const values = shifts.map((shift) => shift.values[index]!)
  if (column.measure.kind === 'share') return shareEstimate(values, confidence)
  if (column.measure.kind !== 'ratio') return meanEstimate(values, confidence)
  const overs = shifts.map((shift) => shift.values[index + 1]!)
  return ratioEstimate(values, overs, confidence)
}

function place(result: RunResult, path: readonly string[], figure: Figure): void {
  let at = result as unknown as Record<string, unknown>
  for (const step of path.slice(0, -1)) {
    if (at[step] === undefined) at[step] = {}
    at = at[step] as Record<string, unknown>
  }
  at[path.at(-1)!] = figure
}

function heldOverShift(line: Line, scenario: Scenario, shifts: readonly ShiftResult[]): HeldOverShift[] {
  const drawn = shifts.slice(0, mostHeldShifts)
  const places = line.heldPlaces
  const samples = (drawn[0]?.held.length ?? 0) / Math.max(1, places.length)
  const end = scenario.shift.length + scenario.shift['run-out']
  return places.map((place, index) => {
    const held: HeldOverShift = { place, at: [], mean: [], p10: [], p90: [] }
    for (let sample = 0; sample < samples; sample++) {
      const values = drawn.map((shift) => shift.held[index * samples + sample]!)
      held.at.push((end * (sample + 0.5)) / samples)
      held.mean.push(values.reduce((sum, value) => sum + value, 0) / values.length)
      held.p10.push(quantile(values, 0.1))
      held.p90.push(quantile(values, 0.9))
    }
    return held
  })
}
