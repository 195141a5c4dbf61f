/** Finds the cheapest design that keeps its promises, simulating as few designs, and each for as few shifts, as that takes. */
import { asLeast, type Condition, testOf } from './condition.js'
import type { Verdict } from './constraint.js'

/** Shifts of which a mean's spread is known well enough. */
const firstStage = 20

/** Shifts that are simulated ahead before the rule looks at them. */
const ahead = 20

/** A design as the search sees it: in order of cost, each no cheaper than the one before. */
export interface Candidate {
  /** What rules it out without simulating; null where nothing does. Asked for when its turn comes. */
  ruledOut: () => string | null
  /** Designs, by their place in the list, that keep every promise that this one keeps, shift by shift. */
  isBelow: (other: number) => boolean
}

/** What the search found of one design. */
export interface Tried {
  /** Place in the order of cost. */
  design: number
  verdict: 'accepted' | 'refused' | 'undecided'
  /** Why without simulating: what rules it out, or the place of a refused design that is no worse. */
  without: { reason: string } | { worseThan: number } | null
  /** Of each promise: the sum of its figures over the shifts that the rule looked at. */
  sums: number[]
  squares: number[]
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

/** Numbers of the first `count` shifts of a design, in their order; null when cancelled. */
export type MoreOf = (design: number, count: number) => Promise<readonly ArrayLike<number>[] | null>

/**
 * Tries designs in order of cost until one is accepted; told of each by `onTried`, those known from before by `known`.
 *
 * The error of the whole procedure: the i-th design that is simulated may spend risk / (2 i (i + 1)) on being wrongly
 * accepted, and as much on being wrongly refused, which together over all designs is at most the risk. So with the
 * confidence asked, no design that is cheaper than the pick and keeps its promises by more than their nearness was
 * refused, and the pick does not miss them by more. A design that stays undecided is passed over, and said.
 */
export async function findCheapest(
  candidates: readonly Candidate[],
  goal: SizeGoal,
  more: MoreOf,
  known: (design: number) => Tried | null,
  onTried: (tried: Tried) => void,
): Promise<{ tried: Tried[]; pick: number | null } | null> {
  const tried: Tried[] = []
  const refused: number[] = []
  let simulated = 0
  let pick: number | null = null
  for (const [design, { ruledOut, isBelow }] of candidates.entries()) {
    const worseThan = goal.isFull ? undefined : refused.find((other) => isBelow(other))
    const reason = worseThan === undefined ? ruledOut() : null
    const without = reason !== null ? { reason } : worseThan !== undefined ? { worseThan } : null
    let found: Tried | null
    if (without !== null) found = { design, verdict: 'refused', without, sums: [], squares: [], shifts: 0 }
    else {
      simulated++
      const risk = (1 - goal.confidence) / 2 / (simulated * (simulated + 1))
      found = known(design) ?? (await tryOne(design, goal, risk, more))
    }
    if (found === null) return null
    tried.push(found)
    onTried(found)
    if (found.verdict === 'refused' && found.without === null) refused.push(design)
    if (found.verdict === 'accepted') {
      pick ??= design
      if (!goal.isFull) break
    }
  }
  return { tried, pick }
}

async function tryOne(
  design: number,
  { promises, most, isFull }: SizeGoal,
  risk: number,
  more: MoreOf,
): Promise<Tried | null> {
  const conditions = promises(design)
  const tests = conditions.map((condition) => testOf(condition, risk, risk / conditions.length, firstStage))
  const verdicts: (Verdict | null)[] = conditions.map(() => null)
  const sums = conditions.map(() => 0)
  const squares = conditions.map(() => 0)
  const told = (verdict: Tried['verdict'], shifts: number): Tried => ({
    design,
    verdict,
    without: null,
    sums,
    squares,
    shifts,
  })
  for (let shift = 0; shift < most; shift++) {
    const rows = await more(design, isFull ? most : Math.min(most, Math.ceil((shift + 1) / ahead) * ahead))
    if (rows === null) return null
    for (const [index, condition] of conditions.entries()) {
      const figure = condition.figureOf(rows[shift]!)
      sums[index]! += figure
      squares[index]! += figure * figure
      if (!isFull) verdicts[index] ??= tests[index]!.add(asLeast(condition, rows[shift]!))
    }
    if (isFull) continue
    if (verdicts.includes('refused')) return told('refused', shift + 1)
    if (verdicts.every((verdict) => verdict === 'accepted')) return told('accepted', shift + 1)
  }
  if (!isFull) return told('undecided', most)
  const keepsAll = conditions.every(({ value, isLeast }, index) => {
    const mean = sums[index]! / most
    return isLeast ? mean >= value : mean <= value
  })
  return told(keepsAll ? 'accepted' : 'refused', most)
}
