/** Tape by hand: strips, rolls and mass. No randomness. */

/**
 * Tape drawn off the roll, m, for a strip on one face of a centre seam with a leg down each end (the C pattern), when the head stretches it by
 * the share `stretch`. Derived.
 */
export const drawnLength = (caseLength: number, leg: number, stretch: number): number =>
  (caseLength + 2 * leg) / (1 + stretch)

/** Whole strips of `drawn` metres that a roll of `usable` metres gives; a rounding error does not cost a strip. */
export const casesPerRoll = (usable: number, drawn: number): number => Math.floor(usable / drawn + 1e-9)

/** Roll changes of one head over `cases`, its first roll full at the start. Infinite where a roll gives no strip. Derived. */
export const rollChanges = (cases: number, perRoll: number): number =>
  Math.max(0, Math.ceil(cases / perRoll) - 1)

/** Outside diameter of a core of 76 mm (3 in) inside diameter, m. From memory, low confidence. */
export const coreDiameter = 0.085

/** Outside diameter of a full roll, m: the tape's side area, length x thickness, lies as a ring around the core. Derived. */
export const rollDiameter = (roll: number, thickness: number): number =>
  Math.sqrt(coreDiameter * coreDiameter + (4 * roll * thickness) / Math.PI)

/** Film density, kg/m3: biaxially oriented polypropylene 902 to 907 (ASTM D1505 on a trade data sheet). */
const filmDensity = 905
/** Adhesive density, kg/m3: 950 to 1050 (from memory). */
const adhesiveDensity = 1000
/** Share of the adhesive in the thickness: 20 of 48 micrometres in a common machine tape (from memory). */
const adhesiveShare = 20 / 48

/** Mass of a square metre of tape, kg/m2, from the thickness of its film and its adhesive, m. Derived from their densities. */
export const arealMass = (film: number, adhesive: number): number =>
  film * filmDensity + adhesive * adhesiveDensity

/** Film and adhesive in a tape of which only the total thickness is known, m. From memory, low confidence. */
export const layersOf = (thickness: number): { film: number; adhesive: number } => ({
  film: thickness * (1 - adhesiveShare),
  adhesive: thickness * adhesiveShare,
})

/** Mass of a metre of tape, kg/m, from its width and total thickness, m. */
export const massPerMetre = (width: number, thickness: number): number =>
  // of a tape of 1 m thickness the areal mass is the density
  width * thickness * arealMass(1 - adhesiveShare, adhesiveShare)

/** Mass of the tape on a roll, kg, its core left out, from length and width, m, and kg/m2. Derived. */
export const rollMass = (roll: number, width: number, perArea: number): number => roll * width * perArea
