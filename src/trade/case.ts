/** Case geometry: the trade packs by inside and quotes machines by outside dimensions; this turns one into the other. */

/** Nominal board thickness by flute, m. Fibre Box Handbook by way of trade copies; BC and the others from memory. */
export const flutes = { A: 0.0048, B: 0.0032, C: 0.004, E: 0.0016, F: 0.0008, EB: 0.0048, BC: 0.007 } as const

export type Flute = keyof typeof flutes

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
