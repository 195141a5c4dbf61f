/** The outside size of a case of the scenario, whichever way it was given. */
import { flutes, outsideFromInside, type Size } from '../trade/case.js'
import type { CaseKind } from './case-keys.js'
import type { Scenario } from './schema.js'

/** Outside size, m; from the inside size and the flute where that is what the file gives. */
export function outsideSize(kind: CaseKind): Size {
  if (kind.inside) return outsideFromInside(kind.inside, flutes[kind.flute!])
  return { length: kind.length!, width: kind.width!, height: kind.height! }
}

/** Outside length along the travel of each kind, m. */
export const lengthsOf = ({ cases }: Scenario): number[] =>
  Object.values(cases).map((kind) => outsideSize(kind).length)

/** A case by name, and its outside length along its travel, m. */
export interface Longest {
  name: string
  length: number
}

/** The case that is longest along its travel, of those whose size is given. */
export function longestCase(scenario: Scenario): Longest | null {
  return Object.entries(scenario.cases)
    .flatMap(([name, kind]) =>
      (kind.inside ? kind.flute !== undefined : kind.length !== undefined)
        ? [{ name, length: outsideSize(kind).length }]
        : [],
    )
    .reduce<Longest | null>((most, each) => (most && most.length >= each.length ? most : each), null)
}
