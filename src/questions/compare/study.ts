/** Which layout, and how sure is that? Simulates the designs on the same random numbers and holds them against one another. */

import { aboutOf } from '../../answers/about.js'
import { type Answer, madeOf } from '../../answers/answer.js'
import { checkedDesigns, warnedDesign } from '../../answers/checked.js'
import { shiftsCsv } from '../../answers/csv.js'
import { drawsOf, simulatedDraws } from '../../answers/draws.js'
import { measureName } from '../../answers/figures.js'
import { inputsTold } from '../../answers/inputs-told.js'
import { type HeldOverShift, heldOverShift } from '../../answers/line-result.js'
import { warningsOf } from '../../answers/warning.js'
import { cannotWork } from '../../answers/warnings.js'
import type { Draws } from '../../answers/with-inputs.js'
import { currencyOf, unitName } from '../../catalogue/unit-name.js'
import { tapeLayout } from '../../hand/tape-layout.js'
import type { ShiftResult } from '../../line/line.js'
import { usualShifts } from '../../scenario/limits.js'
import type { ReadScenario } from '../../scenario/read.js'
import { type Context, type Simulation, simulating } from '../../shifts/simulation.js'
import { firstStage } from '../../statistics/evidence.js'
import { type CompareOptions, type ComparisonAsked, comparisonAsked } from './asked.js'
import { type Best, findBest, type Goal, type Outcome } from './best.js'
import { bestAcross } from './best-across-draws.js'
import { differencesCsv } from './csv.js'
import { type Design, designsOf } from './designs.js'
import { type BestResult, baseName, type CompareResult, compareResult } from './document.js'
import { againstFirst, allPairs } from './judge.js'

/** What was simulated of the designs, and which is the best where that was sought. */
interface Study {
  designs: readonly Design[]
  of: readonly (readonly ShiftResult[])[]
  countFrom: readonly number[]
  /** Of each design; its shifts do not have it any more. */
  held: readonly HeldOverShift[][]
  /** Of each design; null where inputs are held fixed. */
  draws: readonly (Draws | null)[]
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
    const best = asked.goal && (await bestOf({ ...asked.goal, confidence, most }, designs, simulation))
    if (asked.goal !== null) held.push(...designs.map((each, design) => heldIn(each, design, simulation)))
    const draws: (Draws | null)[] = []
    let first = designs.length
    for (const each of drawn) {
      draws.push(await simulatedDraws(each, asked.draws, simulation, first))
      first += each.length
    }
    return {
      ...{ designs, held, draws, best, most, of: simulation.of.slice(0, designs.length) },
      countFrom: designs.map((_, design) => simulation.countFrom(design)),
    }
  })
  const document = documentOf(loaded, options, asked, study)
  const rows = designs.map(({ name, line }, index) => ({
    ...{ name, columns: line.columns },
    shifts: study.of[index]!,
    draws: study.draws[index]?.of.map(({ shifts: each }) => each) ?? null,
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

/** Simulates until the best is known. */
const bestOf = (
  goal: Omit<Goal, 'names'>,
  designs: readonly Design[],
  simulation: Simulation,
): Promise<Best> =>
  findBest({ ...goal, names: designs.map(({ name }) => name) }, (design, count) =>
    simulation.first(design, count),
  )

function documentOf(
  loaded: ReadScenario,
  options: CompareOptions,
  asked: ComparisonAsked,
  { designs, of, held, draws: drawn, countFrom, best, most }: Study,
): CompareResult {
  const { confidence } = loaded.scenario.study
  const { variants, measure, matters, pairs, best: sought, within, among, require, plain } = options
  const { draws, inputs } = options
  const checked = checkedDesigns(loaded, designs.slice(1))
  const spent = of.reduce((sum, { length }) => sum + length, 0)
  return compareResult({
    designs: designs.map((design, index) => ({
      ...design,
      shifts: of[index]!,
      draws: drawn[index]!,
      countFrom: countFrom[index]!,
      held: held[index]!,
      tapeLayout: tapeLayout(design.scenario),
    })),
    compared: asked.measures,
    pairs: pairs ? allPairs(designs.length) : againstFirst(designs.length),
    requirements: asked.requirements,
    best: best && asked.goal && bestResult(asked.goal, best, designs, drawn, { confidence, most, spent }),
    matters: asked.matters,
    made: madeOf(
      loaded,
      {
        command: 'compare',
        shifts: asked.goal === null ? most : Math.max(...of.map(({ length }) => length)),
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
    about: aboutOf(loaded, designs.slice(1), checked),
    warnings: warningsOf(checked.map((each) => ({ ...warnedDesign(each), name: each.name ?? baseName }))),
    assumed: loaded.assumed,
    inputs: inputsTold(loaded),
    notes: [],
  })
}

function bestResult(
  goal: NonNullable<ComparisonAsked['goal']>,
  best: Best,
  designs: readonly Design[],
  drawn: Study['draws'],
  how: Pick<BestResult, 'confidence' | 'most' | 'spent'>,
): BestResult {
  const { measure, isLargerBetter, within, among } = goal
  const { pick, designs: outcomes } = best
  const names = designs.map(({ name }) => name)
  const draws = drawn.flatMap((each) => each ?? [])
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
    ...(draws.length < designs.length ? {} : { across: bestAcross(goal, best, names, draws) }),
  }
}

/** An outcome with the name of the design that it is held against. */
function named({ why, ...outcome }: Outcome, designs: readonly Design[]): Outcome<string> {
  if (why === undefined) return outcome
  return { ...outcome, why: why.reason === 'alike' ? { ...why, other: designs[why.other]!.name } : why }
}

/** Where something is required, one design at least must do all of it, the best where that was sought. */
const isMet = ({ variants, best }: CompareResult): boolean =>
  (best === null || best.pick !== null) &&
  Object.entries(variants).some(
    ([name, { requirements }]) =>
      (best === null || best.pick === name) && requirements.every(({ judgement }) => judgement === 'met'),
  )
