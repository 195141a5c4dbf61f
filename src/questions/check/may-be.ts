/** Hand figures as the inputs may be, printed beside what they are with inputs held fixed. */
import { amountText, spanText } from '../../catalogue/printed-units.js'
import { type Cell, type Column, figures } from '../../report/cell.js'
import type { CheckResult } from './document.js'

/** What stands over a column of them, and in notes. */
const heading = '5 to 95 % of the draws of the inputs'

/** A further column of a table, where the inputs move one of its figures. */
export interface MayBe {
  columns: Column[]
  /** The cells of a row: one, or none where there is no such column. */
  cells(key: string, unit: string): Cell[]
}

/** The range of a figure by its key, such as `8.9 to 9.3 cases/min`; null where the inputs move no digit of it that is printed. */
export function rangeText(
  { likely, display }: Pick<CheckResult, 'likely' | 'display'>,
  key: string,
  unit: string,
): string | null {
  const range = likely?.ranges[key]
  if (!range) return null
  const low = amountText({ value: range.low, unit }, display)
  const high = amountText({ value: range.high, unit }, display)
  return low === high ? null : spanText(low, high)
}

/** The column for figures with these keys. */
export function mayBe(result: Pick<CheckResult, 'likely' | 'display'>, keys: readonly string[]): MayBe {
  const isMoved = keys.some((key) => result.likely?.ranges[key] !== undefined)
  return {
    columns: isMoved ? figures(heading) : [],
    cells: (key, unit) => (isMoved ? [rangeText(result, key, unit) ?? 'hardly moves'] : []),
  }
}
