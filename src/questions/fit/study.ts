/** What does a plant's record say of the inputs of a scenario? Cleaned rows to values with their evidence; nothing is simulated. */

import { parse } from 'yaml'
import type { Answer } from '../../answers/made.js'
import { repeatOf } from '../../answers/repeat.js'
import { lineByHand } from '../../hand/line.js'
import { workingShare } from '../../hand/stop-counts.js'
import { anySource } from '../../record/arrivals-of-record.js'
import { holdOut } from '../../record/hold-out.js'
import type { Facts } from '../../record/input.js'
import { loggedInputs } from '../../record/inputs.js'
import { timeSpent } from '../../record/minutes.js'
import { type ReadRecord, refuseUnusable } from '../../record/read-record.js'
import type { CleanRecord } from '../../record/record.js'
import { sentences } from '../../report/format.js'
import type { Scenario } from '../../scenario/schema.js'
import { type Change, withChanges } from '../../scenario/with-changes.js'
import { runtime, version } from '../../version.js'
import { type FitOptions, fitAsked } from './asked.js'
import type { FitResult } from './document.js'
import { fittedInputs } from './fitted-inputs.js'
import { fittedYaml } from './fitted-yaml.js'
import { inRunningTime, withoutWalk } from './goes-with.js'
import { knownText, valuesOf } from './known.js'

/** What a fit gives back. */
export interface FitAnswer extends Answer<FitResult> {
  /** The scenario that was given with the values written into it; null where none was given. */
  scenario: string | null
  /** CSV texts that the values draw on, by their name: they stand beside the scenario. */
  observed: ReadonlyMap<string, string>
}

/** Answers the question. Throws `Fault` `asked`, and `scenario` where the values do not fit the scenario that was given. */
export function fitRecord(read: ReadRecord, options: FitOptions = {}): FitAnswer {
  const asked = fitAsked(options)
  refuseUnusable(read)
  const { record, days } = holdOut(read.record, asked.holdOut, asked.seed)
  const into = options.into?.scenario
  const logged = loggedInputs(record, into ? factsOf(into.scenario) : {})
  const { inputs, observed } = fittedInputs(record, logged, {
    ...asked,
    work: into ? workOf(into.scenario, record) : new Map(),
  })
  for (const [name, text] of observed) options.into?.files?.set(name, text)
  const document: FitResult = {
    format: 'tapeshift-result/1',
    command: 'fit',
    made: {
      ...{ version, node: runtime, seed: asked.seed, record: { title: record.title, sha256: read.sha256 } },
      ...{ shifts: record.shifts.length, confidence: asked.confidence },
      repeat: repeatOf(
        'fit',
        { name: read.name },
        { 'hold-out': options.holdOut, confidence: options.confidence, seed: options.seed },
      ),
    },
    display: 'metric',
    record: {
      files: [...read.files],
      zone: record.zone,
      roundedTo: { value: record.roundedTo, unit: 's' },
      seenFrom: { value: record.seenFrom, unit: 's' },
      shifts: record.shifts.length,
      days: daysOf(record),
      heldOut: [...days],
      cases: record.cases?.times.length ?? null,
      time: timeOf(record),
    },
    account: [...record.account],
    inputs: into
      ? inRunningTime(
          withoutWalk(inputs, into.scenario, (name) => into.placeOf(['crew', name]) !== null),
          into.scenario,
        )
      : inputs,
    notes: notesOf(record),
  }
  return {
    document,
    rows: () => new Map([['fitted.yaml', fittedYaml(document)], ...observed]),
    isMet: true,
    cannotWork: false,
    observed,
    scenario: options.into ? intoScenario(options.into, document) : null,
  }
}

/** What a scenario says that a record does not. */
function factsOf({ line, arrivals }: Scenario): Facts {
  const heads = Object.entries(line).flatMap(([name, piece]) =>
    piece.type === 'sealer' ? [[name, Object.values(piece.heads).filter(Boolean).length] as const] : [],
  )
  const [source, ...others] = Object.keys(arrivals)
  return { heads: new Map(heads), ...(source !== undefined && others.length === 0 ? { source } : {}) }
}

/**
 * Time that each piece of the line works, s, by hand: its share for the cases of a shift, times the good cases of the fitted shifts over these. Of the time
 * that a log calls running the clock of its breakdowns goes only then.
 */
export function workOf(scenario: Scenario, { shifts }: CleanRecord): ReadonlyMap<string, number> {
  const counted = shifts.filter(({ isHeldOut }) => !isHeldOut)
  if (counted.some(({ good }) => good === null)) return new Map()
  const cases = counted.reduce((sum, { good }) => sum + (good ?? 0), 0)
  const line = lineByHand(scenario)
  return new Map(
    line.pieces
      .filter(({ perShift }) => perShift > 0)
      .map((piece) => {
        const share = workingShare(line, piece, scenario.line[piece.name]!)
        return [piece.name, (cases * share * line.span) / piece.perShift]
      }),
  )
}

function daysOf({ shifts }: CleanRecord): FitResult['record']['days'] {
  const days = [...new Set(shifts.map(({ day }) => day))].sort()
  return { first: days[0] ?? '', last: days.at(-1) ?? '', count: days.length }
}

const notesOf = ({ zone, roundedTo, lengths, seenFrom }: CleanRecord): string[] =>
  sentences(
    'A distribution is fitted as if events were independent and the whole record were alike. The tests check this, but with few events they can show little.',
    'Good cases are used as the number of cases at each piece; cases lost on the way are not counted.',
    'The running time of a log is the shift without breaks and without all logged stops of any piece.',
    zone === null &&
      'No time zone is given: if the clocks changed during the record, times of that day may be an hour off.',
    roundedTo > 0 &&
      lengths === 'clocked' &&
      'Begin and end were read from a clock with coarse steps, such as whole minutes. A length is known to within one step either way, and the fit allows for this.',
    seenFrom > 0 &&
      'The number of stops too short for the log is an extrapolation of the distribution: time a few by hand.',
  )

/** The text of the scenario with the values in it. Throws `ScenarioError` where they do not fit into it, with every finding. */
function intoScenario(
  { scenario, text }: NonNullable<FitOptions['into']>,
  { inputs, made }: FitResult,
): string {
  const changes = inputs
    .filter(({ path }) => !path.includes(anySource))
    .flatMap((input) =>
      valuesOf(input).map(([path, text]): Change => {
        const known = path === input.path ? knownText(input) : `goes with ${input.path}`
        return { path, text, comment: `from the record: ${known}` }
      }),
    )
  const source = `record \`${made.record.title}\``
  scenario.vary(
    null,
    changes.map(({ path, text: value }) => ({ path, value: parse(value) as unknown, source })),
  )
  return withChanges(text, changes)
}

const timeWords: Readonly<Record<string, string>> = {
  starved: 'without cases',
  blocked: 'blocked',
  other: 'other stops',
}

/** What the time of all shifts went to, those kept back too. */
function timeOf(record: CleanRecord): FitResult['record']['time'] {
  const { run, breaks, stopped, lost } = timeSpent(record)
  const row = (what: string, value: number, stops = 0) => ({ what, time: { value, unit: 's' }, stops })
  return [
    row('running, or stops not in the log', run),
    row('breaks', breaks),
    ...[...stopped].map(([means, seconds]) => {
      const count = record.stops.filter((stop) => stop.means === means).length
      const what = means === null ? 'reasons that the record does not explain' : (timeWords[means] ?? means)
      return row(what, seconds, count)
    }),
    row('stopped, but not counted as a stop', lost),
  ].filter(({ time }) => time.value > 0)
}
