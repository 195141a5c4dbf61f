/** What does a plant's record say of the inputs of a scenario? Cleaned rows to values with their evidence; nothing is simulated. */
import { type Answer, repeatOf } from '../../answers/answer.js'
import { holdOut } from '../../record/hold-out.js'
import type { Facts } from '../../record/input.js'
import { loggedInputs } from '../../record/inputs.js'
import type { ReadRecord } from '../../record/read.js'
import type { CleanRecord } from '../../record/record.js'
import { runtime, version } from '../../version.js'
import { type FitOptions, fitAsked } from './asked.js'
import type { FitResult } from './document.js'
import { fittedInputs } from './fitted-inputs.js'
import { fittedYaml } from './fitted-yaml.js'
import { type Change, withChanges } from './into.js'
import { knownText } from './known.js'
import { timeOfShifts } from './time-of-shifts.js'
import { withoutWalk } from './walk.js'

/** What a fit gives back. */
export interface FitAnswer extends Answer<FitResult> {
  /** The scenario that was given with the values written into it; null where none was given. */
  scenario: string | null
  /** CSV texts that the values draw on, by their name: they stand beside the scenario. */
  observed: ReadonlyMap<string, string>
}

/** Answers the question. Throws `Fault` `asked`, and `scenario` where the values do not fit the scenario that was given. */
export function fit(read: ReadRecord, options: FitOptions = {}): FitAnswer {
  const asked = fitAsked(options)
  const { record, days } = keptBack(read.record, asked.holdOut, asked.seed)
  const into = options.into?.scenario
  const logged = loggedInputs(record, into ? factsOf(into.scenario) : {})
  const { inputs, observed } = fittedInputs(record, logged, asked)
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
      heldOut: days,
      cases: record.cases?.times.length ?? null,
      time: timeOfShifts(record),
    },
    account: [...record.account],
    inputs: into ? withoutWalk(inputs, into.scenario) : inputs,
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
