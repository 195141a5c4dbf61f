/** Is the model the plant? Simulates days of a record that no fit used, and holds its good cases and its stops against those of the plant. */
import { type Answer, repeatOf } from '../../answers/answer.js'
import { coveringWords } from '../../answers/validated.js'
import { type ReadRecord, refuseUnusable } from '../../record/read-record.js'
import type { CleanRecord } from '../../record/record.js'
import { lengthOf, total } from '../../record/spans.js'
import { misuse } from '../../scenario/fault.js'
import type { ReadScenario } from '../../scenario/read.js'
import { withChanges } from '../../scenario/with-changes.js'
import type { Context } from '../../shifts/simulation.js'
import { runtime, version } from '../../version.js'
import { type ValidateAsked, type ValidateOptions, validateAsked } from './asked.js'
import { Causes, type Stopped } from './causes.js'
import { daysCsv } from './csv.js'
import { type PlantDays, plantDays } from './days.js'
import type { ValidateResult } from './document.js'
import { explanationOf, gapsOf } from './gaps.js'
import { daysAmongRuns, goodOf, ranksOf, regressionOf } from './judged.js'
import { notesOf } from './notes.js'
import { type Drawn, type SheetRow, sheetCsv, sheetTest } from './sheet.js'
import { type SimulatedDay, simulated } from './simulated.js'
import { daysToRun } from './to-run.js'
import { chosenWords, validatedWords } from './words.js'

/** What a validation gives back. */
export interface ValidateAnswer extends Answer<ValidateResult> {
  /** The text of the scenario that was given, with what it was validated by; null where none was given. */
  scenario: string | null
}

/** What the question is about: the scenario, the record, and what was asked. */
export interface About {
  loaded: ReadScenario
  read: ReadRecord
  options: ValidateOptions
  asked: ValidateAsked
}

/** Answers the question. Throws `Fault`. */
export async function validate(
  loaded: ReadScenario,
  read: ReadRecord,
  options: ValidateOptions = {},
  context: Context = {},
): Promise<ValidateAnswer> {
  const { scenario } = loaded
  const asked = validateAsked(options, scenario.study.confidence)
  refuseUnusable(read)
  refuseUnfit(loaded)
  const about: About = { loaded, read, options, asked }
  const { record } = read
  const chosen = plantDays(record, asked.kept, options.seed ?? 'tapeshift')
  if (options.writeInto !== undefined && chosen.isCalibration)
    throw misuse(
      '--write says in the scenario what validated it: name days that no fit used, by --held-out, --hold-out or --unseen',
    )
  const causes = new Causes(record, scenario)
  const { days, leftOut, drawn } = daysToRun(about, chosen)
  const done = await simulated(days, asked.runs, { loaded, record, causes }, context)
  const logged = loggedStops(done, record, causes)
  const document = documentOf(about, { ...chosen, leftOut }, { days: done, logged, causes })
  return {
    document,
    rows: () => new Map([['days.csv', daysCsv(document)], ...sheets(drawn, { days: done, logged, causes })]),
    isMet: document.good.verdict === 'within',
    cannotWork: false,
    scenario: options.writeInto === undefined ? null : withWords(options.writeInto, document),
  }
}

function refuseUnfit({ scenario: { shift } }: ReadScenario): void {
  if (shift.start !== 'empty')
    throw misuse(
      'each day is simulated by itself: the scenario must begin its shifts empty (`--set shift.start=empty --set shift.campaign=1`)',
    )
}

/** Stops of each day as the plant logged them. */
function loggedStops(
  days: readonly SimulatedDay[],
  { stops, shifts }: CleanRecord,
  causes: Causes,
): Stopped[][] {
  const places = new Map(days.map(({ day }, index) => [day, index]))
  const sums = days.map(() => causes.none())
  for (const stop of stops) {
    const place = places.get(shifts[stop.shift]!.day)
    if (place !== undefined) causes.addLogged(sums[place]!, stop)
  }
  return sums
}

interface Done {
  days: readonly SimulatedDay[]
  logged: readonly Stopped[][]
  causes: Causes
}

function documentOf(
  { loaded, read, options, asked }: About,
  { isCalibration, leftOut }: Pick<PlantDays, 'isCalibration' | 'leftOut'>,
  { days, logged, causes }: Done,
): ValidateResult {
  const { scenario, sha256, shiftsSha256 } = loaded
  const { seed, confidence } = scenario.study
  const { margin, runs, sheet } = asked
  const { record } = read
  const byDay = daysAmongRuns(days, seed)
  const good = goodOf(byDay, { margin, confidence, seed })
  const stopped = days.map(({ stops }, index) => ({ plant: logged[index]!, model: stops }))
  const gaps = gapsOf(causes.all, stopped, confidence)
  return {
    format: 'tapeshift-result/1',
    command: 'validate',
    made: {
      ...{ version, node: runtime, seed, scenario: { title: scenario.title, sha256 }, shiftsSha256 },
      record: { title: record.title, sha256: read.sha256 },
      ...{ shifts: runs * days.reduce((sum, { shifts }) => sum + shifts.length, 0), confidence },
      repeat: repeatOf('validate', { ...loaded.asked, record: read.name }, flagsOf(loaded, options)),
    },
    ...{ display: scenario.display, margin, runs, isCalibration },
    chosen: chosenWords(asked.kept),
    leftOut,
    days: byDay,
    good,
    ranks: ranksOf(byDay, runs),
    regression: regressionOf(days),
    causes: gaps,
    explains: explanationOf(gaps, good.model - good.plant, paceOf(days, record, good.plant)),
    sheet: sheet > 0 ? sheetTest(sheet) : null,
    notes: notesOf(loaded, record, days),
  }
}

const flagsOf = (
  { asked: { variant, confidence } }: ReadScenario,
  { margin, runs, holdOut, heldOut, unseen, seed, sheet }: ValidateOptions,
) => ({
  ...{ variant, margin, runs, 'hold-out': holdOut, 'held-out': heldOut?.name },
  ...{ unseen, sheet, seed, confidence },
})

/** Good cases of the plant in a second of its shifts without breaks. */
function paceOf(days: readonly SimulatedDay[], { shifts }: CleanRecord, plant: number): number {
  const all = days.flatMap((day) => day.shifts.map((number) => shifts[number]!))
  const open = all.reduce((sum, shift) => sum + lengthOf(shift) - total(shift.breaks), 0) / days.length
  return open > 0 ? plant / open : 0
}

/** The reports and their key. */
function sheets(drawn: readonly Drawn[], { days, logged, causes }: Done): [string, string][] {
  if (drawn.length === 0) return []
  const rows = drawn.map(({ day: place, run }): SheetRow => {
    const { day, good, picked } = days[place]!
    const own = run === null ? { good, stops: logged[place]! } : picked!
    return { day, run, ...own }
  })
  const [sheet, key] = sheetCsv(rows, causes.all)
  return [
    ['sheet.csv', sheet],
    ['sheet-key.csv', key],
  ]
}

function withWords(text: string, document: ValidateResult): string {
  const words = coveringWords(validatedWords(document), document.made.shiftsSha256)
  return withChanges(text, [
    { path: 'study.validated-by', text: JSON.stringify(words), comment: `by ${document.made.repeat}` },
  ])
}
