/** Compares designs that saw the same random numbers: every measure of each less that of another, shift by shift. */

import { type DifferenceFigure, differenceOf, judgedFigures } from '../../answers/difference-figure.js'
import {
  measureName,
  measuresOf,
  observationsOf,
  type Simulated,
  type StudyMeasure,
} from '../../answers/figures.js'
import { currencyOf, unitName } from '../../catalogue/unit-name.js'
import type { ShiftResult } from '../../line/line.js'
import type { PairedDifference } from '../../statistics/paired.js'

/** Which design is held against which, by their places in the list. */
export interface Pair {
  of: number
  against: number
}

/** Every other design against the first. */
export const againstFirst = (designs: number): Pair[] =>
  Array.from({ length: designs - 1 }, (_, index) => ({ of: index + 1, against: 0 }))

/** Every design against every one before it. */
export const allPairs = (designs: number): Pair[] =>
  Array.from({ length: designs }, (_, of) =>
    Array.from({ length: of }, (_, against) => ({ of, against })),
  ).flat()

/** What can be compared: a measure of the result, or one that is made of several for the comparison alone. */
export interface Compared {
  name: string
  label: string
  unit: StudyMeasure['unit']
  /** The difference of two designs at a confidence, on (0, 1); null where either has no such measure, or no interval of its kind is known. */
  of: (design: Simulated, against: Simulated, confidence: number) => PairedDifference | null
}

/** A measure of the result by name, as what is compared. */
export const comparedMeasure = ({
  name,
  label,
  unit,
}: { name: string } & Pick<StudyMeasure, 'label' | 'unit'>): Compared => ({
  name,
  label,
  unit,
  of(design, against, confidence) {
    const [here, there] = [design, against].map((each) =>
      measuresOf(each).find((measure) => measureName(measure) === name),
    )
    if (!here || !there || here.kind !== there.kind || here.kind === 'quantile') return null
    const [mine, theirs] = together(design, against)
    return differenceOf(observationsOf(here, mine)!, observationsOf(there, theirs)!, confidence)
  },
})

/** The shifts that both have, for one may have more of them: pairs of the same number. */
export function together(
  { shifts: one }: Simulated,
  { shifts: other }: Simulated,
): [readonly ShiftResult[], readonly ShiftResult[]] {
  const both = Math.min(one.length, other.length)
  return [one.slice(0, both), other.slice(0, both)]
}

/**
 * Judges all measures of all pairs together at the confidence of the family. What cannot be compared is no member of it;
 * what does not differ in any shift is one, for its size must not depend on what the shifts show.
 */
export function judgeTogether(
  designs: readonly Simulated[],
  pairs: readonly Pair[],
  measures: readonly Compared[],
  confidence: number,
): { pair: Pair; name: string; figure: DifferenceFigure }[] {
  const currency = currencyOf(designs[0]!.scenario)
  const members = pairs.flatMap((pair) =>
    measures.flatMap(({ name, label, unit, of }) => {
      const at = (level: number) => of(designs[pair.of]!, designs[pair.against]!, level)
      const measure = { label, unit: unitName(unit, currency) }
      return at(confidence) === null
        ? []
        : [{ pair, name, measure, at: at as (level: number) => PairedDifference }]
    }),
  )
  const figures = judgedFigures(members, confidence)
  return members.map(({ pair, name }, index) => ({ pair, name, figure: figures[index]! }))
}
