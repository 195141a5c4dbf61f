/** What a study can say of its shifts: each measure by its place in the result document, and its estimate. */
import type { Column, ShiftResult } from '../line/line.js'
import { ControlBasis } from './control.js'
import { type Estimate, meanEstimate, quantileEstimate, ratioEstimate, shareEstimate } from './estimate.js'

/** How figures are estimated. */
export interface Estimation {
  confidence: number
  /** Without control variates. */
  isPlain: boolean
}

/** A measure of a study: where it stands in the result, its words, and which numbers of a shift it is made of. */
export interface StudyMeasure {
  path: readonly string[]
  label: string
  unit: string
  /** The column of the shift result that it draws on. */
  index: number
  kind: Column['measure']['kind'] | 'quantile'
  /** Of a quantile: the share of shifts below it. */
  below?: number
}

/** The shift output that 9 of 10 shifts reach: what one may promise for a single shift. */
const poorShift = {
  of: 'output',
  key: 'output-p10',
  label: 'Good cases that 9 of 10 shifts put out',
  below: 0.1,
}

/** The measures of a study in the order of the result document. `campaign`: shifts in a row that are one observation. */
export function studyMeasures(columns: readonly Column[], campaign: number): StudyMeasure[] {
  return columns.flatMap(({ measure: { path, label, unit, kind }, part }, index): StudyMeasure[] => {
    if (part === 'over') return []
    const itself = { path, label, unit, index, kind }
    // the shifts of a campaign are alike and follow each other: their order says nothing of a single one
    if (path[0] !== 'measures' || path[1] !== poorShift.of || campaign > 1) return [itself]
    const { key, label: words, below } = poorShift
    return [itself, { path: ['measures', key], label: words, unit, index, kind: 'quantile', below }]
  })
}

/** Controls of these shifts; null where they are few, say nothing, or are not wanted. */
export const controlsOf = (shifts: readonly ShiftResult[], { isPlain }: Estimation): ControlBasis | null =>
  isPlain ? null : ControlBasis.of(shifts.map((shift) => shift.controls))

/** The estimate of a measure from shifts in their order. */
export function estimate(
  { index, kind, below }: StudyMeasure,
  shifts: readonly ShiftResult[],
  confidence: number,
  controls: ControlBasis | null,
): Estimate {
  const values = shifts.map((shift) => shift.values[index]!)
  switch (kind) {
    case 'share':
      return shareEstimate(values, confidence)
    case 'quantile':
      return quantileEstimate(values, below!, confidence)
    case 'ratio':
      return ratioEstimate(
        values,
        shifts.map((shift) => shift.values[index + 1]!),
        confidence,
        controls,
      )
    default:
      return meanEstimate(values, confidence, controls)
  }
}

/** The name that a person gives for a measure: `throughput`, `equipment.sealer.jams`, `crew.operators.busy`. */
export const measureName = ({ path }: Pick<StudyMeasure, 'path'>): string =>
  path.filter((step) => step !== 'measures').join('.')

/** The measure of a name; the full path of the result document is understood too. Undefined where there is none. */
export const measureNamed = (measures: readonly StudyMeasure[], name: string): StudyMeasure | undefined =>
  measures.find((measure) => measureName(measure) === name || measure.path.join('.') === name)
