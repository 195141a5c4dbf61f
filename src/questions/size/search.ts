/** Finds the cheapest design that keeps its promises, simulating as few designs, and each for as few shifts, as that takes. */

import { type Condition, testOf } from '../../answers/condition.js'
import type { Interval } from '../../answers/difference-figure.js'
import type { ShiftResult } from '../../line/line.js'
import type { Verdict } from '../../statistics/constraint.js'
import { promiseFigure } from './promise-figure.js'

/** A design as the search sees it: in order of cost, each no cheaper than the one before. */
export interface Candidate {
  /** What rules it out without simulating; null where nothing does. */
  ruledOut: () => string | null
  /** Whether it has no more than the design of that place of every factor of which more never hurts, and is like it in all else. */
  isBelow: (other: number) => boolean
}

/** What the search found of one design. */
export interface Tried {
  /** Place in the order of cost. */
  design: number
  verdict: 'accepted' | 'refused' | 'undecided'
  /** Why without simulating: what rules it out, or the place of a refused design that is no worse. */
  without: { reason: string } | { worseThan: number } | null
  /**
   * Of each promise over the shifts that the rule looked at; none where it was not simulated. The ends of the interval are null
   * where a test ended the shifts: it ends them when the figure looks good or bad, and no plain interval covers after that.
   */
  figures: Interval[]
  shifts: number
}

/** What is sought. */
export interface SizeGoal {
  /** Of each design, in its own measures. */
  promises: (design: number) => readonly Condition[]
  confidence: number
  /** Most shifts of each design. */
  most: number
  /** Every design is simulated for the most shifts and judged by its figures alone; for checking the search. */
  isFull: boolean
}

/** A search: among which designs, what is sought, and who simulates. */
export interface Search {
  candidates: readonly Candidate[]
  goal: SizeGoal
  /** The first `count` shifts of a design, in their order, or as many as are enough: that is asked after each. */
  more: (
    design: number,
    count: number,
    isEnough?: (shifts: readonly ShiftResult[]) => boolean,
  ) => Promise<readonly ShiftResult[]>
  /** What came of a design before; null where that is not known. */
  known: (design: number) => Tried | null
  /** Told of each design that is done with. */
  onTried: (tried: Tried) => void
}

/** Designs that are weighed against each other as the next to be tried. */
const mostWeighed = 200

/**
 * Tries designs until the cheapest that is accepted is known. Which is tried next is what rules out most either way: an accepted design rules out all that cost more, a refused
 * one all that are below it. Where nothing is below anything that is the cheapest.
 *
 * The error of the whole procedure: the i-th design that is simulated may spend risk / (2 i (i + 1)) on being wrongly
 * accepted, and as much on being wrongly refused, which together over all designs is at most the risk. So with the
 * confidence asked, no design that is cheaper than the pick and keeps its promises by more than their nearness was
 * refused, and the pick does not miss them by more, if what is taken never to hurt does not. A design that stays undecided is passed
 * over, and said.
 */
export async function findCheapest(search: Search): Promise<{ tried: Tried[]; pick: number | null }> {
  const { candidates, goal, known, onTried } = search
  const tried: Tried[] = []
  const tell = (found: Tried): void => {
    tried.push(found)
    onTried(found)
  }
  const refuse = (design: number, without: NonNullable<Tried['without']>): void =>
    tell({ design, verdict: 'refused', without, figures: [], shifts: 0 })
  let open: number[] = []
  for (const [design, { ruledOut }] of candidates.entries()) {
    const reason = goal.isFull ? null : ruledOut()
    if (reason === null) open.push(design)
    else refuse(design, { reason })
  }
  let simulated = 0
  while (open.length > 0) {
    const design = goal.isFull ? open[0]! : nextOf(open, candidates)
    simulated++
    const found = known(design) ?? (await tryOne(design, search, riskOf(simulated, goal)))
    tell(found)
    open = open.filter((each) => each !== design)
    if (!goal.isFull) open = stillOpen(open, found, candidates, refuse)
  }
  const accepted = tried.filter(({ verdict }) => verdict === 'accepted').map(({ design }) => design)
  return { tried, pick: accepted.length > 0 ? Math.min(...accepted) : null }
}

/** The designs that what was found of one leaves open; those that it refuses with it are told. */
function stillOpen(
  open: readonly number[],
  { design, verdict }: Tried,
  candidates: readonly Candidate[],
  refuse: (design: number, without: NonNullable<Tried['without']>) => void,
): number[] {
  if (verdict === 'accepted') return open.filter((each) => each < design)
  if (verdict !== 'refused') return [...open]
  return open.filter((each) => {
    const isBelow = candidates[each]!.isBelow(design)
    if (isBelow) refuse(each, { worseThan: design })
    return !isBelow
  })
}

/** Of the open designs, in order of cost, the one that rules out most whichever way it goes; of equals the cheapest. */
function nextOf(open: readonly number[], candidates: readonly Candidate[]): number {
  const step = Math.max(1, open.length / mostWeighed)
  let best = open[0]!
  let most = 0
  for (let at = 0; at < open.length; at += step) {
    const place = Math.floor(at)
    const design = open[place]!
    const costlier = open.length - place
    // it cannot rule out more than it costs less than
    if (costlier <= most) break
    let below = 0
    for (const each of open) if (candidates[each]!.isBelow(design)) below++
    const least = Math.min(costlier, below)
    if (least > most) {
      most = least
      best = design
    }
  }
  return best
}

/** What the design that is simulated as the i-th, from 1, may spend of the risk, either way. */
export const riskOf = (simulated: number, { confidence }: Pick<SizeGoal, 'confidence'>): number =>
  (1 - confidence) / 2 / (simulated * (simulated + 1))

/** Simulates a design until each promise is told with that risk of a wrong verdict, or the most shifts are over. */
export async function tryOne(
  design: number,
  { goal, more }: Pick<Search, 'goal' | 'more'>,
  risk: number,
): Promise<Tried> {
  const { promises, confidence, most, isFull } = goal
  const conditions = promises(design)
  const told = (verdict: Tried['verdict'], shifts: readonly ShiftResult[]): Tried => {
    const figures = conditions.map((condition) =>
      promiseFigure(condition, shifts, { confidence, exposure: 1 }),
    )
    return {
      design,
      verdict,
      without: null,
      figures: isFull ? figures : figures.map(({ mean }) => ({ mean, low: null, high: null })),
      shifts: shifts.length,
    }
  }
  if (isFull) {
    const shifts = await more(design, most)
    const { figures } = told('accepted', shifts)
    const keepsAll = conditions.every((condition, index) => keeps(condition, figures[index]!))
    return told(keepsAll ? 'accepted' : 'refused', shifts)
  }
  const tests = conditions.map((condition) => testOf(condition, risk, risk / conditions.length))
  const verdicts: (Verdict | null)[] = conditions.map(() => null)
  const shifts = await more(design, most, (come) => {
    const { values } = come.at(-1)!
    for (const [index, test] of tests.entries()) verdicts[index] ??= test.add(values)
    return verdictOf(verdicts) !== 'undecided'
  })
  return told(verdictOf(verdicts), shifts)
}

/** What is known of a design by what is told of its promises; those of which nothing is told yet are null. */
function verdictOf(promises: readonly (Verdict | null)[]): Tried['verdict'] {
  if (promises.includes('refused')) return 'refused'
  return promises.every((verdict) => verdict === 'accepted') ? 'accepted' : 'undecided'
}

/** Whether the figure alone keeps the promise; one that is not known does not. */
const keeps = ({ isLeast, value }: Condition, { mean }: Interval): boolean =>
  mean !== null && (isLeast ? mean >= value : mean <= value)
