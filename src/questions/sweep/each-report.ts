/** What moving one input at a time says: which of them matter, for each measure. */

import { differenceUnit } from '../../answers/difference.js'
import { briefly } from '../../catalogue/unit-name.js'
import { words } from '../../report/cell.js'
import { counted, listed } from '../../report/format.js'
import type { Table } from '../../report/report.js'
import type { EachInput, SweepMeasure, SweepResult } from './document.js'
import { differenceCell, differenceWords, measureSubject } from './words.js'

/** Inputs shown and drawn of each measure. */
export const mostInputs = 20

/** An input with its ends as one measure sees them, the largest first. */
export function rankedInputs({ each }: SweepResult, { name }: SweepMeasure): EachInput[] {
  const { inputs, order } = each!
  const known = new Map(inputs.map((input) => [input.path, input]))
  return order[name]!.map((path) => known.get(path)!)
}

/** Is a difference of either end shown? */
export const isInputShown = ({ differences }: EachInput, { name }: SweepMeasure): boolean =>
  differences[name]!.low?.isShown === true || differences[name]!.high?.isShown === true

/** The sentences at the head of the report: one a measure. */
export function eachHeadline(result: SweepResult): string[] {
  return result.measures.map((measure) => {
    const ranked = rankedInputs(result, measure)
    const shown = ranked.filter((input) => isInputShown(input, measure))
    const subject = measureSubject(measure)
    if (shown.length === 0)
      return `${subject}: none of the ${counted(ranked.length, 'input')} is shown to change it.`
    const top = shown.slice(0, 3).map((input) => `${input.path} (${endsWords(input, measure, result)})`)
    const rest = ranked.length - shown.length
    return `${subject}: changed most by ${listed(top)}. ${counted(shown.length, 'input')} of ${ranked.length} ${shown.length === 1 ? 'is' : 'are'} shown to change it${rest > 0 ? `, ${rest} not` : ''}.`
  })
}

/** `6.4 s to 5.76 s: +0.9 ± 0.1 cases/min; to 7.04 s: -0.8 ± 0.1 cases/min`. */
function endsWords(input: EachInput, { name }: SweepMeasure, result: SweepResult): string {
  const ends = (['low', 'high'] as const).flatMap((side) => {
    const difference = input.differences[name]![side]
    return difference ? [`${input[side]}: ${differenceWords(difference, result)}`] : []
  })
  return ends.join('; ')
}

/** A table a measure. */
export function eachTables(result: SweepResult): Table[] {
  return result.measures.map((measure): Table => {
    const ranked = rankedInputs(result, measure)
    const shown = ranked.slice(0, mostInputs)
    const { word } = differenceUnit(briefly(measure).unit, result.display)
    const inUnit = word === '' ? '' : `, ${word}`
    return {
      title: `${measureSubject(measure)}: effect of each input alone`,
      note: `In brackets: not shown.${shown.length < ranked.length ? ` The first ${shown.length} of ${ranked.length}; differences.csv has all.` : ''}`,
      columns: words('input', 'as it stands', `lower${inUnit}`, `higher${inUnit}`),
      behind: 'each',
      rows: shown.map((input) => [
        { path: input.path },
        input.base,
        endCell(input, 'low', measure, result),
        endCell(input, 'high', measure, result),
      ]),
    }
  })
}

/** `5.76 s: +0.96 ± 0.03`; what is not shown in brackets. The unit stands above. */
function endCell(
  input: EachInput,
  side: 'low' | 'high',
  { name }: SweepMeasure,
  result: SweepResult,
): string | null {
  const difference = input.differences[name]![side]
  return difference ? `${input[side]}: ${differenceCell(difference, result, '').join(' ')}` : null
}
