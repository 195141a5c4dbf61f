/** The search of a sizing: which designs pencil and paper rule out, what is kept of it, its draws of the inputs, and the end of it on fresh shifts. */

import type { Condition } from '../../answers/condition.js'
import type { ChosenDesign } from '../../answers/designs.js'
import { Line } from '../../line/line.js'
import type { Simulation } from '../../shifts/simulation.js'
import type { KeptDraws } from '../../statistics/kept-draws.js'
import { promiseOf, type SizeAsked } from './asked.js'
import type { JudgedAfresh } from './document.js'
import { DrawnDesigns, type DrawRow } from './drawn.js'
import { type Fault, faultOf, leastShort } from './fault.js'
import { holdingFrom } from './holding.js'
import { inputsBeside } from './inputs-beside.js'
import { type DrawsOfPromises, judgeAfresh } from './judged-afresh.js'
import { nearestOf } from './nearest.js'
import { type Candidate, findCheapest, type MoreOf, type SizeGoal, type Tried } from './search.js'
import { findSure, keptIn, type Surest } from './sure.js'

/** How the search goes. */
type SearchHow = Omit<SizeGoal, 'promises'>

/** What a search found. */
export interface Found {
  tried: Tried[]
  pick: number | null
  /** Number of the design that came nearest, or where none is sure the surest; null with a pick. */
  nearest: number | null
  /** Of the one or the other. */
  conditions: Condition[]
  /** What rules it out by hand, where it was not simulated. */
  fault: Fault | null
  /** It on fresh shifts; null where it was not simulated. */
  afresh: JudgedAfresh | null
  /** Draws of the inputs of the pick, or where none is sure of the surest; null where there are none. */
  drawn: FoundDrawn | null
}

/** What draws of the inputs say. */
export interface FoundDrawn {
  /** Of each design that was drawn. */
  kept: Map<number, KeptDraws>
  told: DrawsOfPromises
  /** Of the design that the search ends with, draw by draw. */
  rows: DrawRow[]
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
  const search = searchOf(ordered, asked, simulation)
  const { candidates, known, onTried } = search
  const found = await findCheapest(candidates, goal, moreOf(simulation), known, onTried)
  const drawing = asked.draws && {
    ...{ goal, simulation, choices: asked.choices },
    drawn: new DrawnDesigns(ordered, { ...asked, draws: asked.draws }, goal, simulation, search.keyOf),
  }
  const surest = drawing && (await drawnFrom(found, asked, search, drawing))
  const { pick } = surest ?? found
  const near = found.pick === null ? await nearestOf(found.tried, goal, moreOf(simulation)) : null
  const { tried } = near ?? found
  const nearest = near ? (near.design ?? leastShort(search.faults)) : (surest?.surest ?? null)
  const design = pick ?? nearest ?? 0
  const told = {
    ...{ tried, pick, nearest },
    conditions: promises(design),
    fault: search.faults.get(design) ?? null,
  }
  const end = tried.find((each) => each.design === design && each.without === null)
  if (!end) return { ...told, afresh: null, drawn: null }
  const toJudge = { tried: end, design: ordered[design]!, line: lineOf(design), conditions: told.conditions }
  if (drawing && surest) return { ...told, ...(await drawnEnd(toJudge, surest, drawing)) }
  const { afresh } = await judgeAfresh({ ...toJudge, draws: null, evidence: [] }, how, simulation)
  return { ...told, afresh, drawn: null }
}

/** What draws are made of. */
interface Drawing {
  drawn: DrawnDesigns
  goal: SizeGoal
  choices: SizeAsked['choices']
  simulation: Simulation
}

/** The design that the search ends with on fresh shifts, with the draws of its inputs. */
async function drawnEnd(
  toJudge: Omit<Parameters<typeof judgeAfresh>[0], 'draws' | 'evidence'>,
  { kept }: Surest,
  { drawn, goal, choices, simulation }: Drawing,
): Promise<Pick<Found, 'afresh' | 'drawn'>> {
  const { tried, design } = toJudge
  const draws = await drawn.shiftsOf(tried.design)
  const evidence = inputsBeside(design.evidence, choices)
  const { afresh, told } = await judgeAfresh({ ...toJudge, draws, evidence }, goal, simulation)
  return { afresh, drawn: told && { kept, told, rows: drawn.rowsOf(tried.design, draws) } }
}

/** The draws of the pick of a search, or of the designs from there on up to one that is sure enough; null without a pick. */
async function drawnFrom(
  { pick, tried }: { pick: number | null; tried: Tried[] },
  { draws, sure }: SizeAsked,
  { candidates, known, onTried }: Search,
  { drawn, goal, simulation }: Drawing,
): Promise<Surest | null> {
  if (pick === null || draws === null) return null
  const verdictOf = (design: number, draw: number) => drawn.verdictOf(design, draw)
  if (sure === null)
    return { pick, surest: null, kept: new Map([[pick, await keptIn(pick, draws.draws, verdictOf)]]) }
  const holding = holdingFrom(pick, tried, candidates, goal, moreOf(simulation), known, onTried)
  // where the search itself is to be checked nothing is taken as known
  const isBelow = (design: number, other: number) => !goal.isFull && candidates[design]!.isBelow(other)
  return findSure(holding, { share: sure, draws: draws.draws, isBelow }, verdictOf)
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

/** The designs as a search takes them, with what is kept of it. */
interface Search {
  candidates: readonly Candidate[]
  /** What rules designs out by hand, as far as that was asked. */
  faults: ReadonlyMap<number, Fault>
  keyOf: (design: number) => string
  known: (design: number) => Tried | null
  onTried: (tried: Tried) => void
}

function searchOf(ordered: readonly ChosenDesign[], asked: SizeAsked, simulation: Simulation): Search {
  // two designs may be alike in all that shifts depend on, and differ in price
  const keyOf = (design: number) => `${design} ${ordered[design]!.key}`
  const faults = new Map<number, Fault>()
  /** The design that was asked for last is known from before. */
  let isKnown = false
  return {
    faults,
    keyOf,
    candidates: ordered.map((design, number) => ({
      ruledOut: () => {
        const fault = faultOf(design.scenario, asked)
        if (fault) faults.set(number, fault)
        return fault?.reason ?? null
      },
      isBelow: belowOf(ordered, design, asked),
    })),
    known: (design) => {
      const outcome = simulation.keeper?.outcomeOf(keyOf(design)) as Tried | undefined
      isKnown = outcome !== undefined
      return outcome ? { ...outcome, design } : null
    },
    onTried: (tried) => {
      if (tried.without === null) simulation.keeper?.keepOutcome(keyOf(tried.design), tried)
      simulation.forget(tried.design)
      simulation.tell(tried.without === null && !isKnown)
    },
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
