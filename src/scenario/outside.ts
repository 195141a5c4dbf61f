/** The outside size of a case of the scenario, whichever way it was given. */
import { flutes, outsideFromInside, type Size } from '../trade/case.js'
import type { CaseKind } from './case-keys.js'
import { varianceOf } from './law.js'
import type { Scenario } from './schema.js'
import { endsOf, meanSide, type Side, type SizeLaw } from './size-law.js'

/** Outside size, m; from the inside size and the flute where that is what the file gives, and the means of sides that vary. */
export function outsideSize(kind: CaseKind): Size {
  if (kind.inside) return outsideFromInside(kind.inside, flutes[kind.flute!])
  return { length: meanSide(kind.length!), width: meanSide(kind.width!), height: meanSide(kind.height!) }
}

/** A side of a case, m, or its law. */
export const sideOf = (kind: CaseKind, side: keyof Size): Side => kind[side] ?? outsideSize(kind)[side]

/** The law of a side that varies from case to case; null where all are alike in it. */
export function lawOf(kind: CaseKind, side: keyof Size): SizeLaw | null {
  const given = kind[side]
  return typeof given === 'object' ? given : null
}

/** Whether cases of this kind come in different sizes. */
export const varies = (
  kind: CaseKind,
  sides: readonly (keyof Size)[] = ['length', 'width', 'height'],
): boolean => sides.some((side) => lawOf(kind, side) !== null)

/** Outside size of the smallest and the largest of a kind, m: one size but for what is made to measure. */
export function sizeEnds(kind: CaseKind): { least: Size; most: Size } {
  const outside = outsideSize(kind)
  const ends = (side: keyof Size) => endsOf(lawOf(kind, side) ?? outside[side])
  const [length, width, height] = [ends('length'), ends('width'), ends('height')]
  return {
    least: { length: length[0], width: width[0], height: height[0] },
    most: { length: length[1], width: width[1], height: height[1] },
  }
}

/** Outside length along the travel of each kind, m; its mean where it varies. */
export const lengthsOf = ({ cases }: Scenario): number[] =>
  Object.values(cases).map((kind) => outsideSize(kind).length)

/** Variance of the outside length within each kind, m2. */
export const lengthVariancesOf = ({ cases }: Scenario): number[] =>
  Object.values(cases).map((kind) => {
    const law = lawOf(kind, 'length')
    return law ? varianceOf(law) : 0
  })

/** A case by name, and its outside length along its travel, m: the largest where that varies by a law. */
export interface Longest {
  name: string
  length: number
  law: SizeLaw | null
}

/** The case that is longest along its travel, of those whose size is given. */
export function longestCase(scenario: Scenario): Longest | null {
  return Object.entries(scenario.cases)
    .flatMap(([name, kind]) =>
      (kind.inside ? kind.flute !== undefined : kind.length !== undefined)
        ? [{ name, length: endsOf(sideOf(kind, 'length'))[1], law: lawOf(kind, 'length') }]
        : [],
    )
    .reduce<Longest | null>((most, each) => (most && most.length >= each.length ? most : each), null)
}
