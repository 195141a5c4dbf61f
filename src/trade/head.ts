/** Taping heads: what tape they take, and what legs and rolls fit. */
import { inch } from './us-units.js'

/** A hair of rounding: tape of 50 mm fits a head up to 50 mm. */
const hair = 1e-9

/** Does a head that takes `narrowest` to `widest`, ends included, m, take tape of `width`? */
export const takesTape = (narrowest: number, widest: number, width: number): boolean =>
  width >= narrowest - hair && width <= widest + hair

/** Usual leg settings, m: about 2 and 2 3/4 in; in hand work 2 to 3 in are seen. Common practice, no source. */
export const legSettings = [0.05, 0.07] as const

/** Do the legs of top and bottom strip clear one another on the end panel? Height must exceed their sum, all m. Derived. */
export const legsFit = (outsideHeight: number, topLeg: number, bottomLeg: number): boolean =>
  outsideHeight > topLeg + bottomLeg + hair

/** Largest roll that common machine drums take, m: 14 to 16 in. From memory, low confidence. */
export const drumDiameters = { smallest: 14 * inch, largest: 16 * inch } as const

/**
 * Share of the tape's elongation at break (ASTM D3759; ISO 29864) that the head's stretch uses up, both as shares of the
 * length; infinite for tape that does not give. Derived.
 */
export const elongationUsed = (stretch: number, elongation: number): number =>
  stretch === 0 ? 0 : stretch / elongation
