/** Compares designs that saw the same random numbers: every measure of each less that of another, shift by shift. */

import { type DifferenceFigure, differenceOf, judgedFigures } from '../../answers/difference-figure.js'
import { layoutOfDifference } from '../../answers/difference-with-inputs.js'
import {
  measureName,
  measuresOf,
  observationsOf,
  type Simulated,
  type StudyMeasure,
} from '../../answers/figures.js'
import type { Draws } from '../../answers/with-inputs.js'
import { currencyOf, unitName } from '../../catalogue/unit-name.js'
import type { ShiftResult } from '../../line/line.js'
import type { Observations } from '../../statistics/estimate.js'
import type { Layout } from '../../statistics/layout.js'
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
  /** What takes its numbers from shifts of a design; null where that has no such measure, or no interval is known of differences of its kind. */
  of: (design: Simulated) => ((shifts: readonly ShiftResult[]) => Observations) | null
}

/** A design with the draws of its inputs; null where these are held fixed. */
export type Drawn = Simulated & { draws?: Draws | null }

/** The difference of two designs at a confidence, on (0, 1); null where they cannot be compared. */
export function differenceAt(
  { of }: Compared,
  design: Simulated,
  against: Simulated,
  confidence: number,
): PairedDifference | null {
  const [mine, theirs] = together(design, against)
  const [here, there] = [of(design)?.(mine), of(against)?.(theirs)]
  return here && there && here.kind === there.kind ? differenceOf(here, there, confidence) : null
}

/** What the draws that both saw say of it; null where inputs are held fixed. */
export function layoutAt({ of }: Compared, design: Drawn, against: Drawn): Layout | null {
  const drawn = (each: Drawn) => {
    const taken = each.draws ? of(each) : null
    return taken === null ? [] : each.draws!.of.map(({ shifts }) => taken(shifts))
  }
  return layoutOfDifference(drawn(design), drawn(against))
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
  of(design) {
    const measure = measuresOf(design).find((each) => measureName(each) === name)
    if (!measure || measure.kind === 'quantile') return null
    return (shifts) => observationsOf(measure, shifts)!
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
  designs: readonly Drawn[],
  pairs: readonly Pair[],
  measures: readonly Compared[],
  confidence: number,
): { pair: Pair; name: string; figure: DifferenceFigure }[] {
  const currency = currencyOf(designs[0]!.scenario)
  const members = pairs.flatMap((pair) => {
    const [design, against] = [designs[pair.of]!, designs[pair.against]!]
    return measures
      .filter((compared) => differenceAt(compared, design, against, confidence) !== null)
      .map((compared) => ({
        ...{ pair, name: compared.name, layout: layoutAt(compared, design, against) },
        measure: { label: compared.label, unit: unitName(compared.unit, currency) },
        at: (level: number) => differenceAt(compared, design, against, level)!,
      }))
  })
  const figures = judgedFigures(members, confidence)
  return members.map(({ pair, name }, index) => ({ pair, name, figure: figures[index]! }))
}
