/** What a study can say of its shifts: each measure by its place in the result document, and its estimate. */
import type { MeasureName } from '../catalogue/measures.js'
import { type MeasureKey, ofLine } from '../catalogue/of-line.js'
import { Counted } from '../line/counted.js'
import type { Column, Line, ShiftResult } from '../line/line.js'
import type { Measure } from '../line/measure.js'
import type { Scenario } from '../scenario/schema.js'
import { ControlBasis } from '../statistics/control.js'
import { type Estimate, estimateOf, type Few, ofFew, quantileEstimate } from '../statistics/estimate.js'
import { enoughEvents, isFewOf, shiftsForRare } from '../statistics/events.js'

/** A line that was simulated. */
export interface Simulated {
  scenario: Scenario
  /** The line of that scenario. */
  line: Line
  /** In their order, from the first. */
  shifts: readonly ShiftResult[]
  /** What comes from there on is counted, s since the start. */
  countFrom: number
}

/** How figures are estimated. */
export interface Estimation {
  confidence: number
  /** Without control variates. */
  isPlain: boolean
  /** Shifts that each observation stands for. */
  exposure: number
}

/**
 * How the figures of a scenario are estimated of which what comes before `countFrom`, s since its start, is not counted. Where a warm-up was cut away,
 * without control variates: what they leave of a plus-minus is less than what the cut leaves of the start.
 */
export const estimationOf = (
  scenario: Scenario,
  { confidence, isPlain }: Omit<Estimation, 'exposure'>,
  countFrom: number,
): Estimation => ({
  confidence,
  isPlain: isPlain || scenario.shift.start === 'steady',
  exposure: exposureOf(scenario, countFrom),
})

/** Shifts that an observation of a scenario stands for when what comes before `from`, s since its start, is not counted. */
export function exposureOf({ shift }: Scenario, from: number): number {
  const counted = new Counted(shift)
  counted.begin(from)
  return counted.shifts
}

/** A measure of a study: where it stands in the result, its words, and which numbers of a shift it is made of. */
export interface StudyMeasure
  extends Pick<
    Measure,
    'path' | 'label' | 'unit' | 'kind' | 'isPart' | 'isOverOneMore' | 'isFixed' | 'isTogether'
  > {
  /** The column of the shift result that it draws on. */
  index: number
  /** Of a quantile: the share of shifts below it. */
  below?: number
  /** Columns of the counts of events that it tells of. */
  restsOn?: readonly number[]
  /** Columns of the counts of rare events that may outweigh all others. */
  upsetBy?: readonly number[]
  /** Columns of the counts of rare long stops, one of which moves it by much. */
  movedBy?: readonly number[]
  /** Of a ratio: as its row says. */
  isTimeOfEvents?: boolean
}

/** The shift output that 9 of 10 shifts reach: what one may promise for a single shift. */
const poorShift = { of: 'output', key: 'output-p10', below: 0.1 } as const satisfies {
  of: MeasureKey
  key: MeasureKey
  below: number
}

/** The measures of a study in the order of the result document. `campaign`: shifts in a row that are one observation. */
export function studyMeasures(columns: readonly Column[], campaign: number): StudyMeasure[] {
  const places = new Map(columns.map(({ measure, part }, index) => [nameOf(measure.path, part), index]))
  const longStops = columns.flatMap(({ measure }, index) => (measure.isLongStop ? [index] : []))
  const indices = (paths: readonly (readonly string[])[] = []) =>
    paths.map((path) => places.get(nameOf(path, 'value'))!)
  return columns.flatMap(({ measure, part }, index): StudyMeasure[] => {
    const { path } = measure
    if (part === 'over') return []
    const itself = {
      ...{ ...measure, index },
      ...{ restsOn: indices(measure.restsOn), upsetBy: indices(measure.upsetBy) },
      movedBy: measure.isUpset ? longStops : [],
    }
    // the shifts of a campaign are alike and follow each other: their order says nothing of a single one
    if (path[0] !== 'measures' || path[1] !== poorShift.of || campaign > 1) return [itself]
    const { key, below } = poorShift
    return [itself, { ...itself, path: ['measures', key], label: ofLine[key].label, kind: 'quantile', below }]
  })
}

/** The measures of a study of that line. */
export const measuresOf = ({ line, scenario }: Pick<Simulated, 'line' | 'scenario'>): StudyMeasure[] =>
  studyMeasures(line.columns, scenario.shift.campaign)

const nameOf = (path: readonly string[], part: Column['part']): string => `${path.join('.')} ${part}`

/** Controls of these shifts; null where they are few, say nothing, or are not wanted. */
export const controlsOf = (
  shifts: readonly ShiftResult[],
  { isPlain }: Pick<Estimation, 'isPlain'>,
): ControlBasis | null => (isPlain ? null : ControlBasis.of(shifts.map((shift) => shift.controls)))

/** The estimate of a measure from shifts in their order. */
export function estimate(
  measure: StudyMeasure,
  shifts: readonly ShiftResult[],
  how: Pick<Estimation, 'confidence' | 'exposure'>,
  controls: ControlBasis | null,
): Estimate {
  const { confidence, exposure } = how
  const observed = observationsOf(measure, shifts)
  const found =
    observed === null
      ? quantileEstimate(column(shifts, measure.index), measure.below!, confidence)
      : estimateOf({ ...observed, exposure }, confidence, controls)
  if (measure.isFixed) return { ...found, isFixed: true }
  const few = measure.kind === 'count' ? null : tooFew(measure, shifts, exposure)
  return few === null ? found : ofFew(found, few)
}

/** The numbers of a measure over shifts; null of a quantile over shifts, of which no difference is known. */
export function observationsOf(
  { kind, index, isOverOneMore, isTimeOfEvents = false }: StudyMeasure,
  shifts: readonly ShiftResult[],
) {
  if (kind === 'quantile') return null
  const values = column(shifts, index)
  if (kind !== 'ratio') return { kind, values, overs: null }
  const overs = column(shifts, index + 1)
  // one more in the whole study, to which all its shifts add alike
  const perEvent = isOverOneMore ? overs.map((over) => over + 1 / overs.length) : overs
  return { kind, values, overs: perEvent, isTimeOfEvents }
}

/** On what a figure rests where that is too little for a plus-minus; null where it is not. */
export function tooFew(
  { kind, index, restsOn = [], upsetBy = [], movedBy = [], isPart, isFixed }: StudyMeasure,
  shifts: readonly ShiftResult[],
  exposure: number,
): Few | null {
  if (isFixed || kind === 'share' || kind === 'quantile') return null
  const number = (columns: readonly number[]) =>
    Math.round(columns.reduce((sum, each) => sum + total(column(shifts, each)), 0) * exposure)
  const few = (events: number, of: Few['of']): Few | null => (events < enoughEvents ? { events, of } : null)
  if (kind === 'count') return few(number([index]), 'events')
  const own = restsOn.length > 0 ? few(number(restsOn), 'events') : null
  const rarer = () => Math.min(number([index]), number([index + 1]) - number([index]))
  const told = own ?? (isPart ? few(rarer(), 'events') : null)
  const rare = told ?? (upsetBy.length > 0 ? few(number(upsetBy), 'in breaks') : null)
  if (rare) return rare
  if (movedBy.length > 0 && shifts.length < shiftsForRare && number(movedBy) < enoughEvents)
    return { events: shifts.length, of: 'shifts' }
  const others = kind === 'ratio' ? null : unlikeTheRest(column(shifts, index))
  return others === null ? null : { events: others, of: 'shifts' }
}

/** Of values that are alike in most shifts the number of the others, where these are few; null elsewhere. */
function unlikeTheRest(values: readonly number[]): number | null {
  const usual = majorityOf(values)
  const others = values.filter((value) => value !== usual).length
  return isFewOf(others, values.length) ? others : null
}

/**
 * The value that more than half of them have, if any has. Boyer & Moore, MJRTY, in Automated Reasoning (1991) 105-117 (from
 * memory).
 */
function majorityOf(values: readonly number[]): number {
  let usual = Number.NaN
  let lead = 0
  for (const value of values) {
    if (lead === 0) usual = value
    lead += value === usual ? 1 : -1
  }
  return usual
}

const column = (shifts: readonly ShiftResult[], index: number): number[] =>
  shifts.map((shift) => shift.values[index]!)

const total = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0)

/** The name that a person gives for a measure: `throughput`, `equipment.sealer.jams`, `crew.operators.busy`. */
export const measureName = ({ path }: Pick<StudyMeasure, 'path'>): MeasureName =>
  path.filter((step) => step !== 'measures').join('.') as MeasureName

/** The measure of a name; the full path of the result document is understood too. Undefined where there is none. */
export const measureNamed = (measures: readonly StudyMeasure[], name: string): StudyMeasure | undefined =>
  measures.find((measure) => measureName(measure) === name || measure.path.join('.') === name)
