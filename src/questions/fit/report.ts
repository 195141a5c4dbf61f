/** What the report of a fit says, the same for the terminal and the page. */
import { words } from '../../report/cell.js'
import { counted, durationText, percentText, sentences } from '../../report/format.js'
import type { Report } from '../../report/report.js'
import { inSections } from '../../report/sections.js'
import { labelOf } from '../../scenario/labels.js'
import { cautions } from '../../trade/cautions.js'
import type { FitResult } from './document.js'
import {
  accountTable,
  familiesTable,
  filesTable,
  remarksTable,
  testsTable,
  timeTable,
  valuesTable,
} from './tables.js'
import { hasValue } from './words.js'

/** The report of a fit. */
export function fitReport(result: FitResult): Report {
  const { made, display } = result
  return {
    title: made.record.title,
    subtitle: subtitle(result),
    display,
    headline: headline(result),
    certainty: [],
    tables: inSections([
      valuesTable(result),
      remarksTable(result),
      familiesTable(result),
      accountTable(result),
      timeTable(result),
      filesTable(result),
      testsTable(result),
    ]),
    limits: result.notes,
    assumed: { title: 'Assumed', columns: words('what', 'value'), rows: [] },
    unsourced: [],
    cautions,
    repeat: made.repeat,
    origin: `tapeshift ${made.version} on Node ${made.node}, record sha256 ${made.record.sha256}`,
    question: 'What inputs does the log of the plant give for its line?',
  }
}

const subtitle = ({ record, made }: FitResult): string =>
  `${recordText(record)}. Intervals: ${percentText(made.confidence)}.`

/** Which shifts and days were read, and how near the clock of the log comes. */
export function recordText({
  days,
  heldOut,
  zone,
  roundedTo,
  seenFrom,
  shifts,
}: FitResult['record']): string {
  const span = [
    `${counted(shifts, 'shift')} from ${days.first} to ${days.last}`,
    ...(heldOut.length > 0 ? [`${counted(heldOut.length, 'day')} of ${days.count} held out`] : []),
  ]
  const clock = [
    zone === null ? 'Times as written, no clock change known' : `Time zone ${zone}`,
    ...(roundedTo.value ? [`times read to ${durationText(roundedTo.value)}`] : []),
    ...(seenFrom.value ? [`stops under ${durationText(seenFrom.value)} not in the log`] : []),
  ]
  return `${span.join(', ')}. ${clock.join('; ')}`
}

/** Rows that were changed or left out. */
export const touchedRows = (account: FitResult['account']): number =>
  account
    .filter(({ did }) => did === 'changed' || did === 'left-out')
    .reduce((sum, { count }) => sum + count, 0)

function headline({ inputs, account }: FitResult): string[] {
  const said = inputs.filter(hasValue)
  const rows = touchedRows(account)
  return [
    `${said.length} of ${counted(inputs.length, 'input')} have a value in this record, with its evidence.`,
    rows === 0
      ? 'No row had to be changed or left out.'
      : `${counted(rows, 'row')} changed or left out; they are listed below by row number.`,
  ]
}

/** What to do next. */
export function nextOfFit({ inputs, record, account }: FitResult): string[] {
  const hasFixes = account.some(({ did, fix }) => did !== 'noted' && fix !== '')
  const thin = inputs
    .filter(({ what, events }) => what !== 'mix' && events < 20)
    .sort((a, b) => a.events - b.events)[0]
  return sentences(
    hasFixes && 'Correct the rows listed in the table of the record, and fit again.',
    'Write the values into a scenario: `--into line.yaml --write line-fitted.yaml`, then `tapeshift check line-fitted.yaml`.',
    thin &&
      `Continue to log ${labelOf(thin.path)} (\`${thin.path}\`), which is based on ${counted(thin.events, 'event')}.`,
    record.heldOut.length === 0 && 'Hold out some days to validate the model: `--hold-out "30 %"`.',
  )
}
