/** What the report of a validation says, the same for the terminal and the page. */
import { figures as digits } from '../../catalogue/printed-units.js'
import { words } from '../../report/cell.js'
import { counted, percentText, sentences } from '../../report/format.js'
import type { Report } from '../../report/report.js'
import { inSections } from '../../report/sections.js'
import { labelOf } from '../../scenario/labels.js'
import { cautions } from '../../trade/cautions.js'
import type { Driver } from './asked.js'
import type { ValidateResult } from './document.js'
import { causesTable, daysTable, leftOutTable, sidesTable, testsTable } from './tables.js'
import { drivenText, explanationText, spanOfDays, verdictText } from './words.js'

const calibration =
  'This is calibration, not validation: a fit may have used these days. It shows how well the model was fitted, not that it matches the plant.'

/** The report of a validation. */
export function validateReport(result: ValidateResult): Report {
  const { made, display, isCalibration } = result
  return {
    title: `${made.scenario.title}, compared with: ${made.record.title}`,
    subtitle: subtitle(result),
    display,
    headline: sentences(
      isCalibration && calibration,
      verdictText(result),
      drivenText(result),
      coverage(result),
      explanationText(result),
    ),
    certainty: sentences(sheetText(result)),
    tables: inSections([
      testsTable(result),
      sidesTable(result),
      daysTable(result),
      leftOutTable(result),
      causesTable(result),
    ]),
    limits: result.notes,
    assumed: { title: 'Assumed', columns: words('what', 'value'), rows: [] },
    unsourced: [],
    cautions,
    repeat: made.repeat,
    origin: `tapeshift ${made.version} on Node ${made.node}, seed "${made.seed}", scenario sha256 ${made.scenario.sha256}, record sha256 ${made.record.sha256}`,
    question: question(result),
  }
}

function question({ isCalibration, drivenBy }: ValidateResult): string {
  const own = drivenBy === 'stops' ? ", given the plant's own stops" : ''
  return isCalibration
    ? `Does the model reproduce the days that it may have been fitted to${own}?`
    : `Does the model ${own === '' ? '' : 'of the line '}match the plant on days that no fit has used${own}?`
}

const drivenWords: Readonly<Record<Driver, string>> = {
  arrivals: '',
  stops: ", with the plant's own stops",
  both: " with simulated stops, and with the plant's own stops",
}

function subtitle(result: ValidateResult): string {
  const { days, leftOut, chosen, runs, margin, made, drivenBy } = result
  const parts = [
    `${counted(days.length, 'day')} ${spanOfDays(result)}: ${chosen}`,
    ...(leftOut.length > 0 ? [`${counted(leftOut.length, 'day')} left out`] : []),
    `${runs} runs of each${drivenWords[drivenBy]}`,
  ]
  return `${parts.join('; ')}. Margin ${percentText(margin)}, set in advance; risk of a wrong yes ${percentText(1 - made.confidence)}.`
}

/** How many days lie in the range of their runs. */
export function coverage({ ranks, days, drivenBy, ownStops }: ValidateResult): string {
  const lie = `${ranks.inside} of ${counted(days.length, 'day')} lie in the range of ${percentText(ranks.share)} of their runs`
  if (ranks.p >= 0.05) return `${lie}.`
  return drivenBy === 'stops' && ownStops && ownStops.open > 0
    ? `${lie}: fewer than expected, but the clock of the log makes the stops uncertain by ${digits(ownStops.open / 60, 2)} minutes a day, which the runs do not include.`
    : `${lie}: too few for a model that matches the plant.`
}

const sheetText = ({ sheet }: ValidateResult): string | false =>
  sheet !== null &&
  `Give sheet.csv without its key to people who know the line. If they sort ${sheet.right} or more of ${sheet.count} days correctly into plant and model, the two differ visibly, at the 5 % level (by guessing: ${percentText(sheet.p, 2)}).`

/** What to do next. */
export function nextOfValidation({ good, explains, isCalibration, drivenBy }: ValidateResult): string[] {
  const { path } = explains ?? {}
  return sentences(
    isCalibration &&
      'Hold out some days: `tapeshift fit RECORD --hold-out "30 %"`, then `--held-out fitted.yaml` here.',
    good.verdict === 'within' &&
      !isCalibration &&
      'Record this in the scenario: `--write FILE` writes a copy that says how it was validated.',
    good.verdict !== 'within' &&
      path &&
      `Look at ${labelOf(path)} first (\`${path}\`): compare the log with the scenario.`,
    good.verdict !== 'within' &&
      drivenBy === 'arrivals' &&
      'Is the line wrong or its simulated stops? Use `--driven-by both` to replay the stops of the plant too.',
    good.verdict === 'within' &&
      drivenBy === 'stops' &&
      'Next, leave out `--driven-by stops`: are the simulated stops right too?',
    good.verdict === 'not-shown' && '"Not shown" does not mean wrong: more days make the interval shorter.',
  )
}
