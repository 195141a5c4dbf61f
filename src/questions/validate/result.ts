/** The result document of a validation, from the runs of its days. */
import { repeatOf } from '../../answers/repeat.js'
import type { ReadRecord } from '../../record/read-record.js'
import type { CleanRecord } from '../../record/record.js'
import { lengthOf, total } from '../../record/spans.js'
import type { ReadScenario } from '../../scenario/read.js'
import { runtime, version } from '../../version.js'
import type { ValidateAsked, ValidateOptions } from './asked.js'
import { type Causes, meanStopped, type Stopped } from './causes.js'
import type { PlantDays } from './days.js'
import type { BesideResult, OwnStopsResult, ValidateResult } from './document.js'
import { explanationOf, gapsOf } from './gaps.js'
import { daysAmongRuns, goodOf, type Judging, ranksOf, regressionOf } from './judged.js'
import { notesOf } from './notes.js'
import type { OwnStops } from './own-stops.js'
import { sheetTest } from './sheet.js'
import type { SimulatedDay } from './simulated.js'
import { chosenWords } from './words.js'

/** What the question is about: the scenario, the record, and what was asked. */
export interface About {
  loaded: ReadScenario
  read: ReadRecord
  options: ValidateOptions
  asked: ValidateAsked
}

/** What was simulated, beside what the plant logged. */
export interface Done {
  days: readonly SimulatedDay[]
  /** The same days with the plant's own stops, where both were asked for. */
  beside: readonly SimulatedDay[] | null
  /** Stops of each day as the plant logged them. */
  logged: readonly Stopped[][]
  causes: Causes
  /** Null where all stops came by laws. */
  own: OwnStops | null
}

/** The document. */
export function documentOf(
  { loaded, read, options, asked }: About,
  { isCalibration, leftOut }: Pick<PlantDays, 'isCalibration' | 'leftOut'>,
  { days, beside, logged, causes, own }: Done,
): ValidateResult {
  const { scenario, sha256, shiftsSha256 } = loaded
  const { seed, confidence } = scenario.study
  const { margin, runs, drivenBy, sheet } = asked
  const { record } = read
  const byDay = daysAmongRuns(days, seed)
  const judging = { margin, confidence, seed }
  const good = goodOf(byDay, judging)
  const stopped = days.map(({ stops }, index) => ({ plant: logged[index]!, model: stops }))
  const gaps = gapsOf(
    causes.all,
    stopped,
    confidence,
    (path) => drivenBy === 'stops' && own?.has(path) === true,
  )
  const ownStops = own && aDay(own, days, record)
  return {
    format: 'tapeshift-result/1',
    command: 'validate',
    made: {
      ...{ version, node: runtime, seed, scenario: { title: scenario.title, sha256 }, shiftsSha256 },
      record: { title: record.title, sha256: read.sha256 },
      shifts: runs * [...days, ...(beside ?? [])].reduce((sum, { shifts }) => sum + shifts.length, 0),
      confidence,
      repeat: repeatOf('validate', { ...loaded.asked, record: read.name }, flagsOf(loaded, options)),
    },
    ...{ display: scenario.display, margin, runs, drivenBy, isCalibration },
    ownStops,
    chosen: chosenWords(asked.kept),
    leftOut,
    days: byDay,
    good,
    ranks: ranksOf(byDay, runs),
    regression: regressionOf(days),
    beside: beside && besideOf(beside, runs, judging),
    causes: gaps,
    explains: explanationOf(gaps, good.model - good.plant, paceOf(days, record, good.plant)),
    sheet: sheet > 0 ? sheetTest(sheet) : null,
    notes: notesOf(loaded, record, { days: byDay, drivenBy, ownStops }),
  }
}

function besideOf(days: readonly SimulatedDay[], runs: number, judging: Judging): BesideResult {
  const byDay = daysAmongRuns(days, judging.seed)
  return { days: byDay, good: goodOf(byDay, judging), ranks: ranksOf(byDay, runs) }
}

const flagsOf = (
  { asked: { variant, confidence } }: ReadScenario,
  { margin, runs, holdOut, heldOut, unseen, drivenBy, seed, sheet }: ValidateOptions,
) => ({
  ...{ variant, margin, runs, 'hold-out': holdOut, 'held-out': heldOut?.name },
  ...{ unseen, 'driven-by': drivenBy, sheet, seed, confidence },
})

/**
 * The plant's stops that were put in and left out, a day. A length that is the difference of two readings of a clock of grain g is off by a variance of g^2 / 6, one
 * that was rounded by g^2 / 12.
 */
function aDay(own: OwnStops, days: readonly SimulatedDay[], record: CleanRecord): OwnStopsResult {
  const { put, left } = own.counted(days.flatMap(({ shifts }) => shifts))
  const putIn = meanStopped(put, days.length)
  const { roundedTo, lengths } = record
  const open = roundedTo * Math.sqrt(putIn.stops / (lengths === 'clocked' ? 6 : 12))
  return { put: putIn, left: meanStopped(left, days.length), open }
}

/** Good cases of the plant in a second of its shifts without breaks. */
function paceOf(days: readonly SimulatedDay[], { shifts }: CleanRecord, plant: number): number {
  const all = days.flatMap((day) => day.shifts.map((number) => shifts[number]!))
  const open = all.reduce((sum, shift) => sum + lengthOf(shift) - total(shift.breaks), 0) / days.length
  return open > 0 ? plant / open : 0
}
