/** Words that all reports and charts of a sweep share: values of factors, figures, differences. */

import { notTold, printDifference, type Shown } from '../../answers/difference.js'
import { type Figure, wholeOf } from '../../catalogue/figure.js'
import { lineRow } from '../../catalogue/of-line.js'
import { nothing, printedUnit } from '../../catalogue/printed-units.js'
import { briefly } from '../../catalogue/unit-name.js'
import { type Cell, cellText } from '../../report/cell.js'
import { type Parts, partsOf, sharePartsOfShifts } from '../../report/format.js'
import { type Factor, heldName, type SweepMeasure, type SweepPoint, type SweepResult } from './document.js'

/** `18 m/min`: a value of a factor, with no more figures than it needs. */
export const valueText = (value: number, { unit }: Pick<Factor, 'unit'>, digits = 6): string =>
  `${Number(value.toPrecision(digits))} ${unit}`.trim()

/** Of a curve the value at a place, as it was tried. */
export const placeText = (
  { points, factors }: Pick<SweepResult, 'points' | 'factors'>,
  place: number,
): string => valueText(points[place]!.at[0]!, factors[0]!)

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
export const pointCell = (figure: Figure | undefined, name: string): Cell =>
  figure && name === heldName && figure.mean !== null && figure.low !== null
    ? sharePartsOfShifts(figure)
    : figure

/** The same in one line. */
export const pointText = (figure: Figure | undefined, name: string, { display }: Shows): string =>
  cellText(pointCell(figure, name), display)

/** In which units it is shown. */
type Shows = Pick<SweepResult, 'display'>

/** Said of a point at which `check` finds an error. */
export const butThere = ({ errors }: SweepPoint): string =>
  errors ? ', but there the line cannot work as described' : ''

/** A number in the unit of a measure, without its plus-minus. */
export function meanText(value: number, measure: SweepMeasure, { display }: Shows): string {
  const { factor, word } = printedUnit(briefly(measure).unit, display)
  return `${Number((value * factor).toPrecision(4))} ${word}`.trim()
}

/** Of a difference `+0.06 ± 0.01 cases/min`, of shares in points; why there is none. `unit`: another than its own. */
function differenceParts(figure: Said, { display }: Shows, unit?: string): Parts {
  if (!figure) return [nothing]
  if (figure.few) return [notTold(figure.few.events)]
  const printed = printDifference(briefly(figure), display)
  if (printed.value === nothing) return [nothing]
  return partsOf({ ...printed, unit: unit ?? (figure.unit === 'share' ? 'points' : printed.unit) })
}

/** A difference, where there is one. */
type Said = Shown | null | undefined

function isSame(figure: Said): boolean {
  if (!figure || figure.few || figure.mean !== 0) return false
  const { low, high } = wholeOf(figure)
  return low === 0 && high === 0
}

/** Is there a difference with an interval that does not show it? */
const isUnshown = (figure: Said): boolean =>
  figure?.isShown === false &&
  !figure.few &&
  [figure.mean, figure.low, figure.high].every((value) => value !== null)

/** `+0.06 ± 0.01 cases/min`. */
export const differenceSize = (figure: Said, result: Shows): string =>
  isSame(figure) ? 'the same in every shift' : differenceParts(figure, result).join(' ')

/** The same; of one that is not shown with `: nothing shown`. */
export const differenceWords = (figure: Said, result: Shows): string =>
  `${differenceSize(figure, result)}${isUnshown(figure) && !isSame(figure) ? ': nothing shown' : ''}`

/** The same for a cell of a table: what is not shown in brackets. */
export function differenceCell(figure: Said, result: Shows, unit?: string): Parts {
  if (isSame(figure)) return ['the same']
  const parts = differenceParts(figure, result, unit)
  if (!isUnshown(figure)) return parts
  return [`[${parts[0]}`, ...parts.slice(1)].map((part, index) =>
    index === parts.length - 1 ? `${part}]` : part,
  )
}
