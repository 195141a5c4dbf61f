/** What a design must keep, and the test that tells it shift by shift. */

import { type CauseKey, causes } from '../catalogue/causes.js'
import { MeanTest, ShareTest, type Verdict } from '../statistics/constraint.js'
import { firstStage } from '../statistics/evidence.js'
import { StopsSeen, type Unseen } from '../statistics/seen.js'
import type { StudyMeasure } from './figures.js'
import { keeps, type Requirement } from './requirement.js'

/** A condition on a design: its figure over shifts is at least, or at most, a value. */
export interface Condition {
  /** As the user wrote it, without how near counts as either. */
  text: string
  measure: StudyMeasure
  /** The figure of a shift is 0 or 1, and the mean a share of shifts. */
  isShare: boolean
  isLeast: boolean
  /** Which side of `bound` the measure itself must lie on. */
  sign: Requirement['sign']
  value: number
  /** What the measure itself must reach, or not pass: in the shifts that keep it, or in the mean. */
  bound: number
  /** How far off the value counts as either. */
  near: number
  /** Counts of the stops by chance that may happen in the design; left out, it is taken to have none. */
  stops?: readonly StudyMeasure[]
  /** The figure of a shift by itself, from the numbers of the shift result. */
  figureOf: (values: ArrayLike<number>) => number
}

/** What the number of a shift is divided by: of a ratio its second number. */
export const overOf = ({ index, kind }: StudyMeasure, values: ArrayLike<number>): number =>
  kind === 'ratio' ? values[index + 1]! : 1

/** The figure that a shift has by itself, NaN of a ratio with nothing to divide by. */
const shiftFigure = ({ index, kind }: StudyMeasure, values: ArrayLike<number>): number =>
  kind === 'ratio' ? values[index]! / values[index + 1]! : values[index]!

/** The condition that a measure's long-run figure keeps a requirement. */
export const meanCondition = (
  { text, measure, sign, value }: Requirement,
  near: number,
  stops: readonly StudyMeasure[] = [],
): Condition => ({
  text,
  measure,
  stops,
  isShare: measure.kind === 'share',
  isLeast: sign.startsWith('>'),
  sign,
  value,
  bound: value,
  near,
  figureOf: (values) => shiftFigure(measure, values),
})

/** The condition that a requirement is kept in at least a share of the shifts, each by itself. */
export const shareCondition = (
  text: string,
  requirement: Requirement,
  share: number,
  near: number,
): Condition => ({
  ...meanCondition(requirement, near),
  ...{ text, isShare: true, isLeast: true, value: share },
  figureOf: (values) =>
    keeps(shiftFigure(requirement.measure, values), requirement.sign, requirement.value) ? 1 : 0,
})

/** A condition as it is told shift by shift. */
export interface ConditionTest {
  /** Takes the numbers of the next shift; null as long as nothing is clear. */
  add(values: ArrayLike<number>): Verdict | null
  /** The stop that has happened in too few shifts to tell; null where that is not what it waits for. */
  readonly unseen: Unseen<StudyMeasure> | null
}

/**
 * The test of a condition: a design that misses it by more than its nearness is accepted with at most the chance
 * `wrongly`, one that keeps it by more refused with at most `refused`. A mean is tested with the smaller risk on both sides, a
 * ratio as total over total, and neither before each kind of stop that may matter has happened often enough.
 */
export function testOf(condition: Condition, wrongly: number, refused: number): ConditionTest {
  const { isShare, isLeast, value, near, measure, figureOf, stops = [] } = condition
  if (isShare) {
    const test = new ShareTest(isLeast ? value : 1 - value, near, wrongly, refused)
    return { add: (values) => test.add(isLeast ? figureOf(values) : 1 - figureOf(values)), unseen: null }
  }
  const sign = isLeast ? 1 : -1
  const risk = Math.min(wrongly, refused)
  const seen = new StopsSeen(stops)
  let unseen: Unseen<StudyMeasure> | null = null
  const test = new MeanTest(sign * value, near, risk, firstStage, (figure) => {
    unseen = seen.unseen(figure, near, risk)
    return unseen === null
  })
  return {
    add(values) {
      seen.add(values)
      return test.add(sign * values[measure.index]!, overOf(measure, values))
    },
    get unseen() {
      return unseen
    },
  }
}

/** Of the measures of a line those that count, shift by shift, the stops by chance that its scenario names. */
export const chanceStops = (measures: readonly StudyMeasure[]): StudyMeasure[] =>
  measures.filter(
    ({ path: [room, , group, key, ofJam], isTogether }) =>
      room === 'equipment' &&
      !isTogether &&
      ((group === 'measures' && causes[key as CauseKey]?.isByChance === true) ||
        (group === 'jams' && ofJam === 'stops')),
  )
