/** What a design must keep, and the test that tells it shift by shift. */
import { type ConstraintTest, MeanTest, ShareTest } from './constraint.js'
import type { StudyMeasure } from './figures.js'
import type { Requirement } from './requirement.js'

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
  /** The figure of a shift, from the numbers of the shift result. */
  figureOf: (values: ArrayLike<number>) => number
}

/** The number of a shift that a rule looks at: of a ratio that of the shift itself. */
export const shiftFigure = ({ index, kind }: StudyMeasure, values: ArrayLike<number>): number =>
  kind === 'ratio' ? values[index]! / values[index + 1]! : values[index]!

/** The condition that a measure's long-run figure keeps a requirement. */
export const meanCondition = ({ text, measure, sign, value }: Requirement, near: number): Condition => ({
  text,
  measure,
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
  { measure, sign, value }: Requirement,
  share: number,
  near: number,
): Condition => ({
  text,
  measure,
  isShare: true,
  isLeast: true,
  sign,
  value: share,
  bound: value,
  near,
  figureOf: (values) => (keeps(shiftFigure(measure, values), sign, value) ? 1 : 0),
})

const keeps = (figure: number, sign: Requirement['sign'], value: number): boolean =>
  sign === '>='
    ? figure >= value
    : sign === '<='
      ? figure <= value
      : sign === '>'
        ? figure > value
        : figure < value

/**
 * The test of a condition: a design that misses it by more than its nearness is accepted with at most the chance
 * `wrongly`, one that keeps it by more refused with at most `refused`. A mean is tested with the smaller risk on both sides.
 */
export function testOf(
  { isShare, isLeast, value, near }: Condition,
  wrongly: number,
  refused: number,
  firstStage: number,
): ConstraintTest {
  if (isShare) return new ShareTest(isLeast ? value : 1 - value, near, wrongly, refused)
  return new MeanTest(isLeast ? value : -value, near, Math.min(wrongly, refused), firstStage)
}

/** The figure of a shift as something that must be at least. */
export function asLeast({ isShare, isLeast, figureOf }: Condition, values: ArrayLike<number>): number {
  const figure = figureOf(values)
  if (isLeast) return figure
  return isShare ? 1 - figure : -figure
}
