/** The search of a sizing: which designs pencil and paper rule out, what is kept of it, its draws of the inputs, and the end of it on fresh shifts. */

import type { Condition } from '../../answers/condition.js'
import type { ChosenDesign } from '../../answers/designs.js'
import { Line } from '../../line/line.js'
import type { Simulation } from '../../shifts/simulation.js'
import type { KeptDraws } from '../../statistics/kept-draws.js'
import { inputsBeside, promiseOf, type SizeAsked } from './asked.js'
import type { JudgedAfresh } from './document.js'
import { DrawnDesigns, type DrawRow } from './drawn.js'
import { type Fault, faultOf, leastShort } from './fault.js'
import { type DrawsOfPromises, judgeAfresh } from './judged-afresh.js'
import { nearestOf } from './nearest.js'
import { findCheapest, type Search, type SizeGoal, type Tried } from './search.js'
import { findSure, holdingFrom, keptIn, type Surest } from './sure.js'

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
interface FoundDrawn {
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
  how: Omit<SizeGoal, 'promises'>,
  simulation: Simulation,
): Promise<Found> {
  const lineOf = lastLine(ordered)
  const promises = (design: number) =>
    asked.holds.map((text) => promiseOf(text, ordered[design]!.scenario, lineOf(design)))
  const search = searchOf(ordered, asked, { promises, ...how }, simulation)
  const found = await findCheapest(search)
  const near = found.pick === null ? await nearestOf(found.tried, search) : null
  const drawn =
    asked.draws &&
    new DrawnDesigns(ordered, { ...asked, draws: asked.draws }, search.goal, simulation, search.keyOf)
  const surest =
    drawn && found.pick !== null ? await surestFrom(found.pick, found.tried, asked, search, drawn) : null
  const { pick } = surest ?? found
  const { tried } = near ?? found
  const nearest = near ? (near.design ?? leastShort(search.faults)) : (surest?.surest ?? null)
  const design = pick ?? nearest ?? 0
  const conditions = promises(design)
  const told = { ...{ tried, pick, nearest, conditions }, fault: search.faults.get(design) ?? null }
  const end = tried.find((each) => each.design === design && each.without === null)
  if (!end) return { ...told, afresh: null, drawn: null }
  const draws = surest && (await drawn!.shiftsOf(design))
  const evidence = inputsBeside(ordered[design]!.evidence, asked.choices)
  const { afresh, told: ofDraws } = await judgeAfresh(
    { tried: end, design: ordered[design]!, line: lineOf(design), conditions, draws, evidence },
    how,
    simulation,
  )
  const rows = draws && drawn!.rowsOf(design, draws)
  return { ...told, afresh, drawn: rows && { kept: surest.kept, told: ofDraws!, rows } }
}

/** What draws say of the pick of a search, or of the designs from there on up to one that is sure enough. */
async function surestFrom(
  pick: number,
  tried: Tried[],
  { sure }: SizeAsked,
  search: Search,
  drawn: DrawnDesigns,
): Promise<Surest> {
  const { draws } = drawn.asked.draws
  const verdictOf = (design: number, draw: number) => drawn.verdictOf(design, draw)
  if (sure === null)
    return { pick, surest: null, kept: new Map([[pick, await keptIn(pick, draws, verdictOf)]]) }
  const { candidates, goal } = search
  // where the search itself is to be checked nothing is taken as known
  const isBelow = (design: number, other: number) => !goal.isFull && candidates[design]!.isBelow(other)
  return findSure(holdingFrom(pick, tried, search), { share: sure, draws, isBelow }, verdictOf)
}

/** The line of a design; the last one is kept. */
function lastLine(ordered: readonly ChosenDesign[]): (design: number) => Line {
  let last: { design: number; line: Line } | null = null
  return (design) => {
    if (last?.design !== design) last = { design, line: new Line(ordered[design]!.scenario) }
    return last.line
  }
}

/** A search among designs that are simulated, with what is kept of it. */
interface DesignSearch extends Search {
  /** What rules designs out by hand, as far as that was asked. */
  faults: ReadonlyMap<number, Fault>
  keyOf: (design: number) => string
}

function searchOf(
  ordered: readonly ChosenDesign[],
  asked: SizeAsked,
  goal: SizeGoal,
  simulation: Simulation,
): DesignSearch {
  // two designs may be alike in all that shifts depend on, and differ in price
  const keyOf = (design: number) => `${design} ${ordered[design]!.key}`
  const faults = new Map<number, Fault>()
  /** The design that was asked for last is known from before. */
  let isKnown = false
  return {
    ...{ goal, faults, keyOf },
    more: (design, count, isEnough) => simulation.first(design, count, isEnough),
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
