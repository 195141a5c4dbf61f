/** The document of `tapeshift run`, from its shifts. */

import { shiftsCsv } from '../answers/csv.js'
import { warningsOf } from '../answers/warning.js'
import { foretold } from '../hand/foretold.js'
import { handCalculation } from '../hand/hand.js'
import { unnamedStops } from '../hand/unnamed.js'
import type { Line, ShiftResult } from '../line/line.js'
import { type RunResult, runResult } from '../questions/run/document.js'
import type { Workers } from '../shifts/replicate.js'
import type { WarmUp } from '../shifts/steady.js'
import { ordinaryShift, type Stretch } from '../shifts/stretch.js'
import { aboutOf } from './about.js'
import type { Asked } from './asked.js'
import { deliver } from './deliver.js'
import type { Io } from './io.js'
import { type StudyOptions, scenarioWords } from './options.js'
import type { CommandScenario } from './scenario.js'
import { quoted } from './text.js'
import { version } from './version.js'
import { checkedDesigns, warnedDesign } from './warned.js'

/** What the document is made of. */
export interface RunStudy {
  /** The scenario as it was asked for. */
  name: string
  options: StudyOptions
  loaded: CommandScenario
  line: Line
  asked: Asked
  shifts: readonly ShiftResult[]
  warmUp: WarmUp | null
}

/** Makes the document of a study that is whole, the last that `workers` do; prints it and writes it into `folder`. Throws `FileError`. */
export async function deliverRun(
  study: RunStudy,
  workers: Workers,
  folder: string,
  io: Io,
): Promise<RunResult> {
  const { options, loaded, line, shifts } = study
  // the moment that a report shows is simulated once more: not for those who read figures only
  const stretch = options.files ? await stretchOf(study, workers) : null
  // threads take a while to end: let them while the document is made
  void workers.close()
  const result = runDocument(study, stretch)
  const rows = () => new Map([['shifts.csv', shiftsCsv(line.columns, shifts)]])
  await deliver(result, rows, { folder, loaded, options, io })
  return result
}

function runDocument(study: RunStudy, stretch: Stretch | null): RunResult {
  const { loaded, line, asked, shifts, warmUp } = study
  const { scenario } = loaded
  const checked = checkedDesigns(loaded)
  return runResult({
    scenario,
    line,
    shifts,
    made: made(study),
    warmUp,
    ...asked,
    ...(stretch ? { stretch } : {}),
    byHand: foretold(scenario, handCalculation(scenario)),
    about: aboutOf(loaded, [], checked),
    warnings: warningsOf(checked.map(warnedDesign)),
    assumed: loaded.assumed,
    notes: notes(loaded),
  })
}

/** Twenty minutes of an ordinary shift as they happened. */
function stretchOf({ loaded: { scenario }, shifts, warmUp }: RunStudy, workers: Workers): Promise<Stretch> {
  const { shift, why } = ordinaryShift(shifts)
  const { seed } = scenario.study
  const countFrom = warmUp?.countFrom ?? 0
  return workers.work({
    what: 'stretch',
    seed,
    design: 0,
    scenario,
    from: shift,
    to: shift,
    countFrom,
    length: 1200,
    why,
  })
}

function made({ name, options, loaded, asked: { precision }, shifts }: RunStudy): RunResult['made'] {
  const { scenario, sha256 } = loaded
  const { seed, confidence } = scenario.study
  const parts = scenarioWords('run', name, options)
  if (precision) {
    parts.push(`--precision ${quoted(`${Number((precision.share * 100).toPrecision(12))} %`)}`)
    for (const each of options.of) parts.push(`--of ${quoted(each)}`)
  }
  parts.push(`--shifts ${precision?.most ?? shifts.length}`, `--seed ${quoted(seed)}`)
  if (options.confidence !== undefined) parts.push(`--confidence ${quoted(options.confidence)}`)
  for (const each of options.require) parts.push(`--require ${quoted(each)}`)
  if (options.plain) parts.push('--plain')
  return {
    version,
    node: process.version,
    seed,
    scenario: { title: scenario.title, sha256 },
    shifts: shifts.length,
    confidence,
    plain: options.plain === true,
    repeat: parts.join(' '),
  }
}

/** Stops that the scenario does not name do not happen, and orders end: said beside the figures. */
function notes({ scenario }: CommandScenario): string[] {
  const missing = unnamedStops(scenario).map(({ stop, pieces }) => `${stop} ${pieces.join(', ')}`)
  if (scenario.shift.breaks.length === 0) missing.push('breaks')
  const ordered = Object.entries(scenario.arrivals).flatMap(([name, { orders }]) => (orders ? [name] : []))
  return [
    ...(missing.length > 0 ? [`The scenario names no ${missing.join('; no ')}: none happen here.`] : []),
    ...ordered.map((name) => `After the last order of ${name} nothing more comes from there in a shift.`),
  ]
}
