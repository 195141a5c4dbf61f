/** How much does this line put out, and does it hold its target? Simulates its shifts and makes the document. */
import { aboutOf, checkedDesigns, warnedDesign } from '../../answers/about.js'
import { inputsCsv, shiftsCsv } from '../../answers/csv.js'
import { drawsOf, simulatedDraws } from '../../answers/draws.js'
import { estimationOf } from '../../answers/figures.js'
import { inputsTold } from '../../answers/inputs-told.js'
import { type Answer, type Made, madeOf } from '../../answers/made.js'
import { stoppingRule } from '../../answers/precision.js'
import { warningsOf } from '../../answers/warning.js'
import { cannotWork } from '../../answers/warnings.js'
import { foretold } from '../../hand/foretold.js'
import { unnamedStops } from '../../hand/unnamed.js'
import { Line, type ShiftResult } from '../../line/line.js'
import { sentences } from '../../report/format.js'
import type { ReadScenario } from '../../scenario/read.js'
import { type Context, type Simulation, simulating } from '../../shifts/simulation.js'
import { ordinaryShift, type Stretch } from '../../shifts/stretch.js'
import { type RunAsked, type RunOptions, runAsked } from './asked.js'
import { type RunResult, type RunStudy, runResult } from './document.js'

/** Answers the question. Throws `Fault`. */
export async function run(
  loaded: ReadScenario,
  options: RunOptions = {},
  context: Context = {},
): Promise<Answer<RunResult>> {
  const { scenario } = loaded
  const line = new Line(scenario)
  const asked = runAsked(options, loaded, line)
  const { seed, confidence, shifts: given } = scenario.study
  const most = asked.precision?.most ?? given
  const drawn = drawsOf(loaded, asked.draws)
  const ofDraws = drawn.length * (asked.draws?.shifts ?? 0)
  const plan = {
    designs: [{ scenario, key: '' }, ...drawn],
    ...{ seed, total: most + ofDraws, isOpen: asked.precision !== null },
    counts: 'shifts' as const,
    isLean: options.held === false,
    course: loaded.shiftsSha256,
  }
  const study = await simulating(plan, context, async (simulation): Promise<RunStudy> => {
    // where counting begins is known when the first shifts come
    const how = () =>
      estimationOf(scenario, { confidence, isPlain: options.plain === true }, simulation.countFrom(0))
    const { precision } = asked
    const isEnough = precision === null ? undefined : stoppingRule(precision.of, precision.share, how)
    const shifts = await simulation.first(0, most, isEnough)
    // the moment that a report shows is simulated once more: not for those who read figures only
    const [stretch, told] = await Promise.all([
      options.moment === false ? null : stretchOf(loaded, shifts, simulation),
      // while a thread does that
      (async () => toldOf(loaded))(),
    ])
    const draws = await simulatedDraws(drawn, asked.draws, simulation, 1)
    return { line, shifts, warmUp: simulation.warmUps[0] ?? null, stretch, draws, told }
  })
  const document = runResult(loaded, asked, study, made(loaded, options, asked, study.shifts.length))
  return {
    document,
    rows: () => rowsOf(loaded, study),
    isMet: document.requirements.every(({ judgement }) => judgement === 'met'),
    cannotWork: cannotWork(document),
  }
}

/** The shifts, those of the draws with them, and what was drawn. */
function rowsOf({ evidence }: ReadScenario, { line, shifts, draws }: RunStudy): Map<string, string> {
  const ofDraws = draws?.of.map((draw) => draw.shifts)
  const rows = new Map([['shifts.csv', shiftsCsv([{ columns: line.columns, shifts, draws: ofDraws }])]])
  const paths = evidence.map(({ path }) => path)
  return draws ? rows.set('draws.csv', inputsCsv(paths, draws.of)) : rows
}

/** What is told of a scenario whatever was simulated of it. */
function toldOf(loaded: ReadScenario): RunStudy['told'] {
  const checked = checkedDesigns(loaded)
  return {
    byHand: foretold(loaded.scenario, checked[0]!.hand),
    about: aboutOf(loaded, [], checked),
    warnings: warningsOf(checked.map(warnedDesign)),
    assumed: loaded.assumed,
    ...inputsTold(loaded),
    notes: notes(loaded),
  }
}

/** Twenty minutes of an ordinary shift as they happened. */
function stretchOf(
  { scenario }: ReadScenario,
  shifts: readonly ShiftResult[],
  simulation: Simulation,
): Promise<Stretch> {
  const { shift, why } = ordinaryShift(shifts)
  const { seed } = scenario.study
  const part = { seed, design: 0, scenario, from: shift, to: shift, countFrom: simulation.countFrom(0) }
  return simulation.executor.work({ what: 'stretch', ...part, length: 1200, why })
}

function made(
  loaded: ReadScenario,
  { of = [], require = [], plain = false, draws, inputs }: RunOptions,
  { precision }: RunAsked,
  shifts: number,
): Made {
  const asked = precision
    ? { precision: `${Number((precision.share * 100).toPrecision(12))} %`, of, shifts: precision.most }
    : { shifts }
  const { variant } = loaded.asked
  return madeOf(
    loaded,
    { command: 'run', shifts, plain },
    { variant, ...asked },
    { draws, inputs, require, plain },
  )
}

/** Stops that the scenario does not name do not happen, and orders end: said beside the figures. */
function notes({ scenario }: ReadScenario): string[] {
  const missing = unnamedStops(scenario).map(({ stop, pieces }) => `${stop} ${pieces.join(', ')}`)
  if (scenario.shift.breaks.length === 0) missing.push('breaks')
  const ordered = Object.entries(scenario.arrivals).flatMap(([name, { orders }]) => (orders ? [name] : []))
  return sentences(
    missing.length > 0 && `The scenario names no ${missing.join('; no ')}: none happen in the simulation.`,
    ...ordered.map((name) => `After the last order of ${name} no more cases arrive from there in a shift.`),
  )
}
