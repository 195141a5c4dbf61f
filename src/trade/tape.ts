/** Tape by hand: strips, rolls and mass. No randomness. */

/** Tape on one face of a centre seam with a leg down each end (the C pattern), m. Derived. */
export const stripLength = (caseLength: number, leg: number): number => caseLength + 2 * leg

/** Tape drawn off the roll for that strip when the head stretches it by the share `stretch`, m. */
export const drawnLength = (caseLength: number, leg: number, stretch: number): number =>
  stripLength(caseLength, leg) / (1 + stretch)

/** Whole strips of `drawn` metres that a roll of `usable` metres gives; a rounding error does not cost a strip. */
export const casesPerRoll = (usable: number, drawn: number): number => Math.floor(usable / drawn + 1e-9)

/** Film density, kg/m3: biaxially oriented polypropylene 902 to 907 (ASTM D1505 on a trade data sheet). */
const filmDensity = 905
/** Adhesive density, kg/m3: 950 to 1050 (from memory). */
const adhesiveDensity = 1000
/** Share of the adhesive in the thickness: 20 of 48 micrometres in a common machine tape (from memory). */
const adhesiveShare = 20 / 48

/** Mass of a metre of tape, kg/m, from its width and total thickness, m. */
export const massPerMetre = (width: number, thickness: number): number =>
  width * thickness * (filmDensity * (1 - adhesiveShare) + adhesiveDensity * adhesiveShare)
