/** Board limits: what gross weight and size a box certificate allows. */
import type { Wall } from './case.js'
import { inch, pound, poundForcePerInch, psi } from './us-units.js'

/**
 * How well a figure is known: `published` may be quoted with its source; `derived` follows from geometry, kinematics or algebra. The others are
 * assumptions to be edited, never norms; a `project rule` is a caution of this program.
 */
type Basis =
  | 'published'
  | 'derived'
  | 'common practice, no source'
  | 'from memory, low confidence'
  | 'project rule'

/** One row of the carriers' table. A box satisfies it by burst or by edge crush, whichever is certified. */
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
  /** Least edge crush strength, N/m. */
  ect: number
  basis: Basis
}

/** Where the table comes from, for a person to read. */
export const boardSource =
  'Item 222 of the National Motor Freight Classification and Rule 41 of the Uniform Freight Classification, by way of trade copies; present standing not verified'

type Printed = readonly [weight: number, united: number, burst: number | null, ect: number]

const rowsFrom = (wall: Wall, kind: string, basis: Basis, printed: readonly Printed[]): BoardRow[] =>
  printed.map(([weight, united, burst, ect]) => ({
    name: `${kind}, ${weight} lb and ${united} in`,
    wall,
    weight: weight * pound,
    united: united * inch,
    burst: burst === null ? null : burst * psi,
    ect: ect * poundForcePerInch,
    basis,
  }))

/**
 * Item 222 / Rule 41, weakest first: lb, united in, psi, lb/in. Single and double wall: two trade copies agree row by
 * row (one prints 55 for the 82 lb/in of the last double-wall row: a slip). Edge crush of triple wall from memory.
 */
export const boardRows: readonly BoardRow[] = [
  ...rowsFrom('single', 'single wall', 'published', [
    [20, 40, 125, 23],
    [35, 50, 150, 26],
    [50, 60, 175, 29],
    [65, 75, 200, 32],
    [80, 85, 250, 40],
    [95, 95, 275, 44],
    [120, 105, 350, 55],
  ]),
  ...rowsFrom('double', 'double wall', 'published', [
    [80, 85, 200, 42],
    [100, 95, 275, 48],
    [120, 105, 350, 51],
    [140, 110, 400, 61],
    [160, 115, 500, 71],
    [180, 120, 600, 82],
  ]),
  ...rowsFrom('triple', 'triple wall', 'from memory, low confidence', [
    [240, 110, null, 67],
    [260, 115, null, 80],
    [280, 120, null, 90],
    [300, 125, null, 112],
  ]),
]

/** Rows for single-wall E flute, which bears less. One trade copy, so not to be quoted as the rule. */
export const eFluteRows: readonly BoardRow[] = rowsFrom('single', 'E flute', 'common practice, no source', [
  [35, 50, 150, 26],
  [50, 60, 200, 32],
])

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
