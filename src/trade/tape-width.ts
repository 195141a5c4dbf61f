/** Tape of 2 inch (48 to 50 mm) or 3 inch (72 to 75 mm): what speaks for which. Guidance with its basis, not a norm. */
import type { Basis } from './basis.js'
import { inch, pound } from './us-units.js'

/** Gross weight up to which 2 inch is usual on single wall, and above which 3 inch is, kg: 30 and 65 lb. Project rule, low confidence. */
export const widthWeights = { narrowUpTo: 30 * pound, wideAbove: 65 * pound } as const

/** Least nominal width of tape on parcels by post, m: 2 in. Tape of 48 mm is sold as that; whether it will do is not verified. USPS Publication 2, 4-5.2. */
export const postalWidth = 2 * inch

interface Guidance {
  when: string
  suggestion: string
  basis: Basis
  source?: string
}

/** What a case or a site asks of the tape, by what triggers it. No standard is known that ties a width to a case weight. */
export const widthGuidance = {
  light: {
    when: 'gross weight up to about 14 kg (30 lb), single wall, flat fill',
    suggestion: '2 inch tape',
    basis: 'project rule',
  },
  middling: {
    when: 'gross weight of about 14 to 29 kg (30 to 65 lb)',
    suggestion: '2 inch tape of a heavier grade, or 3 inch; test',
    basis: 'project rule',
  },
  heavy: {
    when: 'gross weight above about 29 kg (65 lb)',
    suggestion: '3 inch tape, the H pattern or reinforced tape',
    basis: 'project rule',
  },
  doubleWall: {
    when: 'double wall, whose stiff flaps spring back',
    suggestion: '3 inch tape, the H pattern or reinforced tape',
    basis: 'common practice, no source',
  },
  overfill: {
    when: 'overfilled or bulging cases, or soft void fill',
    suggestion: '3 inch tape with an adhesive of high shear; better, cure the overfill',
    basis: 'common practice, no source',
  },
  surface: {
    when: 'board of much recycled fibre, dusty, damp or cold',
    suggestion: 'a better adhesive first, then width',
    basis: 'common practice, no source',
  },
  seam: {
    when: 'flap gap above 3 mm or poor centring',
    suggestion: '3 inch tape: what both cost of the overlap weighs less on it',
    basis: 'derived',
  },
  post: {
    when: 'sent by post',
    suggestion: 'tape of 2 inch or more, and plastic tape that is not reinforced as strong across as along',
    basis: 'published',
    source: 'USPS Publication 2, 4-5.2',
  },
  dangerousGoods: {
    when: 'boxes tested for dangerous goods',
    suggestion: 'close exactly as the test report says',
    basis: 'common practice, no source',
  },
  narrow: {
    when: '36 mm tape by machine',
    suggestion: 'possible for light cases, after a test',
    basis: 'common practice, no source',
  },
} as const satisfies Record<string, Guidance>
