/** Tape of 2 inch (48 to 50 mm) or 3 inch (72 to 75 mm): what speaks for which. Guidance with its basis, not a norm. */
import { inch, pound } from './us-units.js'

/** Gross weight up to which 2 inch is usual on single wall, and above which 3 inch is, kg: 30 and 65 lb. Project rule, low confidence. */
export const widthWeights = { narrowUpTo: 30 * pound, wideAbove: 65 * pound } as const

/** Least nominal width of tape on parcels by post, m: 2 in. Tape of 48 mm is sold as that; whether it will do is not verified. USPS Publication 2, 4-5.2. */
export const postalWidth = 2 * inch

/** What a case or a site asks of the tape, by what triggers it, and how well that is known. No standard is known that ties a width to a case weight. */
export const widthGuidance = {
  /** Gross weight of about 14 to 29 kg (30 to 65 lb). Project rule. */
  middling: { suggestion: 'use 2 inch tape of a heavier grade, or 3 inch tape, and test the closure' },
  /** Gross weight above about 29 kg (65 lb). Project rule. */
  heavy: { suggestion: 'use 3 inch tape, the H pattern or reinforced tape' },
  /** Stiff flaps that spring back. */
  doubleWall: {
    suggestion: 'use 3 inch tape, the H pattern or reinforced tape',
    basis: 'common practice, no source',
  },
  /** Overfilled or bulging cases, or soft void fill. */
  overfill: {
    suggestion: 'use 3 inch tape with a high-shear adhesive; better, stop the overfill',
    basis: 'common practice, no source',
  },
  /** Board of much recycled fibre, dusty, damp or cold. */
  surface: {
    suggestion: 'use a better adhesive first, then wider tape',
    basis: 'common practice, no source',
  },
  post: {
    suggestion:
      'use tape of 2 inch or more; plastic tape that is not reinforced must be equally strong in both directions',
    source: 'USPS Publication 2, 4-5.2',
  },
} as const
