/** The first screen of a fit: how many inputs have a value, the first of them, what speaks against taking them, what was done to the record. */

import { firstOf, nextPart, part, plain, safetyPart } from '../../answers/first-screen.js'
import { figures, words } from '../../report/cell.js'
import { counted, grouped, percentText, sentences } from '../../report/format.js'
import type { Table } from '../../report/report.js'
import type { Screen, Verdict } from '../../report/screen.js'
import { labelOf } from '../../scenario/labels.js'
import type { FitResult, FittedInput } from './document.js'
import { knownOf } from './known.js'
import { few } from './remarks.js'
import { nextOfFit, recordText, touchedRows } from './report.js'
import { hasValue } from './words.js'

/** The first screen of a fit. */
export function fitScreen(result: FitResult): Screen {
  const { made, display, inputs, record } = result
  return {
    title: made.record.title,
    display,
    verdict: verdictOf(result),
    parts: [
      valuesTable(result),
      ...part('Few', [fewText(inputs)], 'warning'),
      ...part('Doubts', [doubtsText(inputs)], 'warning'),
      ...part('Record', [rowsText(result)]),
      ...nextPart(nextOfFit(result).map(plain), result),
      ...part('Basis', [`${recordText(record)}. One law or rate is taken for the whole record.`]),
      ...safetyPart,
    ],
  }
}

const nameOf = ({ path }: FittedInput): string => labelOf(path)

/** How many inputs have a value, and which have none. */
function verdictOf({ inputs }: FitResult): Verdict {
  const fitted = inputs.filter(hasValue).length
  const without = inputs.filter((each) => !hasValue(each)).map(nameOf)
  if (fitted === 0)
    return { word: 'NOTHING FITTED', tone: 'error', text: ': no input has a value in this record.' }
  return {
    word: 'FITTED',
    tone: without.length === 0 ? 'good' : 'warning',
    text: `: ${fitted} of ${counted(inputs.length, 'input')} have a value in this record${without.length === 0 ? '' : `; without one: ${firstOf(without, 2)}`}.`,
  }
}

/** Values that are told; all stand with --full. */
const mostValues = 4

/** Those that rest on fewest events come first: there the intervals are widest. */
function valuesTable({ inputs, made }: FitResult): Table {
  const known = inputs.flatMap((input) => {
    const said = knownOf(input)
    return said && hasValue(input) ? [{ input, said }] : []
  })
  const told = known.toSorted((a, b) => a.input.events - b.input.events).slice(0, mostValues)
  const more = inputs.filter(hasValue).length - told.length
  return {
    title: `Rate or mean with its ${percentText(made.confidence)} interval, fewest events first`,
    more,
    columns: [...words('input'), ...figures('rate or mean')],
    rows: told.map(({ input: { path }, said }) => [{ path }, said]),
  }
}

/** Inputs that are known to within a wide interval only. */
function fewText(inputs: readonly FittedInput[]): string | false {
  const thin = inputs.filter((each) => each.what !== 'mix' && each.events < few).map(nameOf)
  return (
    thin.length > 0 &&
    `${thin.length} of ${counted(inputs.length, 'input')} ${thin.length === 1 ? 'is' : 'are'} based on fewer than ${few} events: ${firstOf(thin, 1)}.`
  )
}

/** What was not alike all the time, and what no law fits. */
function doubtsText(inputs: readonly FittedInput[]): string | null {
  const changed = inputs.filter(({ tests }) => tests.some(({ isShown }) => isShown)).map(nameOf)
  const misfits = inputs
    .filter(({ remarks }) => remarks.some(({ code }) => code === 'nothing-fits'))
    .map(nameOf)
  return sentences(
    changed.length > 0 && `Shown to differ within the record: ${firstOf(changed, 2)}.`,
    misfits.length > 0 && `No law fits well: ${firstOf(misfits, 2)}.`,
  ).join(' ')
}

/** What was done to the rows of the record, and stops without a reason. */
function rowsText({ account, record }: FitResult): string {
  const rows = touchedRows(account)
  const read = record.files.reduce((sum, file) => sum + file.rows, 0)
  const fixes = account.filter(({ did, fix }) => did !== 'noted' && fix !== '').length
  return sentences(
    `${rows === 0 ? 'None' : grouped(rows, 0)} of ${counted(read, 'row')} ${rows === 1 ? 'was' : 'were'} changed or left out.`,
    fixes > 0 && `${counted(fixes, 'thing')} to fix.`,
  ).join(' ')
}
