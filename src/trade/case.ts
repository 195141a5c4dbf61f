/** Case geometry: the trade packs by inside and quotes machines by outside dimensions; this turns one into the other. */
import { inch } from './us-units.js'

/** Number of fluted layers of the board, in words. */
export type Wall = 'single' | 'double' | 'triple'

interface FluteFacts {
  /** Nominal thickness of the board, m. */
  thickness: number
  wall: Wall
}

const flute = (millimetres: number, wall: Wall): FluteFacts => ({ thickness: millimetres / 1000, wall })

/**
 * Nominal board by flute. Single wall: Fibre Box Handbook, by way of trade copies; copies differ most on A, and European lists
 * on B (2.5 to 3.2 mm) and C (3.5 to 4.2 mm). BC: common practice, 6.5 to 7.5 mm, no source. EB: 4.6 to 5.0 mm, from memory.
 */
export const fluteTable = {
  A: flute(4.8, 'single'),
  B: flute(3.2, 'single'),
  C: flute(4, 'single'),
  E: flute(1.6, 'single'),
  F: flute(0.8, 'single'),
  EB: flute(4.8, 'double'),
  BC: flute(7, 'double'),
} as const satisfies Record<string, FluteFacts>

type Flute = keyof typeof fluteTable

/** Nominal board thickness by flute, m; see `fluteTable` for where each comes from. */
export const flutes = Object.fromEntries(
  Object.entries(fluteTable).map(([name, { thickness }]) => [name, thickness]),
) as Record<Flute, number>

/** A case's three dimensions, m: length and width of the opening, height from opening to base. */
export interface Size {
  length: number
  width: number
  height: number
}

/**
 * Outside size of a closed regular slotted case from its inside size: one board on each side in length and
 * width, two layers of flaps above and two below in height. Derived; agrees with the usual C-flute allowance
 * of 5/16, 5/16 and 5/8 in (from memory).
 */
export function outsideFromInside(inside: Size, board: number): Size {
  return {
    length: inside.length + 2 * board,
    width: inside.width + 2 * board,
    height: inside.height + 4 * board,
  }
}

/** United size, m: outside length + width + height, by which carriers bound a case. Item 222 and Rule 41 (see `board`). */
export const unitedSize = (outside: Size): number => outside.length + outside.width + outside.height

/** Widest gap between closed outer flaps that is taped as a tight seam, m: 1/8 in. Common practice, no source. */
export const tightSeamGap = 0.125 * inch

/** Widest gap between closed outer flaps at all, m: 1/4 in. US Army FM 38-701 on slotted styles. */
export const widestSeamGap = 0.25 * inch
