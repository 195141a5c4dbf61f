/** Board limits: what gross weight and size a box certificate allows. */
import type { Basis } from './basis.js'
import type { Wall } from './case.js'
import { inch, pound, poundForcePerInch, poundPerThousandSquareFeet, psi } from './us-units.js'

/** One row of the carriers' table. A box satisfies it by burst (with facings) or by edge crush, whichever is certified. */
export interface BoardRow {
  /** How a person finds the row in the table. */
  name: string
  wall: Wall
  /** Greatest gross weight, kg. */
  weight: number
  /** Greatest outside united size, m. */
  united: number
  /** Least burst strength, Pa; null where the table asks for puncture resistance in its place. */
  burst: number | null
  /** Least combined weight of the facings on the way by burst, kg/m2. */
  facings: number
  /** Least edge crush strength, N/m. */
  ect: number
  basis: Basis
  /** Where the row comes from, for a person to read beside a finding. */
  source: string
}

/** Where the table comes from, for a person to read. */
export const boardSource =
  'Item 222 of the National Motor Freight Classification and Rule 41 of the Uniform Freight Classification, by way of trade copies; present standing not verified'

type Printed = readonly [weight: number, united: number, burst: number | null, facings: number, ect: number]

interface Origin {
  wall: Wall
  kind: string
  basis: Basis
  source: string
}

const rowsFrom = ({ wall, kind, basis, source }: Origin, printed: readonly Printed[]): BoardRow[] =>
  printed.map(([weight, united, burst, facings, ect]) => ({
    name: `${kind}, ${weight} lb and ${united} in`,
    wall,
    weight: weight * pound,
    united: united * inch,
    burst: burst === null ? null : burst * psi,
    facings: facings * poundPerThousandSquareFeet,
    ect: ect * poundForcePerInch,
    basis,
    source,
  }))

const published = (wall: Wall): Origin => ({
  wall,
  kind: `${wall} wall`,
  basis: 'published',
  source: boardSource,
})

/**
 * Item 222 / Rule 41, weakest first: lb, united in, psi, lb/1000 ft2, lb/in. Single and double wall: two trade copies
 * agree row by row (one prints 55 for the 82 lb/in of the last double-wall row: a slip). Edge crush of triple wall from memory.
 */
export const boardRows: readonly BoardRow[] = [
  ...rowsFrom(published('single'), [
    [20, 40, 125, 52, 23],
    [35, 50, 150, 66, 26],
    [50, 60, 175, 75, 29],
    [65, 75, 200, 84, 32],
    [80, 85, 250, 111, 40],
    [95, 95, 275, 138, 44],
    [120, 105, 350, 180, 55],
  ]),
  ...rowsFrom(published('double'), [
    [80, 85, 200, 92, 42],
    [100, 95, 275, 110, 48],
    [120, 105, 350, 126, 51],
    [140, 110, 400, 180, 61],
    [160, 115, 500, 222, 71],
    [180, 120, 600, 270, 82],
  ]),
  ...rowsFrom(
    {
      wall: 'triple',
      kind: 'triple wall',
      basis: 'from memory, low confidence',
      source: 'after Item 222 and Rule 41, edge crush from memory, low confidence',
    },
    [
      [240, 110, null, 168, 67],
      [260, 115, null, 222, 80],
      [280, 120, null, 264, 90],
      [300, 125, null, 360, 112],
    ],
  ),
]

/** Rows for single-wall E flute, which bears less. One trade copy, so not to be quoted as the rule. */
export const eFluteRows: readonly BoardRow[] = rowsFrom(
  {
    wall: 'single',
    kind: 'E flute',
    basis: 'common practice, no source',
    source: 'one trade copy of the rows for E flute, not to be quoted as the rule',
  },
  [
    [35, 50, 150, 66, 26],
    [50, 60, 200, 84, 32],
  ],
)

/** What a box certificate says: edge crush in N/m, burst in Pa; either, both or none. */
export interface Certificate {
  wall: Wall
  ect?: number | undefined
  burst?: number | undefined
  /** Board thickness class, where known: E flute has rows of its own. */
  flute?: string | undefined
}

/** A metric certificate is printed to 0.01 kN/m and 1 kPa: half of the last digit must not cost a row. */
const ectRounding = 5
const burstRounding = 500

const rowsOf = (wall: Wall, flute?: string): readonly BoardRow[] =>
  flute === 'E' && wall === 'single' ? eFluteRows : boardRows.filter((each) => each.wall === wall)

/**
 * Rows that the certificate satisfies by edge crush or by burst, weakest first; empty where it is below the first row or
 * says neither. The way by burst also asks for facings, which it cannot check. Source: see `boardSource`.
 */
export function rowsFor({ wall, ect = 0, burst = 0, flute }: Certificate): BoardRow[] {
  return rowsOf(wall, flute).filter(
    (each) => ect + ectRounding >= each.ect || (each.burst !== null && burst + burstRounding >= each.burst),
  )
}

/** The strongest row that the certificate satisfies: its weight and united size both bind; undefined for none. */
export const limitsOf = (certificate: Certificate): BoardRow | undefined => rowsFor(certificate).at(-1)

/** A rounding of units must not cost a row: a case of exactly 65 lb is within 65 lb. */
const within = (value: number, limit: number): boolean => value <= limit * (1 + 1e-9)

/** Does the row allow this gross weight, kg, in this united size, m? Both limits bind. */
export const allows = (limits: BoardRow, weight: number, united: number): boolean =>
  within(weight, limits.weight) && within(united, limits.united)

/** The weakest row of a wall that allows the case (kg, m): what to ask the box maker for; undefined where none does. */
export const adequateRow = (
  wall: Wall,
  weight: number,
  united: number,
  flute?: string,
): BoardRow | undefined => rowsOf(wall, flute).find((each) => allows(each, weight, united))
