/** The work of `tapeshift run`: simulate, judge, print, write. */
import path from 'node:path'
import { foretold } from '../check/foretold.js'
import { handCalculation } from '../check/hand.js'
import { unnamedStops } from '../check/unnamed.js'
import { Line, type ShiftResult } from '../line/line.js'
import { Standstill } from '../line/standstill.js'
import { shiftsCsv } from '../report/csv.js'
import type { Scenario } from '../scenario/schema.js'
import { stoppingRule } from '../study/precision.js'
import type { Workers } from '../study/replicate.js'
import { type RunResult, runResult } from '../study/result.js'
import type { WarmUp } from '../study/steady.js'
import { ordinaryShift, recordStretch, type Stretch } from '../study/stretch.js'
import { aboutOf } from './about.js'
import { type Asked, askedOf } from './asked.js'
import { deliver, loadFiles } from './deliver.js'
import { exits, type Io } from './io.js'
import { Journal, ownerOf } from './journal.js'
import { refuseContradictions, type StudyOptions, scenarioWords } from './options.js'
import { refuseToOverwrite } from './result-folder.js'
import { type CommandScenario, loadForCommand } from './scenario.js'
import { simulating } from './simulating.js'
import { quoted } from './text.js'
import { UnsettledError } from './unsettled.js'
import { version } from './version.js'

/** Runs the study of the scenario `name`, with `workers`; returns the exit code. */
export async function run(name: string, options: StudyOptions, io: Io, workers: Workers): Promise<number> {
  refuseContradictions(options)
  const loaded = await loadForCommand(name, options, io)
  const line = new Line(loaded.scenario)
  const asked = askedOf(options, line, loaded.scenario.shift.campaign)
  const folder = path.resolve(io.cwd, options.out ?? path.join('out', `${loaded.stem}-run`))
  if (options.files) refuseToOverwrite(folder, name, loaded, io)
  const note = (text: string) => io.stderr.write(`note: ${text}\n`)
  const journal = options.files ? Journal.open(folder, ownerOf(loaded), options.resume === true, note) : null
  const { scenario } = loaded
  const { seed, confidence, shifts } = scenario.study
  const most = asked.precision?.most ?? shifts
  try {
    loadFiles(options)
    const study = await simulating(
      {
        designs: [{ scenario, key: '' }],
        seed,
        total: most,
        isOpen: asked.precision !== null,
        counts: 'shifts',
        workers,
        isQuiet: options.quiet === true,
        journal,
        io,
      },
      async (simulated) => {
        const isComplete = await simulated.ensure(0, most, enough(asked, confidence, options))
        if (!isComplete) simulated.sayInterrupted()
        return { isComplete, done: simulated.done, shifts: simulated.of[0]!, warmUp: simulated.warmUps[0]! }
      },
    )
    if (!study.isComplete) {
      // where fewer are asked for than before, those that are kept may all lie beyond
      if (study.done === 0 && journal?.isEmpty) journal.remove()
      return exits.interrupted
    }
    const result = runResult({
      scenario,
      line,
      shifts: study.shifts,
      made: made(name, options, loaded, asked, study.shifts.length),
      warmUp: study.warmUp,
      ...asked,
      // the moment that a report shows is simulated once more: not for those who read figures only
      ...(options.files ? { stretch: stretchOf(line, scenario, study) } : {}),
      byHand: foretold(loaded.scenario, handCalculation(loaded.scenario)),
      about: aboutOf(loaded),
      assumed: loaded.assumed,
      notes: notes(loaded),
    })
    const rows = () => new Map([['shifts.csv', shiftsCsv(line.columns, study.shifts)]])
    await deliver(result, rows, { folder, loaded, options, io })
    journal?.remove()
    return result.requirements.every(({ judgement }) => judgement === 'met') ? exits.done : exits.requirement
  } catch (error) {
    // the scenario itself must change: what was simulated of it is of no use
    if (error instanceof Standstill || error instanceof UnsettledError) journal?.remove()
    throw error
  } finally {
    journal?.close()
  }
}

/** Twenty minutes of an ordinary shift as they happened. */
function stretchOf(
  line: Line,
  scenario: Scenario,
  { shifts, warmUp }: { shifts: readonly ShiftResult[]; warmUp: WarmUp | null },
): Stretch {
  line.countFrom = warmUp?.countFrom ?? 0
  const { shift, why } = ordinaryShift(shifts)
  return recordStretch(line, scenario, scenario.study.seed, shift, { length: 1200, why })
}

/** When the first shifts are enough; undefined where their number is given. */
const enough = ({ precision }: Asked, confidence: number, options: StudyOptions) =>
  precision === null
    ? undefined
    : stoppingRule(precision.of, precision.share, { confidence, isPlain: options.plain === true })

function made(
  name: string,
  options: StudyOptions,
  { scenario, sha256 }: CommandScenario,
  { precision }: Asked,
  shifts: number,
): RunResult['made'] {
  const { seed, confidence } = scenario.study
  const parts = scenarioWords('run', name, options)
  if (precision) {
    parts.push(`--precision ${quoted(`${Number((precision.share * 100).toPrecision(12))} %`)}`)
    for (const each of options.of) parts.push(`--of ${quoted(each)}`)
  }
  parts.push(`--shifts ${precision?.most ?? shifts}`, `--seed ${quoted(seed)}`)
  if (options.confidence !== undefined) parts.push(`--confidence ${quoted(options.confidence)}`)
  for (const each of options.require) parts.push(`--require ${quoted(each)}`)
  if (options.plain) parts.push('--plain')
  return {
    version,
    node: process.version,
    seed,
    scenario: { title: scenario.title, sha256 },
    shifts,
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
