/** The work of `tapeshift sweep`: make the designs, simulate each on the same random numbers, print, write. */
import { createHash } from 'node:crypto'
import path from 'node:path'
import { exposureOf, measureName, studyMeasures } from '../answers/figures.js'
import { Line } from '../line/line.js'
import { Standstill } from '../line/standstill.js'
import { sweepDesignsCsv, sweepDifferencesCsv } from '../questions/sweep/csv.js'
import type { SweepMeasure, SweepResult } from '../questions/sweep/document.js'
import { type Sample, sampleOf } from '../questions/sweep/sample.js'
import { printable } from '../scenario/problems.js'
import type { Scenario } from '../scenario/schema.js'
import type { Workers } from '../shifts/replicate.js'
import { deliver, loadFiles } from './deliver.js'
import { exits, type Io, UsageError } from './io.js'
import { Journal, ownerOf } from './journal.js'
import { refuseContradictions } from './options.js'
import { refuseToOverwrite } from './result-folder.js'
import { loadForCommand } from './scenario.js'
import { type Shifts, simulating } from './simulating.js'
import { type SweepOptions, usualShiftsEach } from './sweep.js'
import { kindOf, sweepMeasures, variedOf } from './sweep-asked.js'
import { sweepResult } from './sweep-document.js'
import { triedInputs } from './sweep-inputs.js'
import { gridPoints, type Planned, planPoints } from './sweep-points.js'
import { UnsettledError } from './unsettled.js'
import { exitCode } from './warned.js'

/** What came of a design: the numbers of its measures over shifts, or why there are none. */
export type Outcome = { samples: Record<string, Sample> } | { failed: string }

/** Sweeps the scenario `name`, with `workers`; returns the exit code. */
export async function sweep(name: string, options: SweepOptions, io: Io, workers: Workers): Promise<number> {
  refuseContradictions(options)
  const kind = kindOf(options)
  const varied = variedOf(options, kind)
  const loaded = await loadForCommand(name, options, io)
  const { scenario } = loaded
  const folder = path.resolve(io.cwd, options.out ?? path.join('out', `${loaded.stem}-sweep`))
  if (options.files) refuseToOverwrite(folder, name, loaded, io)
  const measures = sweepMeasures(options, scenario, new Line(scenario))
  const base: Planned = { set: {}, at: [], scenario, key: loaded.shiftsSha256 }
  const { inputs, leftOut } = kind === 'each' ? triedInputs(varied, loaded) : { inputs: [], leftOut: [] }
  const { points, notes } =
    kind === 'each'
      ? { points: inputs.flatMap(({ low, high }) => [low, high].filter((end) => end !== null)), notes: [] }
      : kind === 'plan'
        ? planPoints(varied, options.plan!, scenario.study.seed, loaded)
        : gridPoints(varied, loaded)
  const designs = [...new Map([base, ...points].map((design) => [design.key, design])).values()]
  const shifts = options.shifts ?? usualShiftsEach
  const note = (text: string) => io.stderr.write(`note: ${text}\n`)
  const owner = ownerOf(loaded)
  // other values may be added to a sweep that goes on: what came of a design depends on these alone
  const asked = createHash('sha256')
    .update(JSON.stringify([owner.scenario, shifts, measures.map((each) => each.name)]))
    .digest('hex')
  const journal = options.files
    ? Journal.open(folder, { ...owner, scenario: asked }, options.resume === true, note)
    : null
  try {
    loadFiles(options)
    const outcomes = await simulating(
      {
        designs,
        seed: scenario.study.seed,
        total: designs.length,
        isOpen: false,
        counts: 'designs',
        workers,
        isQuiet: options.quiet === true,
        journal,
        io,
      },
      (simulated) => allOf(designs, measures, shifts, simulated, journal),
    )
    if (outcomes === null) return exits.interrupted
    if (kind !== 'each') refuseTooFew(points, outcomes)
    const result = sweepResult({
      ...{ kind, varied, loaded, measures, base, points, inputs, leftOut, notes, outcomes, shifts },
      ...{ options, name },
    })
    const rows = () =>
      new Map([
        ['designs.csv', sweepDesignsCsv(result)],
        ['differences.csv', sweepDifferencesCsv(result)],
      ])
    await deliver(result, rows, { folder, loaded, options, io })
    journal?.remove()
    return isHopeless(result) ? exitCode(result, exits.done, options, io) : exits.done
  } catch (error) {
    // the scenario itself must change: what was simulated of it is of no use
    if ([Standstill, UnsettledError, UsageError].some((kind) => error instanceof kind)) journal?.remove()
    throw error
  } finally {
    journal?.close()
  }
}

/** The scenario as it stands, with which points are compared, or every point cannot work as described. */
const isHopeless = ({ about, points }: SweepResult): boolean =>
  about!.findings.some(({ severity }) => severity === 'error') || points.every(({ errors }) => errors)

/** A curve, a grid or a plan of a single point says nothing. Throws `UsageError` with what happened to the others. */
function refuseTooFew(points: readonly Planned[], outcomes: ReadonlyMap<string, Outcome>): void {
  const failures = points.flatMap(({ key }) => {
    const outcome = outcomes.get(key)!
    return 'failed' in outcome ? [outcome.failed] : []
  })
  if (points.length - failures.length < 2)
    throw new UsageError(
      `--vary: fewer than two of the designs can be simulated to the end: ${printable(failures[0] ?? '')}`,
    )
}

/**
 * Simulates every design, the scenario itself first; what came of each by its key, or null where it was interrupted. A design that locks up
 * or never settles is told with its fault; of the scenario itself that is thrown.
 */
async function allOf(
  designs: readonly Planned[],
  measures: readonly SweepMeasure[],
  count: number,
  shifts: Shifts,
  journal: Journal | null,
): Promise<Map<string, Outcome> | null> {
  const outcomes = new Map<string, Outcome>()
  for (const [index, { scenario, key }] of designs.entries()) {
    let outcome = journal?.outcomeOf(key) as Outcome | undefined
    const isKnown = outcome !== undefined
    if (outcome === undefined) {
      try {
        if (!(await shifts.ensure(index, count))) {
          shifts.sayInterrupted()
          return null
        }
        outcome = { samples: samplesOf(scenario, measures, shifts, index) }
      } catch (error) {
        if (index === 0 || !(error instanceof Standstill || error instanceof UnsettledError)) throw error
        outcome = {
          failed: error instanceof Standstill ? `line.${error.piece}: ${error.rule}` : firstLine(error),
        }
      }
      journal?.keepOutcome(key, outcome)
      shifts.forget(index)
    }
    outcomes.set(key, read(outcome))
    shifts.tell(!isKnown)
  }
  return outcomes
}

const firstLine = ({ message }: Error) => message.split('\n')[0]!

/** The numbers of the measures that this design has. */
function samplesOf(
  scenario: Scenario,
  measures: readonly SweepMeasure[],
  shifts: Shifts,
  index: number,
): Record<string, Sample> {
  const exposure = exposureOf(scenario, shifts.warmUps[index]?.countFrom ?? 0)
  const known = studyMeasures(new Line(scenario).columns, scenario.shift.campaign)
  return Object.fromEntries(
    measures.flatMap(({ name }) => {
      const measure = known.find((each) => measureName(each) === name)
      const sample = measure ? sampleOf(measure, shifts.of[index]!, exposure) : null
      return sample === null ? [] : [[name, sample]]
    }),
  )
}

/** An outcome as it comes from the journal, where a number that is not known is null. */
function read(outcome: Outcome): Outcome {
  if ('failed' in outcome) return outcome
  // one that is not finite says nothing either, and comes back from a file as null
  const numbers = (values: readonly (number | null)[]) =>
    values.map((value) => (value !== null && Number.isFinite(value) ? value : Number.NaN))
  return {
    samples: Object.fromEntries(
      Object.entries(outcome.samples).map(([name, { values, overs, ...rest }]) => [
        name,
        { ...rest, values: numbers(values), overs: overs === null ? null : numbers(overs) },
      ]),
    ),
  }
}
