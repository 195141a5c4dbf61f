/** Which layout, and how sure is that? Simulates the designs on the same random numbers and holds them against one another. */

import { aboutOf, checkedDesigns, warnedDesign } from '../../answers/about.js'
import { shiftsCsv } from '../../answers/csv.js'
import { drawsOf, simulatedDraws } from '../../answers/draws.js'
import { measureName } from '../../answers/figures.js'
import { inputsTold } from '../../answers/inputs-told.js'
import { type HeldOverShift, heldOverShift } from '../../answers/line-result.js'
import { type Answer, madeOf } from '../../answers/made.js'
import { warningsOf } from '../../answers/warning.js'
import { cannotWork } from '../../answers/warnings.js'
import type { Draws } from '../../answers/with-inputs.js'
import { currencyOf, unitName } from '../../catalogue/unit-name.js'
import { tapeLayout } from '../../hand/tape-layout.js'
import { usualShifts } from '../../scenario/limits.js'
import type { ReadScenario } from '../../scenario/read.js'
import { type Context, type Simulation, simulating } from '../../shifts/simulation.js'
import { firstStage } from '../../statistics/evidence.js'
import { bestAcross } from './across-draws.js'
import { type CompareOptions, type ComparisonAsked, comparisonAsked } from './asked.js'
import { type Best, findBest, type Outcome } from './best.js'
import { differencesCsv } from './csv.js'
import { type Design, designsOf } from './designs.js'
import {
  type BestResult,
  baseName,
  type CompareResult,
  compareResult,
  type SimulatedDesign,
} from './document.js'
import { againstFirst, allPairs } from './judge.js'

/** What was simulated of the designs, and which is the best where that was sought. */
interface Study {
  designs: readonly (Design & SimulatedDesign)[]
  best: Best | null
  /** Most shifts of a design. */
  most: number
}

/** Answers the question. Throws `Fault`. */
export async function compare(
  loaded: ReadScenario,
  options: CompareOptions = {},
  context: Context = {},
): Promise<Answer<CompareResult>> {
  const designs = designsOf(loaded, options.variants)
  const asked = comparisonAsked(options, designs, loaded.scenario.study.shifts)
  const { seed, confidence, shifts } = loaded.scenario.study
  const most = asked.goal === null ? shifts : (loaded.asked.shifts ?? usualShifts.untilKnown)
  const drawn = designs.map((design, index) => drawsOf(design, asked.draws, index))
  const ofDraws = drawn.flat().length * (asked.draws?.shifts ?? 0)
  const plan = {
    designs: [...designs, ...drawn.flat()],
    ...{ seed, total: most * designs.length + ofDraws, isOpen: asked.goal !== null },
    counts: 'shifts' as const,
    course: loaded.shiftsSha256,
  }
  const study = await simulating(plan, context, async (simulation): Promise<Study> => {
    // of every design at least what a first look takes
    const least = asked.goal === null ? most : Math.min(firstStage, most)
    const held: HeldOverShift[][] = []
    for (const design of designs.keys()) {
      await simulation.first(design, least)
      if (asked.goal === null) held.push(heldIn(designs[design]!, design, simulation))
    }
    const names = designs.map(({ name }) => name)
    const best =
      asked.goal &&
      (await findBest({ ...asked.goal, names, confidence, most }, (design, count) =>
        simulation.first(design, count),
      ))
    if (asked.goal !== null) held.push(...designs.map((each, design) => heldIn(each, design, simulation)))
    const draws: (Draws | null)[] = []
    for (const [index, each] of drawn.entries())
      draws.push(await simulatedDraws(each, asked.draws, simulation, designs.length + index * each.length))
    const simulated = designs.map((design, index) => ({
      ...design,
      ...{ shifts: simulation.of[index]!, draws: draws[index]!, held: held[index]! },
      ...{ countFrom: simulation.countFrom(index), tapeLayout: tapeLayout(design.scenario) },
    }))
    return { designs: simulated, best, most }
  })
  const document = documentOf(loaded, options, asked, study)
  const rows = study.designs.map(({ name, line, shifts, draws }) => ({
    ...{ name, columns: line.columns, shifts },
    draws: draws?.of.map((each) => each.shifts),
  }))
  return {
    document,
    rows: () =>
      new Map([
        ['shifts.csv', shiftsCsv(rows)],
        ['differences.csv', differencesCsv(document)],
      ]),
    isMet: isMet(document),
    cannotWork: cannotWork(document),
  }
}

/** What a design that is simulated held over the shift: of hundreds of designs the shifts need not keep it. */
function heldIn({ scenario, line }: Design, design: number, simulation: Simulation): HeldOverShift[] {
  const [shifts, countFrom] = [simulation.of[design]!, simulation.countFrom(design)]
  const held = heldOverShift({ scenario, line, shifts, countFrom })
  simulation.withoutHeld(design)
  return held
}

function documentOf(
  loaded: ReadScenario,
  options: CompareOptions,
  asked: ComparisonAsked,
  { designs, best, most }: Study,
): CompareResult {
  const { confidence } = loaded.scenario.study
  const { variants, measure, matters, pairs, best: sought, within, among, require, plain } = options
  const { draws, inputs } = options
  const checked = checkedDesigns(loaded, designs.slice(1))
  const lengths = designs.map(({ shifts }) => shifts.length)
  const spent = lengths.reduce((sum, length) => sum + length, 0)
  return compareResult({
    designs,
    ...asked,
    pairs: pairs ? allPairs(designs.length) : againstFirst(designs.length),
    best: best && asked.goal && bestResult(asked.goal, best, designs, { confidence, most, spent }),
    made: madeOf(
      loaded,
      {
        command: 'compare',
        shifts: asked.goal === null ? most : Math.max(...lengths),
        plain: plain === true,
      },
      {
        ...{ variants: variants?.join(','), 'what-if': loaded.asked.whatIf },
        ...{ measure, matters, pairs, best: sought, within, among },
        // the usual most is not named: as an option it would be another scenario
        shifts: asked.goal ? loaded.asked.shifts : most,
      },
      { draws, inputs, require, plain },
    ),
    warnings: warningsOf(checked.map((each) => ({ ...warnedDesign(each), name: each.name ?? baseName }))),
    told: {
      about: aboutOf(loaded, designs.slice(1), checked),
      assumed: loaded.assumed,
      ...inputsTold(loaded),
    },
  })
}

function bestResult(
  goal: NonNullable<ComparisonAsked['goal']>,
  best: Best,
  designs: Study['designs'],
  how: Pick<BestResult, 'confidence' | 'most' | 'spent'>,
): BestResult {
  const { measure, isLargerBetter, within, among } = goal
  const { pick, designs: outcomes } = best
  const names = designs.map(({ name }) => name)
  const draws = designs.flatMap((each) => each.draws ?? [])
  return {
    measure: measureName(measure),
    label: measure.label,
    unit: unitName(measure.unit, currencyOf(designs[0]!.scenario)),
    isLargerBetter,
    within,
    among,
    pick: pick === null ? null : names[pick]!,
    designs: Object.fromEntries(names.map((name, index) => [name, named(outcomes[index]!, names)])),
    ...how,
    ...(draws.length < designs.length ? {} : { across: bestAcross(goal, best, names, draws) }),
  }
}

/** An outcome with the name of the design that it is held against. */
function named({ why, ...outcome }: Outcome, names: readonly string[]): Outcome<string> {
  if (why === undefined) return outcome
  return { ...outcome, why: why.reason === 'alike' ? { ...why, other: names[why.other]! } : why }
}

/** Where something is required, one design at least must do all of it, the best where that was sought. */
const isMet = ({ variants, best }: CompareResult): boolean =>
  (best === null || best.pick !== null) &&
  Object.entries(variants).some(
    ([name, { requirements }]) =>
      (best === null || best.pick === name) && requirements.every(({ judgement }) => judgement === 'met'),
  )
