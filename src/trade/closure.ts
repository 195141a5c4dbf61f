/** The closure index: how a taped closure compares with one that is known to hold. Ratios only, never a life in hours. */

/** What the holding of one strip depends on. Lengths m; the load in any unit, the same for both closures. */
export interface Closure {
  width: number
  leg: number
  /** Gap between the closed outer flaps. */
  gap: number
  /** How far the strip lies off the middle of the seam. */
  offset: number
  load: number
  /** Length of the closed seam. */
  seam: number
}

/** A closure over its reference; above 1 is better. All four hold for like tape, board, wipe-down and temperature. */
export interface ClosureIndex {
  /** Slow sliding of the legs on the end panels. */
  leg: number
  /** Slow sliding of the strip off the weaker flap of the seam. */
  seam: number
  /** Peeling of the strip, for its load. */
  peel: number
  /** Tape on the weaker flap. */
  coverage: number
}

/** Tape on the flap that has less of it, m: half of what the gap leaves, less the offset; 0 where it misses the flap. Derived. */
export const coverage = ({ width, gap, offset }: Pick<Closure, 'width' | 'gap' | 'offset'>): number =>
  Math.max(0, (width - gap) / 2 - offset)

/**
 * Time that an overlap of length L and width w holds a shear load F by viscous flow of an adhesive of viscosity n and
 * thickness h: t = n w L^2 / (2 h F). S. Abbott, practical adhesion (text on shear of pressure-sensitive adhesives), after
 * Dahlquist. Only its ratios are used here, in which n and h drop out: for a cross-linked adhesive it is pessimistic, and
 * tests often end in peel.
 */
const shear = (width: number, overlap: number, load: number): number => (width * overlap * overlap) / load

/**
 * `closure` over `reference`. In shear, the leg lies along its load and the tape's width across; over the seam the load
 * pulls across the tape, so the overlap is the coverage and the seam is the width. Peel force goes with the width. A
 * reference that misses a flap gives Infinity or NaN for seam and coverage. Ratios derived from the shear
 * formula; they prove nothing: see `closureProof`.
 */
export function closureIndex(closure: Closure, reference: Closure): ClosureIndex {
  const over = (of: (each: Closure) => number) => of(closure) / of(reference)
  return {
    leg: over(({ width, leg, load }) => shear(width, leg, load)),
    seam: over((each) => shear(each.seam, coverage(each), each.load)),
    peel: over(({ width, load }) => width / load),
    coverage: over(coverage),
  }
}

/** Least tape on each flap, m. Project rule, low confidence. */
export const leastCoverage = 0.015

/** To be printed beside every index and every choice of width. */
export const closureProof =
  'Width, leg and pattern must be proved on the real case by a closure or distribution test (ASTM D4169, ISTA series); the index cannot.'
