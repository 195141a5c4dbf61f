/** What is said of a tape layout: width, price, mass, fit of the roll, and how its closure compares. */

/** SI; null where the scenario does not say. */
export interface TapeLayout {
  width: number
  leg: number
  pricePerMetre: number | null
  massPerMetre: number
  /** Mass of the tape on a full roll, its core left out, and its diameter. */
  rollMass: number
  rollDiameter: number
  /** Whether a full roll fits every head; null where a head's drum is not given. */
  fits: boolean | null
  /** The weakest of its cases over the closure that is known to hold, by legs and by seam; above 1 is better. Null without one. */
  legIndex: number | null
  seamIndex: number | null
  /** Codes of errors and warnings of `check`. */
  errors: string[]
  warnings: string[]
}
