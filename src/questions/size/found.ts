/** The search of a sizing: which designs pencil and paper rule out, what is kept of it, and the end of it on fresh shifts. */

import type { Condition } from '../../answers/condition.js'
import type { ChosenDesign } from '../../answers/designs.js'
import { controlsOf, estimationOf } from '../../answers/figures.js'
import { estimatesOf, lineResult } from '../../answers/line-result.js'
import { lossesOf } from '../../answers/losses.js'
import { handCalculation } from '../../hand/hand.js'
import { Line } from '../../line/line.js'
import type { Simulation } from '../../shifts/simulation.js'
import { promiseOf, type SizeAsked } from './asked.js'
import type { JudgedAfresh } from './document.js'
import { type Fault, faultOf, leastShort } from './fault.js'
import { freshShifts } from './fresh.js'
import { nearestOf } from './nearest.js'
import { promiseFigure, shownBy } from './promise-figure.js'
import { findCheapest, type MoreOf, type SizeGoal, type Tried } from './search.js'

/** How the search goes. */
type SearchHow = Omit<SizeGoal, 'promises'>

/** What a search found. */
export interface Found {
  tried: Tried[]
  pick: number | null
  /** Number of the design that came nearest; null with a pick. */
  nearest: number | null
  /** Of the one or the other. */
  conditions: Condition[]
  /** What rules it out by hand, where it was not simulated. */
  fault: Fault | null
  /** It on fresh shifts; null where it was not simulated. */
  afresh: JudgedAfresh | null
}

/** Searches among the designs in order of cost, and judges the one that it ends with on fresh shifts. */
export async function findAmong(
  ordered: readonly ChosenDesign[],
  asked: SizeAsked,
  how: SearchHow,
  simulation: Simulation,
): Promise<Found> {
  const lineOf = lastLine(ordered)
  const promises = (design: number) =>
    asked.holds.map((text) => promiseOf(text, ordered[design]!.scenario, lineOf(design)))
  const goal: SizeGoal = { promises, ...how }
  const faults = new Map<number, Fault>()
  const found = await findIn(ordered, asked, goal, faults, simulation)
  const { pick } = found
  const near = pick === null ? await nearestOf(found.tried, goal, moreOf(simulation)) : null
  const { tried } = near ?? found
  const nearest = near && (near.design ?? leastShort(faults))
  const design = pick ?? nearest ?? 0
  const told = {
    ...{ tried, pick, nearest },
    conditions: promises(design),
    fault: faults.get(design) ?? null,
  }
  const end = tried.find((each) => each.design === design && each.without === null)
  if (!end) return { ...told, afresh: null }
  const afresh = await judgeAfresh(end, ordered[design]!, lineOf(design), told.conditions, how, simulation)
  return { ...told, afresh }
}

/** The shifts of a design, simulated as far as that takes. */
const moreOf =
  (simulation: Simulation): MoreOf =>
  (design, count) =>
    simulation.first(design, count)

/** The line of a design; the last one is kept. */
function lastLine(ordered: readonly ChosenDesign[]): (design: number) => Line {
  let last: { design: number; line: Line } | null = null
  return (design) => {
    if (last?.design !== design) last = { design, line: new Line(ordered[design]!.scenario) }
    return last.line
  }
}

/** The search itself, with what is kept of it; `faults` takes what rules designs out by hand. */
function findIn(
  ordered: readonly ChosenDesign[],
  asked: SizeAsked,
  goal: SizeGoal,
  faults: Map<number, Fault>,
  simulation: Simulation,
): ReturnType<typeof findCheapest> {
  // two designs may be alike in all that shifts depend on, and differ in price
  const keyOf = (design: number) => `${design} ${ordered[design]!.key}`
  /** The design that was asked for last is known from before. */
  let isKnown = false
  return findCheapest(
    ordered.map((design, number) => ({
      ruledOut: () => {
        const fault = faultOf(design.scenario, asked)
        if (fault) faults.set(number, fault)
        return fault?.reason ?? null
      },
      isBelow: belowOf(ordered, design, asked),
    })),
    goal,
    moreOf(simulation),
    (design) => {
      const outcome = simulation.keeper?.outcomeOf(keyOf(design)) as Tried | undefined
      isKnown = outcome !== undefined
      return outcome ? { ...outcome, design } : null
    },
    (tried) => {
      if (tried.without === null) simulation.keeper?.keepOutcome(keyOf(tried.design), tried)
      simulation.forget(tried.design)
      simulation.tell(tried.without === null && !isKnown)
    },
  )
}

/** Simulates the design that the search ended with on shifts that it did not see. */
async function judgeAfresh(
  tried: Tried,
  { scenario }: ChosenDesign,
  line: Line,
  conditions: readonly Condition[],
  { confidence, most }: SearchHow,
  simulation: Simulation,
): Promise<JudgedAfresh> {
  const { first, count } = freshShifts(tried, most)
  const fresh = await simulation.afresh(tried.design, first, count)
  const countFrom = simulation.countFrom(tried.design)
  const simulated = { line, scenario, shifts: fresh, countFrom }
  const estimation = estimationOf(scenario, { confidence, isPlain: false }, countFrom)
  const controls = controlsOf(fresh, estimation)
  const bottleneck = handCalculation(scenario).line.bottleneck?.name ?? null
  return {
    firstShift: first,
    shifts: count,
    promises: conditions.map((condition) => {
      const figure = promiseFigure(condition, fresh, estimation, controls)
      return { ...figure, shown: shownBy(figure, condition) }
    }),
    bottleneck,
    ...lineResult(simulated, estimatesOf(simulated, estimation)),
    losses: lossesOf(simulated, { ...estimation, bottleneck }),
  }
}

/** Whether a design has no more than another of every factor of which more never hurts, and is like it in all else. */
function belowOf(ordered: readonly ChosenDesign[], design: ChosenDesign, { choices, rising }: SizeAsked) {
  if (rising.length === 0) return () => false
  return (other: number) =>
    choices.every(({ path }, index) => {
      const [mine, theirs] = [design.places[index]!, ordered[other]!.places[index]!]
      return rising.includes(path) ? mine <= theirs : mine === theirs
    })
}
