/** Words that all reports and charts of a sweep share: values of factors, figures, differences. */

import { fewDiffer, printDifference } from '../../answers/difference.js'
import type { DifferenceFigure } from '../../answers/difference-figure.js'
import { heldName } from '../../answers/usual-measures.js'
import type { Figure } from '../../catalogue/figure.js'
import { lineRow } from '../../catalogue/of-line.js'
import { briefly, briefUnit } from '../../catalogue/unit-name.js'
import { figureText, type PrintedFigure, printedUnit, shareOfShifts } from '../../report/format.js'
import type { Factor, SweepMeasure, SweepResult } from './document.js'

/** `18 m/min`: a value of a factor, with no more figures than it needs. */
export const valueText = (value: number, { unit }: Pick<Factor, 'unit'>, digits = 6): string =>
  `${Number(value.toPrecision(digits))} ${unit}`.trim()

/** `9 to 16 m/min`: what a factor goes over. */
export const rangeWords = ({ values, unit }: Pick<Factor, 'unit' | 'values'>): string =>
  `${Number(values[0]!.toPrecision(6))} to ${valueText(values.at(-1)!, { unit })}`

/** A measure in a few words. */
export const measureWords = ({ name, label }: SweepMeasure): string => {
  const row = lineRow(name)
  return (row?.subject && row.column) ?? label
}

/** A measure at the head of a sentence. */
export const measureSubject = ({ name, label }: SweepMeasure): string => lineRow(name)?.subject ?? label

/** A figure of a point: `9.17 ± 0.03 cases/min`, of shifts that hold the target `92 % (85 to 96 %)`. */
export function pointText(
  figure: Figure | undefined,
  name: string,
  { display }: Pick<SweepResult, 'display'>,
): string {
  if (!figure || figure.mean === null) return '–'
  if (name === heldName && figure.low !== null) return shareOfShifts(figure)
  return figureText(briefly(figure), display)
}

/** A number in the unit of a measure, without its plus-minus. */
export function meanText(
  value: number,
  { unit }: SweepMeasure,
  { display }: Pick<SweepResult, 'display'>,
): string {
  const { factor, word } = printedUnit(briefUnit(unit), display)
  return `${Number((value * factor).toPrecision(4))} ${word}`.trim()
}

/** `+0.06`, `± 0.01`, `cases/min`: shares differ by points. */
export function printedDifference(
  figure: DifferenceFigure,
  { display }: Pick<SweepResult, 'display'>,
): PrintedFigure {
  const printed = printDifference(briefly(figure), display)
  return { ...printed, unit: printed.unit === 'percentage points' ? 'points' : printed.unit }
}

/** `+0.06 ± 0.01 cases/min`; of one that is not shown with `: nothing shown`. */
export function differenceWords(
  figure: DifferenceFigure | null | undefined,
  result: Pick<SweepResult, 'display'>,
): string {
  if (!figure) return '–'
  if (figure.few) return `not told: ${fewDiffer(figure.few.events)}`
  if (figure.mean === 0 && figure.low === 0 && figure.high === 0) return 'the same in every shift'
  const { value, interval, unit } = printedDifference(figure, result)
  if (value === '–') return value
  const words = [value, interval, unit].filter((part) => part !== '').join(' ')
  return figure.isShown === false ? `${words}: nothing shown` : words
}

/** The same for a cell of a table: what is not shown in brackets. */
export function differenceCell(
  figure: DifferenceFigure | null | undefined,
  result: Pick<SweepResult, 'display'>,
): string {
  const words = differenceWords(figure, result)
  if (words === 'the same in every shift') return 'the same'
  return words.endsWith(': nothing shown') ? `[${words.slice(0, -': nothing shown'.length)}]` : words
}

/** `9 cases/min`. */
export const targetWords = (target: number): string => `${Number((target * 60).toPrecision(4))} cases/min`
