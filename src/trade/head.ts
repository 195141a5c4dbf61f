/** Taping heads: what tape they take, how fast they are built to run, and what legs and rolls fit. */
import { footPerMinute, inch } from './us-units.js'

/** Narrowest and widest tape, m, by the head's nominal size. Tape of 48 mm is sold as 2 in, of 72 mm as 3 in. Common practice, no source. */
export const headSizes = {
  '2 inch': { narrowest: 0.036, widest: 0.05 },
  '3 inch': { narrowest: 0.048, widest: 0.075 },
} as const

export type HeadSize = keyof typeof headSizes

/** A hair of rounding: tape of 50 mm fits a head up to 50 mm. */
const hair = 1e-9

/** Does a head that takes `narrowest` to `widest`, ends included, m, take tape of `width`? */
export const takesTape = (narrowest: number, widest: number, width: number): boolean =>
  width >= narrowest - hair && width <= widest + hair

/** Nominal head sizes that take tape of `width` m, the smaller first; empty where none does. Common practice, no source. */
export const headsFor = (width: number): HeadSize[] =>
  (Object.keys(headSizes) as HeadSize[]).filter((size) =>
    takesTape(headSizes[size].narrowest, headSizes[size].widest, width),
  )

/** Fastest belt that heads are usually built for, m/s: 80 and 100 ft/min. Common practice, no source. */
export const ratedSpeeds = { standard: 80 * footPerMinute, 'high-speed': 100 * footPerMinute } as const

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
