/** What the report of a validation says, the same for the terminal and the page. */
import { figures as digits } from '../../catalogue/printed-units.js'
import { words } from '../../report/cell.js'
import { counted, percentText, sentences } from '../../report/format.js'
import type { Report } from '../../report/report.js'
import { inSections } from '../../report/sections.js'
import { cautions } from '../../trade/cautions.js'
import type { Driver } from './asked.js'
import type { ValidateResult } from './document.js'
import { causesTable, daysTable, leftOutTable, sidesTable, testsTable } from './tables.js'
import { drivenText, explanationText, spanOfDays, verdictText } from './words.js'

const calibration =
  'This is calibration, not validation: a fit may have used these days, so it shows how well the model was fitted, not that it is the plant.'

/** The report of a validation. */
export function validateReport(result: ValidateResult): Report {
  const { made, display, isCalibration } = result
  return {
    title: `${made.scenario.title}, held against: ${made.record.title}`,
    subtitle: subtitle(result),
    display,
    headline: sentences(
      isCalibration && calibration,
      verdictText(result),
      drivenText(result),
      coverage(result),
      explanationText(result),
    ),
    certainty: [],
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
    summary: {
      question: question(result),
      answer: sentences(isCalibration && calibration, verdictText(result), drivenText(result)).join(' '),
      sureness: sentences(coverage(result), sheetText(result)),
      limitingHead: 'What explains the gap',
      limiting: explanationText(result, true),
      next: nextOfValidation(result),
    },
  }
}

function question({ isCalibration, drivenBy }: ValidateResult): string {
  const own = drivenBy === 'stops' ? ", given the plant's own stops" : ''
  return isCalibration
    ? `Does the model give back the days that it may have been fitted to${own}?`
    : `Is the model ${own === '' ? '' : 'of the line '}the plant, on days that no fit has used${own}?`
}

const drivenWords: Readonly<Record<Driver, string>> = {
  arrivals: '',
  stops: ", with the plant's own stops",
  both: " by the laws of its stops, and with the plant's own stops",
}

function subtitle(result: ValidateResult): string {
  const { days, leftOut, chosen, runs, margin, made, drivenBy } = result
  const parts = [
    `${counted(days.length, 'day')} ${spanOfDays(result)}: ${chosen}`,
    ...(leftOut.length > 0 ? [`${counted(leftOut.length, 'day')} left out`] : []),
    `${runs} runs of each${drivenWords[drivenBy]}`,
  ]
  return `${parts.join('; ')}. Margin ${percentText(margin)}, named beforehand; risk of a wrong yes ${percentText(1 - made.confidence)}.`
}

/** How many days lie where their runs do. */
export function coverage({ ranks, days, drivenBy, ownStops }: ValidateResult): string {
  const lie = `${ranks.inside} of ${counted(days.length, 'day')} lie where ${percentText(ranks.share)} of their runs do`
  if (ranks.p >= 0.05) return `${lie}.`
  return drivenBy === 'stops' && ownStops && ownStops.open > 0
    ? `${lie}: fewer than should, but the clock of the log leaves ${digits(ownStops.open / 60, 2)} minutes of stops a day open, which the runs do not hold.`
    : `${lie}: too few for a model that is the plant.`
}

const sheetText = ({ sheet }: ValidateResult): string | false =>
  sheet !== null &&
  `Give sheet.csv to those who know the line, not its key: ${sheet.right} or more of ${sheet.count} told right, plant or model, show at 5 % that the two can be told apart (by guessing ${percentText(sheet.p, 2)}).`

/** What to do next. */
export function nextOfValidation({ good, explains, isCalibration, drivenBy }: ValidateResult): string[] {
  const { path } = explains ?? {}
  return sentences(
    isCalibration &&
      'Keep days back: `tapeshift fit RECORD --hold-out "30 %"`, then `--held-out fitted.yaml` here.',
    good.verdict === 'within' &&
      !isCalibration &&
      'Say so in the scenario: `--write FILE` writes it with what validated it.',
    good.verdict !== 'within' &&
      path &&
      `Look at \`${path}\` first: is the value of the scenario that of the log?`,
    good.verdict !== 'within' &&
      drivenBy === 'arrivals' &&
      'Is it the line or the laws of its stops? `--driven-by both` puts the stops of the plant in too.',
    good.verdict === 'within' &&
      drivenBy === 'stops' &&
      'Then without `--driven-by stops`: are the laws of the stops right too?',
    good.verdict === 'not-shown' && 'Not shown is not wrong: more days make the interval shorter.',
  )
}
