/** The work of `tapeshift compare`: simulate the designs, hold them against one another, print, write. */
import path from 'node:path'
import { designsCsv } from '../answers/csv.js'
import { measureName } from '../answers/figures.js'
import { warningsOf } from '../answers/warning.js'
import { currencyOf, unitName } from '../catalogue/unit-name.js'
import { tapeLayout } from '../hand/tape-layout.js'
import { Line } from '../line/line.js'
import { Standstill } from '../line/standstill.js'
import { type Best, findBest, type Goal, NoFigureError, type Outcome } from '../questions/compare/best.js'
import { differencesCsv } from '../questions/compare/csv.js'
import {
  type BestResult,
  baseName,
  type CompareResult,
  compareResult,
} from '../questions/compare/document.js'
import { againstFirst, allPairs } from '../questions/compare/study.js'
import { nearest } from '../scenario/nearest.js'
import { shown } from '../scenario/problems.js'
import type { Scenario } from '../scenario/schema.js'
import type { Workers } from '../shifts/replicate.js'
import { firstStage } from '../statistics/evidence.js'
import { aboutOf } from './about.js'
import type { CompareOptions } from './compare.js'
import { type ComparisonAsked, comparisonAsked } from './compare-asked.js'
import { deliver, loadFiles } from './deliver.js'
import { exits, type Io, UsageError } from './io.js'
import { Journal, ownerOf } from './journal.js'
import { overrideWords, refuseContradictions, usualMost } from './options.js'
import { refuseToOverwrite } from './result-folder.js'
import { type CommandScenario, loadForCommand } from './scenario.js'
import { type Shifts, simulating } from './simulating.js'
import { quoted } from './text.js'
import { UnsettledError } from './unsettled.js'
import { version } from './version.js'
import { checkedDesigns, exitCode, warnedDesign } from './warned.js'

/** A design before it is simulated. */
export interface Design {
  name: string
  note: string
  set: Record<string, unknown>
  scenario: Scenario
  line: Line
  /** Names its shifts in the journal. */
  key: string
}

/** Compares the designs of the scenario `name`, with `workers`; returns the exit code. */
export async function compare(
  name: string,
  options: CompareOptions,
  io: Io,
  workers: Workers,
): Promise<number> {
  refuseContradictions(options)
  const loaded = await loadForCommand(name, options, io)
  const designs = designsOf(loaded, options)
  const asked = comparisonAsked(options, designs)
  const folder = path.resolve(io.cwd, options.out ?? path.join('out', `${loaded.stem}-compare`))
  if (options.files) refuseToOverwrite(folder, name, loaded, io)
  const note = (text: string) => io.stderr.write(`note: ${text}\n`)
  const journal = options.files ? Journal.open(folder, ownerOf(loaded), options.resume === true, note) : null
  const { seed, confidence } = loaded.scenario.study
  const shifts = asked.goal === null ? loaded.scenario.study.shifts : (options.shifts ?? usualMost)
  try {
    loadFiles(options)
    const simulated = await simulating(
      {
        designs,
        seed,
        total: shifts * designs.length,
        isOpen: asked.goal !== null,
        counts: 'shifts',
        workers,
        isQuiet: options.quiet === true,
        journal,
        io,
      },
      async (each) => {
        const best = asked.goal && (await bestOf({ ...asked.goal, confidence, most: shifts }, designs, each))
        const isWhole = asked.goal ? best !== null : await allOf(each, designs.length, shifts)
        if (!isWhole) each.sayInterrupted()
        return isWhole ? { of: each.of, warmUps: each.warmUps, best } : null
      },
    )
    if (simulated === null) return exits.interrupted
    const checked = checkedDesigns(loaded, designs.slice(1))
    const spent = simulated.of.reduce((sum, { length }) => sum + length, 0)
    const result = compareResult({
      designs: designs.map((design, index) => ({
        ...design,
        shifts: simulated.of[index]!,
        countFrom: simulated.warmUps[index]?.countFrom ?? 0,
        tapeLayout: tapeLayout(design.scenario),
      })),
      compared: asked.measures,
      pairs: options.pairs ? allPairs(designs.length) : againstFirst(designs.length),
      requirements: asked.requirements,
      best:
        simulated.best &&
        asked.goal &&
        bestResult(asked.goal, simulated.best, designs, { confidence, most: shifts, spent }),
      matters: asked.matters,
      made: {
        version,
        node: process.version,
        seed,
        scenario: { title: loaded.scenario.title, sha256: loaded.sha256 },
        shifts: asked.goal === null ? shifts : Math.max(...simulated.of.map(({ length }) => length)),
        confidence,
        plain: options.plain === true,
        // the usual most is not named: as an option it would be another scenario
        repeat: repeatOf(name, options, loaded.scenario, asked.goal ? options.shifts : shifts),
      },
      about: aboutOf(loaded, designs.slice(1), checked),
      warnings: warningsOf(checked.map((each) => ({ ...warnedDesign(each), name: each.name ?? baseName }))),
      assumed: loaded.assumed,
      notes: [],
    })
    const designRows = designs.map(({ name, line }, index) => ({
      name,
      columns: line.columns,
      shifts: simulated.of[index]!,
    }))
    const rows = () =>
      new Map([
        ['shifts.csv', designsCsv(designRows)],
        ['differences.csv', differencesCsv(result)],
      ])
    await deliver(result, rows, { folder, loaded, options, io })
    journal?.remove()
    return exitCode(result, isMet(result) ? exits.done : exits.requirement, options, io)
  } catch (error) {
    // the scenario itself must change: what was simulated of it is of no use
    if (error instanceof Standstill || error instanceof UnsettledError) journal?.remove()
    throw error
  } finally {
    journal?.close()
  }
}

/** All shifts of all designs, one design after the other; false where it was interrupted. */
async function allOf(shifts: Shifts, designs: number, count: number): Promise<boolean> {
  for (let design = 0; design < designs; design++) if (!(await shifts.ensure(design, count))) return false
  return true
}

/**
 * Simulates until the best is known; of every design at least what a first look takes. Null where it was interrupted.
 * Throws `UsageError` where a shift says nothing of what is asked for.
 */
async function bestOf(goal: Goal, designs: readonly Design[], shifts: Shifts): Promise<Best | null> {
  if (!(await allOf(shifts, designs.length, Math.min(firstStage, goal.most)))) return null
  try {
    return await findBest(goal, async (design, count) => {
      const isThere = shifts.of[design]!.length >= count || (await shifts.ensure(design, count))
      return isThere ? shifts.of[design]! : null
    })
  } catch (error) {
    if (!(error instanceof NoFigureError)) throw error
    const { measure, shift, design } = error
    const { name } = designs[design]!
    const says =
      measure.kind === 'ratio'
        ? `none of the first ${shift} shifts of ${name} says anything`
        : `shift ${shift} of ${name} says nothing`
    throw new UsageError(
      `--best: ${says} of ${measureName(measure)}, as where no good case comes out; choose by another measure, such as throughput`,
    )
  }
}

function bestResult(
  { measure, isLargerBetter, within, among }: NonNullable<ComparisonAsked['goal']>,
  { pick, designs: outcomes }: Best,
  designs: readonly Design[],
  how: Pick<BestResult, 'confidence' | 'most' | 'spent'>,
): BestResult {
  return {
    measure: measureName(measure),
    label: measure.label,
    unit: unitName(measure.unit, currencyOf(designs[0]!.scenario)),
    isLargerBetter,
    within,
    among,
    pick: pick === null ? null : designs[pick]!.name,
    designs: Object.fromEntries(designs.map(({ name }, index) => [name, named(outcomes[index]!, designs)])),
    ...how,
  }
}

/** An outcome with the name of the design that it is held against. */
function named({ why, ...outcome }: Outcome, designs: readonly Design[]): Outcome<string> {
  if (why === undefined) return outcome
  return { ...outcome, why: why.reason === 'alike' ? { ...why, other: designs[why.other]!.name } : why }
}

/** The base and the variants that were asked for, in the order of the file, those of the command line last. */
function designsOf(loaded: CommandScenario, { variants, whatIf }: CompareOptions): Design[] {
  const known = loaded.variants.map(({ name }) => name)
  const own = known.slice(0, known.length - whatIf.length)
  const asked = variants?.split(',').map((each) => each.trim())
  const unknown = asked?.find((each) => !own.includes(each))
  if (unknown !== undefined)
    throw new UsageError(`--variants: there is no variant \`${shown(unknown)}\`; ${nearest(unknown, own)}`)
  const chosen = loaded.variants.filter(
    ({ name }, index) => index >= own.length || asked === undefined || asked.includes(name),
  )
  if (chosen.length === 0)
    throw new UsageError(
      'nothing to compare with: the scenario has no variants; name some under `variants:`, or give --what-if "PATH=VALUE"',
    )
  if (chosen.some(({ name }) => name === baseName))
    throw new UsageError(`a variant may not be called \`${baseName}\`: that is the scenario itself`)
  const base = { ...loaded, name: baseName, note: 'the scenario as it stands', set: {} }
  return [base, ...chosen].map(({ name, note, set, scenario, shiftsSha256 }) => ({
    name,
    note,
    set,
    scenario,
    line: new Line(scenario),
    key: shiftsSha256,
  }))
}

/** Where something is required, one design at least must do all of it, the best where that was sought. */
const isMet = ({ variants, best }: CompareResult): boolean =>
  (best === null || best.pick !== null) &&
  Object.entries(variants).some(
    ([name, { requirements }]) =>
      (best === null || best.pick === name) && requirements.every(({ judgement }) => judgement === 'met'),
  )

/** The command line that makes the same document again. */
function repeatOf(name: string, options: CompareOptions, { study }: Scenario, shifts?: number): string {
  const named = (flag: string, values: readonly string[]) => values.map((each) => `--${flag} ${quoted(each)}`)
  return [
    ...overrideWords('compare', name, options),
    ...(options.variants === undefined ? [] : named('variants', [options.variants])),
    ...named('what-if', options.whatIf),
    ...named('measure', options.measure),
    ...named('matters', options.matters),
    ...(options.pairs ? ['--pairs'] : []),
    ...named('best', options.best === undefined ? [] : [options.best]),
    ...named('within', options.within === undefined ? [] : [options.within]),
    ...named('among', options.among),
    ...(shifts === undefined ? [] : [`--shifts ${shifts}`]),
    ...named('seed', [study.seed]),
    ...(options.confidence === undefined ? [] : named('confidence', [options.confidence])),
    ...named('require', options.require),
    ...(options.plain ? ['--plain'] : []),
  ].join(' ')
}
