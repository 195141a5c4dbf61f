/** What the shifts of one line come to: every figure with its interval, unit and words, in a fixed order. */

import { quantile } from 'simple-statistics'
import type { Figure, FigureOfInputs, Figures } from '../catalogue/figure.js'
import type { MeasureName } from '../catalogue/measures.js'
import type { EffectivenessKey, HeadKey, PieceKey } from '../catalogue/of-equipment.js'
import type { JamKey } from '../catalogue/of-jams.js'
import type { MeasureKey } from '../catalogue/of-line.js'
import type { ArrivalKey, CrewKey } from '../catalogue/of-people.js'
import type { StateKey } from '../catalogue/states.js'
import { currencyOf, unitName } from '../catalogue/unit-name.js'
import type { Line } from '../line/line.js'
import { nameTogether } from '../line/together.js'
import type { Scenario } from '../scenario/schema.js'
import { mostHeldShifts } from '../shifts/work.js'
import type { Estimate, OfInputs } from '../statistics/estimate.js'
import {
  controlsOf,
  type Estimation,
  estimate,
  estimationOf,
  measureName,
  measuresOf,
  type Simulated,
} from './figures.js'
import { type Draws, withInputs } from './with-inputs.js'

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
  /** Of pieces side by side together: their names. Each of them has an entry of its own too. */
  pieces?: readonly string[]
  measures: Figures<PieceKey>
  states: Figures<StateKey>
  heads?: Record<string, Figures<HeadKey>>
  /** Kinds of jam that have names. */
  jams?: Record<string, Figures<JamKey>>
  /** Time elements and key figures of ISO 22400-2: of sealers, and mean times of failures of all that may break down. */
  effectiveness?: Figures<EffectivenessKey>
}

/** The part of a result document that tells of one line. */
export interface LineResult {
  measures: Figures<MeasureKey>
  costLeftOut: readonly string[]
  /** Who simulated: events alone, or with a row of pieces that was worked ahead of them. Not in older documents. */
  engine?: Line['engine']
  arrivals: Record<string, Figures<ArrivalKey>>
  equipment: Record<string, EquipmentResult>
  crew: Record<string, Figures<CrewKey>>
  /** Good cases out, shift by shift. */
  outputs: number[]
  held: HeldOverShift[]
}

/** The estimate of every measure by its name. */
export type Estimates = ReadonlyMap<MeasureName, Estimate>

/** A number for the document: JSON knows none that are not finite. */
export const orNull = (value: number | null) => (Number.isFinite(value) ? value : null)

/** Estimates of all measures from the shifts, at least two; with `draws` of the inputs what these add. */
export function estimatesOf(
  simulated: Simulated,
  asked: Omit<Estimation, 'exposure'>,
  draws: Draws | null = null,
): Estimates {
  const { scenario, shifts, countFrom } = simulated
  const how = estimationOf(scenario, asked, countFrom)
  const controls = controlsOf(shifts, how)
  return new Map(
    measuresOf(simulated).map((measure) => [
      measureName(measure),
      withInputs(measure, estimate(measure, shifts, how, controls), draws, asked.confidence),
    ]),
  )
}

/** An estimate as the document tells it, in its words. */
export function figureOf(
  { mean, low, high, sd, n, inputs, ...rest }: Estimate,
  { unit, label }: Pick<Figure, 'unit' | 'label'>,
): Figure {
  const told = { mean: orNull(mean), low: orNull(low), high: orNull(high), sd: orNull(sd), n }
  return { ...told, unit, label, ...rest, ...(inputs ? { inputs: inputsOf(inputs) } : {}) }
}

/** What the inputs add, as the document tells it. */
export const inputsOf = ({ low, high, alone, ...rest }: OfInputs): FigureOfInputs => ({
  ...{ low: orNull(low), high: orNull(high) },
  alone: { low: orNull(alone.low), high: orNull(alone.high) },
  ...rest,
})

/** Puts the estimates into their places; `held`, where the shifts do not have it any more. */
export function lineResult(
  simulated: Simulated,
  estimates: Estimates,
  held: HeldOverShift[] = heldOverShift(simulated),
): LineResult {
  const { line, scenario, shifts } = simulated
  const currency = currencyOf(scenario)
  const result: LineResult = {
    measures: {},
    costLeftOut: line.costLeftOut,
    engine: line.engine,
    arrivals: {},
    equipment: equipmentOf(scenario),
    crew: {},
    outputs: shifts.flatMap((shift) => [...shift.outputs]),
    held,
  }
  for (const measure of measuresOf(simulated)) {
    const { label, unit } = measure
    const words = { label, unit: unitName(unit, currency) }
    place(result, measure.path, figureOf(estimates.get(measureName(measure))!, words))
  }
  return result
}

/** An entry for each piece, those side by side behind one for all of them. */
function equipmentOf({ line, alike }: Scenario): Record<string, EquipmentResult> {
  const result: Record<string, EquipmentResult> = {}
  for (const [name, { type }] of Object.entries(line)) {
    for (const [together, { pieces }] of Object.entries(alike?.line ?? {}))
      if (pieces[0] === name) result[together] = { type, pieces, measures: {}, states: {} }
    result[name] = { type, measures: {}, states: {} }
  }
  return result
}

/** What a table calls a piece, or pieces side by side; `way`: how its figures come of those of each. */
export const shownName = (name: string, { pieces }: EquipmentResult, way: 'sum' | 'mean' = 'sum'): string =>
  pieces ? nameTogether(name, pieces.length, way) : name

function place(result: LineResult, path: readonly string[], figure: Figure): void {
  let at = result as unknown as Record<string, unknown>
  for (const step of path.slice(0, -1)) {
    if (at[step] === undefined) at[step] = {}
    at = at[step] as Record<string, unknown>
  }
  at[path.at(-1)!] = figure
}

/** The cases in each place over the shift, of the shifts that have it. */
export function heldOverShift({ line, scenario, shifts, countFrom }: Simulated): HeldOverShift[] {
  const { shift } = scenario
  const drawn = shifts.slice(0, mostHeldShifts)
  const places = line.heldPlaces
  const samples = (drawn[0]?.held.length ?? 0) / Math.max(1, places.length)
  const end = shift.length + shift['run-out']
  // of a campaign it is the last shift, which no cut touches
  const begin = shift.campaign > 1 ? 0 : countFrom
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
