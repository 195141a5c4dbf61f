/** Keys of `type: sealer`: a belt-driven case sealer with its taping heads. */
import * as z from 'zod'
import { timeDistribution } from '../../scenario/distribution.js'
import { jams } from '../../scenario/jam-keys.js'
import { assume, choice, name, quantity, quantityOr, whole } from '../../scenario/kit.js'
import { speeds } from '../../scenario/speed-keys.js'
import {
  acceleration,
  breakdowns,
  passesTo,
  planned,
  rightOfWay,
  sensed,
  sideBySide,
  slowStart,
} from '../shared-keys.js'

const length = (doc: string) => quantity('length', doc, { above: 0 })

const cut = z.strictObject({
  'wipe-travel': assume(
    quantity('length', 'belt travel to wipe down the trailing leg', { from: 0, to: 100 }),
    '100 mm',
    'from memory, low confidence',
  ),
  reset: assume(
    quantity('time', 'time for the arm to swing back and cover the blade', { from: 0, to: 3600 }),
    '0.45 s',
    'from memory, low confidence',
  ),
})

const head = (position: string) =>
  z.strictObject({
    position: assume(
      length('distance from the start of the belts to the head'),
      position,
      'from memory, low confidence',
    ),
    'rated-speed': assume(
      quantity('speed', 'fastest belt that the head is built for', { above: 0 }),
      '24.4 m/min',
      'common practice, no source',
    ),
    takes: assume(
      z
        .tuple([length('narrowest tape'), length('widest tape')])
        .refine(([low, high]) => low <= high, {
          message: 'the narrowest tape comes first',
          params: { code: 'conflict', fix: 'swap the two' },
        })
        .describe('narrowest and widest tape that fits the head'),
      ['36 mm', '50 mm'],
      'common practice, no source',
    ),
    cut: assume(cut, {}, 'definition of the format'),
    drum: quantity('length', 'largest roll diameter that fits; only for `check`', {
      above: 0,
      to: 10,
    }).optional(),
  })

const heads = z
  .strictObject({
    top: head('1.2 m').optional(),
    bottom: head('0.9 m').optional(),
    left: head('1.2 m').optional(),
    right: head('1.2 m').optional(),
  })
  .refine((given) => Object.keys(given).length > 0, {
    message: 'a sealer needs at least one head',
    params: { code: 'missing-key', fix: 'name one of top, bottom, left, right' },
  })
  .describe('taping heads by their place; each has its own roll')

const perMillimetre = (what: string) =>
  quantity('time', `for each millimetre that the ${what} differs from the size before`, {
    from: 0,
    to: 3600,
  }).optional()

const sizeSetting = z.strictObject({
  by: assume(
    choice(
      ['machine', 'crew'],
      'machine: sets itself to each new size; crew: the sealer runs empty, then people set it',
    ),
    'machine',
    'definition of the format',
  ),
  time: assume(timeDistribution('time to set another size'), '0 s', 'definition of the format'),
  'per-mm': z
    .strictObject({ height: perMillimetre('height'), width: perMillimetre('width') })
    .optional()
    .describe('added to `time` for each millimetre of difference in outside size'),
  between: z
    .record(name, z.record(name, timeDistribution('added to `time` for this change')))
    .optional()
    .describe(
      'added to `time` for each change, such as `{small: {large: 4 min}, large: {small: 2 min}}`; every pair is needed',
    ),
})

export const sealer = z
  .strictObject({
    type: z
      .literal('sealer')
      .describe('tapes the seams of cases while driven belts carry them past its heads'),
    bed: assume(
      quantity('length', 'length of the driven belts; they hold a case until its tail has left', {
        above: 0,
        to: 100,
      }),
      '1.9 m',
      'from memory, low confidence',
    ),
    'belt-speed': assume(
      quantity('speed', 'speed of the driven belts', { above: 0 }),
      '24 m/min',
      'from memory, low confidence',
    ),
    flaps: assume(
      z.strictObject({
        'folded-by': assume(
          choice(
            ['machine', 'people'],
            'who folds the flaps; people: needs a crew with `stands-at` this sealer',
          ),
          'machine',
          'definition of the format',
        ),
        time: assume(
          timeDistribution('time to fold the flaps, in the place before the belts'),
          '0 s',
          'definition of the format',
        ),
      }),
      {},
      'definition of the format',
    ),
    'size-setting': assume(sizeSetting, {}, 'definition of the format'),
    heads: assume(heads, { top: {}, bottom: {} }, 'common practice, no source'),
    'minimum-gap': assume(
      quantity('length', 'minimum gap between cases on the belts; the heads may need more', {
        from: 0,
        to: 100,
      }),
      '300 mm',
      'from memory, low confidence',
    ),
    jams: jams.optional(),
    breakdowns: breakdowns.optional(),
    planned: planned.optional(),
    ...sensed,
    speeds: speeds.optional(),
    acceleration: acceleration.optional(),
    'slow-start': slowStart.optional(),
    'roll-change': assume(
      z.strictObject({
        time: assume(
          timeDistribution('time to change and thread one roll'),
          { lognormal: { mean: '90 s', cv: 0.4 } },
          'from memory, low confidence',
        ),
        'low-tape-warning': assume(
          quantityOr(
            'none',
            'length',
            'tape left when the head gives a warning; none: the roll runs out unnoticed',
          ),
          '40 m',
          'from memory, low confidence',
        ),
        'noticed-after': assume(
          whole('without a warning: number of unsealed cases until somebody notices', 0, 100_000),
          3,
          'from memory, low confidence',
        ),
        change: assume(
          choice(
            ['when-empty', 'at-warning-when-idle', 'at-break'],
            'when-empty: before the case that the roll cannot finish; at-warning-when-idle: after the warning, as soon as the machine is empty; at-break: after the warning, when a break begins',
          ),
          'when-empty',
          'definition of the format',
        ),
        'also-below': quantity(
          'length',
          'with a roll change, rolls of other heads with less tape left than this are changed too',
        ).optional(),
      }),
      {},
      'definition of the format',
    ),
    blade: z
      .strictObject({
        'service-after': quantity('cuts', 'number of cuts of one head until its blade is serviced', {
          above: 0,
        }),
        time: timeDistribution('time of a blade service'),
      })
      .optional()
      .describe('blade service; every shift starts with fresh blades'),
    'tape-breaks': z
      .strictObject({
        chance: quantity('share', 'chance for each strip that the tape breaks', { from: 0, to: 0.5 }),
        fix: timeDistribution('time to thread the tape again, once somebody is there'),
      })
      .optional()
      .describe('tape breaks: the strip is spoilt and applied again'),
    'dwell-spoils': assume(
      quantity(
        'share',
        'chance that a case needs taping again if it was under a head when the belts stopped',
        {
          from: 0,
          to: 1,
        },
      ),
      '0 %',
      'definition of the format',
    ),
    'right-of-way': rightOfWay.optional(),
    ...sideBySide,
    to: passesTo.optional(),
  })
  .describe('a case sealer')

export type SealerKeys = z.output<typeof sealer>

export type SizeSettingKeys = SealerKeys['size-setting']

export type SealerHead = NonNullable<SealerKeys['heads'][keyof SealerKeys['heads']]>
