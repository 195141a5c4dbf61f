/** Finds the best of several designs, among those that keep what is required, simulating each no longer than that takes. */

import { type Condition, overOf, testOf } from '../../answers/condition.js'
import type { StudyMeasure } from '../../answers/figures.js'
import { measureName } from '../../answers/figures.js'
import type { ShiftResult } from '../../line/line.js'
import { misuse } from '../../scenario/fault.js'
import type { Verdict } from '../../statistics/constraint.js'
import { firstStage } from '../../statistics/evidence.js'
import { StopsSeen, type Unseen } from '../../statistics/seen.js'
import { Selection } from '../../statistics/select.js'

/** Shifts that are simulated ahead before the rule looks at them: the threads have work, and little is for nothing. */
const ahead = 20

/** What is sought: `measure` and conditions as each design has them, in the order of the designs. */
export interface Goal {
  /** Of the designs. */
  names: readonly string[]
  measures: readonly StudyMeasure[]
  /** Of each design the counts of the stops by chance that may happen in it. */
  stops: readonly (readonly StudyMeasure[])[]
  isLargerBetter: boolean
  /** A design so near the best is as good, in the unit of the measure. */
  within: number
  conditions: readonly (readonly Condition[])[]
  confidence: number
  /** Most shifts of each design. */
  most: number
}

/**
 * Why a design stayed undecided. `alike`: it differs from that other one in so few shifts; `unseen`: a kind of stop has happened
 * in so few of its shifts; `spread`: its shifts spread too far for their number, or it lies too near what is asked or another design.
 */
export type Why<Design> =
  | { reason: 'alike'; other: Design; shifts: number }
  | { reason: 'unseen'; stop: string; shifts: number }
  | { reason: 'spread' }

/** What became of a design. */
export interface Outcome<Design = number> {
  /**
   * `picked`; `dropped`: it is not the best; `refused`: it does not keep what is required; `undecided`: the shifts did not tell.
   */
  verdict: 'picked' | 'dropped' | 'refused' | 'undecided'
  /** Shifts that the rule looked at. */
  shifts: number
  /** Of an undecided one. */
  why?: Why<Design>
}

export interface Best {
  /** Number of the design; null where none is left, or more than one at the end. */
  pick: number | null
  designs: Outcome[]
}

/** Brings the first `count` shifts of a design. */
export type More = (design: number, count: number) => Promise<readonly ShiftResult[]>

/**
 * Refuses a measure by which nothing can be ranked: a shift says nothing of a mean, such as the time in the line where no case came out,
 * or none of the first shifts says anything of a ratio, such as the cost of a case. Throws `Fault` `asked`.
 */
function refuseNoFigure(
  measure: StudyMeasure,
  shifts: readonly ShiftResult[],
  name: string,
  shift: number,
): void {
  const first = shifts.slice(0, firstStage)
  const isUnsaid =
    measure.kind === 'ratio'
      ? shift + 1 === firstStage && first.every(({ values }) => overOf(measure, values) === 0)
      : !Number.isFinite(shifts[shift]!.values[measure.index])
  if (!isUnsaid) return
  const says =
    measure.kind === 'ratio'
      ? `none of the first ${firstStage} shifts of ${name} says anything`
      : `shift ${shift + 1} of ${name} says nothing`
  throw misuse(
    `--best: ${says} about ${measureName(measure)}, because no good case came out; choose by another measure, such as throughput`,
  )
}

/**
 * Finds the best. First each design is simulated until its conditions are told; then those that keep them are selected
 * from. Both halves share the risk equally where there are conditions, and the first shares its half among all designs and
 * conditions: with about the confidence asked, nothing is refused that keeps its conditions by more than their nearness, nothing accepted
 * that misses them by more, and the pick is the best of the accepted or within the amount of it.
 * Throws `Fault` `asked` where nothing can be ranked by the measure.
 */
export async function findBest(goal: Goal, more: More): Promise<Best> {
  const risk = 1 - goal.confidence
  const designs: Outcome[] = []
  const tests = goal.conditions.reduce((sum, { length }) => sum + length, 0)
  for (const [design, conditions] of goal.conditions.entries()) {
    designs.push(await qualify(design, conditions, risk / 2 / Math.max(1, tests), goal, more))
  }
  const left = designs.flatMap(({ verdict }, design) => (verdict === 'picked' ? [design] : []))
  if (left.length < 2) return { pick: left[0] ?? null, designs }
  return selectFrom(left, designs, tests > 0 ? risk / 2 : risk, goal, more)
}

/** Simulates a design until each of its conditions is told; `picked` stands for: still in. */
async function qualify(
  design: number,
  conditions: readonly Condition[],
  risk: number,
  { most, names }: Goal,
  more: More,
): Promise<Outcome> {
  if (conditions.length === 0) return { verdict: 'picked', shifts: 0 }
  const tests = conditions.map((condition) => ({
    condition,
    test: testOf(condition, risk, risk),
    verdict: null as Verdict | null,
  }))
  for (let shift = 0; shift < most; shift++) {
    const shifts = await more(design, upTo(shift, most))
    for (const each of tests) {
      refuseNoFigure(each.condition.measure, shifts, names[design]!, shift)
      each.verdict ??= each.test.add(shifts[shift]!.values)
    }
    if (tests.some(({ verdict }) => verdict === 'refused')) return { verdict: 'refused', shifts: shift + 1 }
    if (tests.every(({ verdict }) => verdict === 'accepted')) return { verdict: 'picked', shifts: shift + 1 }
  }
  const open = tests.filter(({ verdict }) => verdict === null).map(({ test }) => test)
  // where one waits for a stop, that is why
  const unseen = open.map((test) => test.unseen).find((each) => each !== null)
  return { verdict: 'undecided', shifts: most, why: unseen ? notSeen(unseen) : { reason: 'spread' } }
}

const notSeen = ({ stop, happened }: Unseen<StudyMeasure>): Why<number> => ({
  reason: 'unseen',
  stop: `${stop.path[3]!.replace('-', ' ')} of ${stop.path[1]}`,
  shifts: happened,
})

/** Shifts to simulate when number `shift`, from 0, is looked at. */
const upTo = (shift: number, most: number): number => Math.min(most, Math.ceil((shift + 1) / ahead) * ahead)

async function selectFrom(
  left: readonly number[],
  designs: Outcome[],
  risk: number,
  goal: Goal,
  more: More,
): Promise<Best> {
  const { within, isLargerBetter, most, measures } = goal
  const seen = left.map((design) => new StopsSeen(goal.stops[design]!))
  const unseen = left.map((): Unseen<StudyMeasure> | null => null)
  const isSeen = (place: number, figure: number, share: number) => {
    unseen[place] = seen[place]!.unseen(figure, within, share)
    return unseen[place] === null
  }
  const selection = new Selection(left.length, { confidence: 1 - risk, within, isLargerBetter, isSeen })
  const values = left.map(() => Number.NaN)
  const overs = [...values]
  while (!selection.isDone && selection.shifts < most) {
    for (const place of selection.survivors) {
      const design = left[place]!
      const shifts = await more(design, upTo(selection.shifts, most))
      const measure = measures[design]!
      refuseNoFigure(measure, shifts, goal.names[design]!, selection.shifts)
      const { values: numbers } = shifts[selection.shifts]!
      seen[place]!.add(numbers)
      values[place] = numbers[measure.index]!
      overs[place] = overOf(measure, numbers)
    }
    selection.add(values, overs)
  }
  for (const [place, design] of left.entries()) {
    const shifts = Math.max(designs[design]!.shifts, selection.used[place]!)
    const verdict = !selection.survivors.includes(place)
      ? 'dropped'
      : selection.best === null
        ? 'undecided'
        : 'picked'
    const outcome = { verdict, shifts } satisfies Outcome
    designs[design] = verdict === 'undecided' ? { ...outcome, why: whyUndecided(place) } : outcome
  }
  return { pick: selection.best === null ? null : left[selection.best]!, designs }

  function whyUndecided(place: number): Why<number> {
    const alike = selection.alike(place)
    if (alike) return { reason: 'alike', other: left[alike.from]!, shifts: alike.differing }
    return unseen[place] ? notSeen(unseen[place]) : { reason: 'spread' }
  }
}
