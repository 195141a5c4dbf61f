/** What the inputs rest on, as documents tell it and reports print it. */
import type { Amount } from '../catalogue/figure.js'
import { amountText, type Display, inSmall, spanText, wordsFor } from '../catalogue/printed-units.js'
import { type Cell, figures, words } from '../report/cell.js'
import type { Table } from '../report/report.js'
import type { Known } from '../scenario/known.js'

/** A value that says how well it is known; in SI, of a law its mean. */
export interface RestsOn {
  path: string
  form: Known['form']
  restsOn: string
  unit: string
  value: number | null
  low: number | null
  high: number | null
  confidence: number
}

/** What a document tells of its inputs. */
export interface InputsTold {
  evidence: RestsOn[]
  /** A sentence on what is taken as exact. */
  exact: string
}

/** The table of what the inputs rest on; without rows where nothing says so. `isDrawn`: they are in the plus-minus. */
export function restsOnTable(evidence: readonly RestsOn[], display: Display, isDrawn = false): Table {
  return {
    title: 'What the inputs rest on',
    note: `Values that say how well they are known. Of a law the mean is told. Chances and rates that were counted lie between exact limits; a guess is believed to lie between its ends nine times in ten. ${isDrawn ? 'The plus-minus of this study holds what is not known of them.' : 'The plus-minus of a study is that of chance in its shifts, with these values held fixed.'}`,
    columns: [...words('input'), ...figures('value'), ...words('rests on'), ...figures('lies between')],
    rows: evidence.map((each): Cell[] => [
      { path: each.path },
      inputText(each.value, each, display) ?? 'none seen',
      each.restsOn,
      intervalText(each, display),
    ]),
  }
}

/** An input, or an end of it, with its unit; null where that is not known. */
export function inputText(
  value: number | null,
  { unit }: Pick<RestsOn, 'unit'>,
  display: Display,
): string | null {
  if (value === null) return null
  if (unit === 'K') return wordsFor(display).temperature(value)
  const amount: Amount = { value, unit }
  return amountText(unit === 'm' && Math.abs(value) < 1 ? inSmall(amount) : amount, display)
}

function intervalText(each: RestsOn, display: Display): string {
  const [low, high] = [inputText(each.low, each, display), inputText(each.high, each, display)]
  const sure = `(${each.confidence * 100} %)`
  return high === null ? `above ${low} ${sure}` : `${spanText(low ?? '', high)} ${sure}`
}
