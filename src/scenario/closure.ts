/** Keys on what a taped closure depends on: for `check`, and for the cost of closures that open later. None has a default. */
import * as z from 'zod'
import { refer } from './editor.js'
import { broken, choice, money, quantity, share, withEvidence } from './kit.js'
import { exampleApart } from './meant.js'
import { type Dimension, parseQuantity } from './quantity.js'
import { fault, type Read } from './reading.js'
import { guessedOr } from './values.js'

/** Load on one closure: in newtons, or as a share of the load on the reference closure. */
type ClosureLoad = { newtons: number } | { share: number }

const loadExample = '40 N'

function readLoad(text: unknown): Read<ClosureLoad> {
  const share = parseQuantity(text, 'share')
  if ('value' in share && share.value > 0) return { value: { share: share.value } }
  const force = parseQuantity(text, 'force')
  if ('value' in force && force.value > 0) return { value: { newtons: force.value } }
  const written = String(text).slice(0, 200)
  return fault(
    'value' in force || 'value' in share ? 'out-of-range' : force.code,
    'a load must be a force above 0 (N, kN, lbf), or a share above 0 % of the load on the reference',
    `write it like \`${exampleApart(loadExample, written)}\` or \`${exampleApart('120 %', written)}\``,
  )
}

const load = withEvidence(
  (written) =>
    guessedOr(written, {
      read: readLoad,
      numberOf: (each) => ('share' in each ? each.share : each.newtons),
      isAlike: (one, other) => 'share' in one === 'share' in other,
      ...{ spread: 'lognormal', ends: { least: 0, most: Infinity } },
    }),
  {
    anyOf: [refer('force'), refer('share')],
    description:
      'load that opens the closure of the heaviest case: a force, or a share of the load on the reference',
    examples: [loadExample, '120 %'],
  },
  (value) =>
    'share' in value
      ? { of: { dimension: 'share' }, within: ['share'] }
      : { of: { dimension: 'force' }, within: ['newtons'] },
)

const gap = quantity('length', 'gap between the closed outer flaps', { from: 0, to: 0.1 })
const offset = quantity('length', 'distance of the strip from the middle of the seam', { from: 0, to: 0.1 })

export const closure = z
  .strictObject({
    'seam-gap': gap.optional(),
    'centring-error': offset.optional(),
    load: load.optional(),
    reference: z
      .strictObject({
        note: z
          .string()
          .max(500)
          .optional()
          .describe('which closure this is, and how you know that it holds'),
        width: quantity('length', 'its tape width', { above: 0, to: 1 }),
        leg: quantity('length', 'its leg', { above: 0, to: 1 }),
        'seam-length': quantity('length', 'length of its seam (default: the seam of the case)', {
          above: 0,
          to: 10,
        }).optional(),
        'seam-gap': gap.optional(),
        'centring-error': offset.optional(),
        load: quantity('force', 'its load', { above: 0 }).optional(),
      })
      .optional()
      .describe('a closure that is known to hold; others are compared with it'),
    reopens: z
      .strictObject({
        chance: share('of the good cases that left the line'),
        cost: money(null, 'cost of one, without the labour of closing it again').optional(),
        repair: quantity(
          'time',
          'time of one person to close it again; the cost needs money.labour',
        ).optional(),
      })
      .optional()
      .describe(
        'closures that open after the line, in storage or transport: their expected number and cost are reported',
      ),
  })
  .describe('load on the closure, accuracy of the tape, and how often closures open later')

/** A temperature from the cold store to the tropics, K, so that a slip of the unit is found. */
const temperature = (doc: string) => quantity('temperature', doc, { from: 213, to: 373 })

/** Coldest and warmest, K. */
export const temperatures = (doc: string) =>
  z
    .tuple([temperature('coldest'), temperature('warmest')])
    .refine(
      ([cold, warm]) => cold <= warm,
      broken('conflict', 'the colder value comes first', 'swap the two'),
    )
    .describe(doc)

export const site = z
  .strictObject({
    temperature: temperatures('lowest and highest temperature at the sealer').optional(),
  })
  .describe('the place of the line; only for `check`')

const ofSheet = (dimension: Dimension, what: string, most?: number) =>
  quantity(dimension, `data sheet: ${what}; only for \`check\``, {
    above: 0,
    ...(most === undefined ? {} : { to: most }),
  }).optional()

/** What a tape's data sheet says by the published test methods. */
export const dataSheet = {
  adhesion: ofSheet('strength-of-width', 'peel adhesion on steel (ASTM D3330; ISO 29862)'),
  shear: ofSheet('time', 'static shear on fibreboard (ASTM D3654 procedure B; ISO 29863)'),
  tensile: ofSheet('strength-of-width', 'breaking strength (ASTM D3759; ISO 29864)'),
  elongation: ofSheet('share', 'elongation at break (ASTM D3759; ISO 29864)', 100),
  'applies-at': temperatures(
    'data sheet: lowest and highest temperature for applying the tape; only for `check`',
  ).optional(),
}

/** What a case asks of its closure. */
export const caseDemands = {
  'ships-by': choice(['pallet', 'parcel', 'post'], 'how the case is shipped; only for `check`').optional(),
  recycled: z
    .boolean()
    .optional()
    .describe('true: its liners have much recycled fibre, so tape holds less well; only for `check`'),
  overfill: quantity('length', 'how far the contents push the closed flaps up; only for `check`', {
    from: 0,
    to: 1,
  }).optional(),
}
