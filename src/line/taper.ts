/** A mechanism that tapes, as the balances, the tape and the cost of the line see it. Lengths in m off the roll. */
import type { Tallies } from './unit.js'

interface TapingHead {
  readonly name: string
  /** Tape used up in any way; of it lost with the rolls, and in strips that broke. */
  readonly used: number
  readonly lost: number
  readonly spoilt: number
  /** Tape that has come off rolls less what is accounted for: zero but for rounding. */
  imbalance(): number
}

export interface Taper {
  readonly name: string
  readonly unit: Tallies
  readonly heads: readonly TapingHead[]
  /** A case may leave it without its tape: past an empty roll, or with a strip that dwelt too long under a head. */
  readonly mayLeaveOpen: boolean
}
