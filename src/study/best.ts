/** Finds the best of several designs, among those that keep what is required, simulating each no longer than that takes. */
import type { ShiftResult } from '../line/line.js'
import { asLeast, type Condition, shiftFigure, testOf } from './condition.js'
import type { Verdict } from './constraint.js'
import type { StudyMeasure } from './figures.js'
import { Selection } from './select.js'

/** Shifts of every design before one may be dropped: with few, the spread is not known and more are spent for safety. */
export const firstStage = 20

/** Shifts that are simulated ahead before the rule looks at them: the threads have work, and little is for nothing. */
const ahead = 20

/** What is sought: `measure` and conditions as each design has them, in the order of the designs. */
export interface Goal {
  measures: readonly StudyMeasure[]
  isLargerBetter: boolean
  /** A design so near the best is as good, in the unit of the measure. */
  within: number
  conditions: readonly (readonly Condition[])[]
  confidence: number
  /** Most shifts of each design. */
  most: number
}

/** What became of a design. */
export interface Outcome {
  /**
   * `picked`; `dropped`: it is not the best; `refused`: it does not keep what is required; `undecided`: the most shifts
   * allowed did not tell.
   */
  verdict: 'picked' | 'dropped' | 'refused' | 'undecided'
  /** Shifts that the rule looked at. */
  shifts: number
}

export interface Best {
  /** Number of the design; null where none is left, or more than one at the end. */
  pick: number | null
  designs: Outcome[]
}

/** Brings the first `count` shifts of a design; null when cancelled. */
export type More = (design: number, count: number) => Promise<readonly ShiftResult[] | null>

/** A shift, from 1, says nothing of a measure, such as the cost of a case where none came out: nothing can be ranked by it. */
export class NoFigureError extends Error {
  override readonly name = 'NoFigureError'

  constructor(
    readonly measure: StudyMeasure,
    /** Number of the design, from 0. */
    readonly design: number,
    readonly shift: number,
  ) {
    super(`shift ${shift} of design ${design} has no figure`)
  }
}

/** `figure` of a shift, from 0, where it has one. Throws `NoFigureError`. */
function known(figure: number, measure: StudyMeasure, design: number, shift: number): number {
  if (!Number.isFinite(figure)) throw new NoFigureError(measure, design, shift + 1)
  return figure
}

/**
 * Finds the best. First each design is simulated until its conditions are told; then those that keep them are selected
 * from. Both halves share the risk equally where there are conditions, and the first shares its half among all designs and
 * conditions: with the confidence asked, nothing is refused that keeps its conditions by more than their nearness, nothing accepted
 * that misses them by more, and the pick is the best of the accepted or within the amount of it. Null when cancelled.
 * Throws `NoFigureError`.
 */
export async function findBest(goal: Goal, more: More): Promise<Best | null> {
  const risk = 1 - goal.confidence
  const designs: Outcome[] = []
  const tests = goal.conditions.reduce((sum, { length }) => sum + length, 0)
  for (const [design, conditions] of goal.conditions.entries()) {
    const outcome = await qualify(design, conditions, risk / 2 / Math.max(1, tests), goal.most, more)
    if (outcome === null) return null
    designs.push(outcome)
  }
  const left = designs.flatMap(({ verdict }, design) => (verdict === 'picked' ? [design] : []))
  if (left.length === 0) return { pick: null, designs }
  if (left.length === 1) return { pick: left[0]!, designs }
  return selectFrom(left, designs, tests > 0 ? risk / 2 : risk, goal, more)
}

/** Simulates a design until each of its conditions is told; `picked` stands for: still in. */
async function qualify(
  design: number,
  conditions: readonly Condition[],
  risk: number,
  most: number,
  more: More,
): Promise<Outcome | null> {
  if (conditions.length === 0) return { verdict: 'picked', shifts: 0 }
  const tests = conditions.map((condition) => ({
    condition,
    test: testOf(condition, risk, risk, firstStage),
    verdict: null as Verdict | null,
  }))
  for (let shift = 0; shift < most; shift++) {
    const shifts = await more(design, upTo(shift, most))
    if (shifts === null) return null
    for (const each of tests)
      each.verdict ??= each.test.add(
        known(asLeast(each.condition, shifts[shift]!.values), each.condition.measure, design, shift),
      )
    if (tests.some(({ verdict }) => verdict === 'refused')) return { verdict: 'refused', shifts: shift + 1 }
    if (tests.every(({ verdict }) => verdict === 'accepted')) return { verdict: 'picked', shifts: shift + 1 }
  }
  return { verdict: 'undecided', shifts: most }
}

/** Shifts to simulate when number `shift`, from 0, is looked at. */
const upTo = (shift: number, most: number): number => Math.min(most, Math.ceil((shift + 1) / ahead) * ahead)

async function selectFrom(
  left: readonly number[],
  designs: Outcome[],
  risk: number,
  goal: Goal,
  more: More,
): Promise<Best | null> {
  const { within, isLargerBetter, most, measures } = goal
  const selection = new Selection(left.length, { confidence: 1 - risk, within, isLargerBetter, firstStage })
  while (!selection.isDone && selection.shifts < most) {
    const figures = new Array<number>(left.length).fill(Number.NaN)
    for (const place of selection.survivors) {
      const design = left[place]!
      const shifts = await more(design, upTo(selection.shifts, most))
      if (shifts === null) return null
      const measure = measures[design]!
      const figure = shiftFigure(measure, shifts[selection.shifts]!.values)
      figures[place] = known(figure, measure, design, selection.shifts)
    }
    selection.add(figures)
  }
  for (const [place, design] of left.entries()) {
    const isLeft = selection.survivors.includes(place)
    const verdict = !isLeft ? 'dropped' : selection.isDone ? 'picked' : 'undecided'
    designs[design] = { verdict, shifts: Math.max(designs[design]!.shifts, selection.used[place]!) }
  }
  return { pick: selection.best === null ? null : left[selection.best]!, designs }
}
