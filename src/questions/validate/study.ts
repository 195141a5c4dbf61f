/** Is the model the plant? Simulates days of a record that no fit used, and holds its good cases and its stops against those of the plant. */

import { coveringWords } from '../../answers/about.js'
import type { Answer } from '../../answers/made.js'
import { type ReadRecord, refuseUnusable } from '../../record/read-record.js'
import type { CleanRecord } from '../../record/record.js'
import { misuse } from '../../scenario/fault.js'
import { hashOf } from '../../scenario/hash.js'
import type { ReadScenario } from '../../scenario/read.js'
import { withChanges } from '../../scenario/with-changes.js'
import type { Context } from '../../shifts/simulation.js'
import { type ValidateOptions, validateAsked } from './asked.js'
import { Causes, type Stopped } from './causes.js'
import { daysCsv } from './csv.js'
import { plantDays } from './days.js'
import type { ValidateResult } from './document.js'
import { OwnStops } from './own-stops.js'
import { type About, type Done, documentOf } from './result.js'
import { type Drawn, type SheetRow, sheetCsv } from './sheet.js'
import { type SimulatedDay, simulated } from './simulated.js'
import { daysToRun } from './to-run.js'
import { validatedWords } from './words.js'

/** What a validation gives back. */
export interface ValidateAnswer extends Answer<ValidateResult> {
  /** The text of the scenario that was given, with what it was validated by; null where none was given. */
  scenario: string | null
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
  if (scenario.shift.start !== 'empty')
    throw misuse(
      'each day is simulated alone, so shifts of the scenario must start empty (`--set shift.start=empty --set shift.campaign=1`)',
    )
  const about: About = { loaded, read, options, asked }
  const { record } = read
  const chosen = plantDays(record, asked.kept, options.seed ?? 'tapeshift')
  if (options.writeInto !== undefined && chosen.isCalibration)
    throw misuse(
      '--write records a validation, which needs days that no fit used: add --held-out, --hold-out or --unseen',
    )
  const causes = new Causes(record, scenario)
  const own = asked.drivenBy === 'arrivals' ? null : ownStopsOf(record, scenario)
  const { days, leftOut, drawn } = daysToRun(about, chosen, asked.drivenBy === 'stops' ? own : null)
  const sets = asked.drivenBy === 'both' ? [days, daysToRun(about, chosen, own).days] : [days]
  const running = { loaded, record, causes, runs: asked.runs, course: courseOf(about, days) }
  const [first, beside = null] = await simulated(sets, running, context)
  const logged = loggedStops(first!, record, causes)
  const runs = own && asked.drivenBy === 'stops' ? withOwn(first!, logged, causes, own) : first!
  const done: Done = { days: runs, beside, logged, causes, own }
  const document = documentOf(about, { ...chosen, leftOut }, done)
  return {
    document,
    rows: () => new Map([['days.csv', daysCsv(document)], ...sheets(drawn, done)]),
    isMet: document.good.verdict === 'within',
    cannotWork: false,
    scenario: options.writeInto === undefined ? null : withWords(options.writeInto, document),
  }
}

/** Hash of all that a run of a day depends on. */
const courseOf = (
  { loaded, read, asked: { runs, drivenBy } }: About,
  days: readonly { day: string; shifts: readonly number[] }[],
): string =>
  hashOf([
    ...[loaded.shiftsSha256, read.sha256, runs, drivenBy],
    days.map(({ day, shifts }) => [day, ...shifts]),
  ])

function ownStopsOf(record: CleanRecord, scenario: ReadScenario['scenario']): OwnStops {
  const own = new OwnStops(record, scenario)
  if (own.isEmpty)
    throw misuse(
      '--driven-by stops: the record has no stop of a piece of the scenario: explain its reasons under `means`, such as `line.sealer.jams`',
    )
  return own
}

/** Days with the stops that were put in as the log has them: the runs had just these. */
function withOwn(
  days: readonly SimulatedDay[],
  logged: readonly Stopped[][],
  { all }: Causes,
  own: OwnStops,
): SimulatedDay[] {
  return days.map((day, index): SimulatedDay => {
    const stops = (of: readonly Stopped[]) =>
      of.map((each, place) => (own.has(all[place]!.path) ? logged[index]![place]! : each))
    const { picked } = day
    return {
      ...day,
      stops: stops(day.stops),
      picked: picked && { ...picked, stops: stops(picked.stops) },
    }
  })
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
