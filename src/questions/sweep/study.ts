/** How much is enough, and what matters? Makes the designs, simulates each on the same random numbers and makes the document. */

import type { Answer } from '../../answers/made.js'
import { cannotWork } from '../../answers/warnings.js'
import { Line } from '../../line/line.js'
import { misuse } from '../../scenario/fault.js'
import { hashOf } from '../../scenario/hash.js'
import { usualShifts } from '../../scenario/limits.js'
import { printable } from '../../scenario/printable.js'
import type { ReadScenario } from '../../scenario/read.js'
import { type Context, simulating } from '../../shifts/simulation.js'
import { sweepResult } from './answer.js'
import { kindOf, type SweepOptions, sweepMeasures, type Varied, variedOf } from './asked.js'
import { sweepDesignsCsv, sweepDifferencesCsv } from './csv.js'
import type { SweepKind, SweepResult } from './document.js'
import { SweepDraws, sweepDraws } from './drawn.js'
import { type Outcome, outcomesOf } from './outcomes.js'
import { gridPoints, type Planned, planPoints } from './points.js'
import { triedInputs } from './tried.js'

/** Answers the question. Throws `Fault`. */
export async function sweep(
  loaded: ReadScenario,
  options: SweepOptions = {},
  context: Context = {},
): Promise<Answer<SweepResult>> {
  const kind = kindOf(options)
  const varied = variedOf(options, kind)
  const { scenario, shiftsSha256: key } = loaded
  const measures = sweepMeasures(options, scenario, new Line(scenario))
  const base: Planned = { set: {}, at: [], scenario, key }
  const planned = pointsOf(kind, varied, options, loaded)
  const { points } = planned
  const designs = [...new Map([base, ...points].map((design) => [design.key, design])).values()]
  const shifts = loaded.asked.shifts ?? usualShifts.each
  const asked = sweepDraws(options, { kind, varied, designs: designs.length }, loaded, shifts)
  const draws = new SweepDraws(asked, kind, varied, loaded)
  const all = [...designs, ...draws.planned(designs)]
  const plan = {
    ...{ designs: all, seed: scenario.study.seed, total: all.length, isOpen: false },
    counts: 'designs' as const,
    // other values may be added to a sweep that goes on: what came of a design depends on these alone
    course: hashOf([key, shifts, measures.map(({ name }) => name)]),
  }
  const outcomes = await simulating(plan, context, (simulation) =>
    outcomesOf(all, measures, shifts, simulation),
  )
  if (kind !== 'each') refuseTooFew(points, outcomes)
  const document = sweepResult({
    ...{ kind, varied, loaded, measures, base, outcomes, shifts, draws, options },
    ...planned,
  })
  return {
    document,
    rows: () =>
      new Map([
        ['designs.csv', sweepDesignsCsv(document)],
        ['differences.csv', sweepDifferencesCsv(document)],
      ]),
    isMet: true,
    cannotWork: isHopeless(document) && cannotWork(document),
  }
}

/** What is simulated beside the scenario as it stands, and what is not. */
function pointsOf(kind: SweepKind, varied: readonly Varied[], { plan }: SweepOptions, loaded: ReadScenario) {
  if (kind === 'each') {
    const { inputs, leftOut } = triedInputs(varied, loaded)
    const points = inputs.flatMap(({ low, high }) => [low, high].filter((end) => end !== null))
    return { inputs, leftOut, points, notes: [] }
  }
  const { seed } = loaded.scenario.study
  const found = kind === 'plan' ? planPoints(varied, plan!, seed, loaded) : gridPoints(varied, loaded)
  return { inputs: [], leftOut: [], ...found }
}

/** The scenario as it stands, with which points are compared, or every point cannot work as described. */
const isHopeless = ({ about, points }: SweepResult): boolean =>
  about!.findings.some(({ severity }) => severity === 'error') || points.every(({ errors }) => errors)

/** A curve, a grid or a plan of a single point says nothing. Throws `Fault` `asked` with what happened to the others. */
function refuseTooFew(points: readonly Planned[], outcomes: ReadonlyMap<string, Outcome>): void {
  const failures = points.flatMap(({ key }) => {
    const outcome = outcomes.get(key)!
    return 'failed' in outcome ? [outcome.failed] : []
  })
  if (points.length - failures.length < 2)
    throw misuse(
      `--vary: fewer than two of the designs can be simulated to the end: ${printable(failures[0] ?? '')}`,
    )
}
