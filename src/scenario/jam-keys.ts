/** Keys of `jams`, on any piece that handles cases: one sort of jam, or several by their names. */
import * as z from 'zod'
import { timeDistribution } from './distribution.js'
import { assume, bare, name, quantity } from './kit.js'
import { forms } from './walk.js'

/** One bit of a number stands for each. */
const mostKinds = 20

const jam = z
  .strictObject({
    chance: quantity(
      'share',
      'chance that a case jams; of a sealer at the first head, elsewhere at the end',
      {
        from: 0,
        to: 1,
      },
    ),
    clear: timeDistribution('time to clear a jam, once somebody is there'),
    'case-lost': assume(
      quantity('share', 'share of the jammed cases that are spoilt', { from: 0, to: 1 }),
      '0 %',
      'definition of the format',
    ),
    'tape-factor': assume(bare('what this tape does to the chance', 0, 1000), 1, 'definition of the format'),
    by: name.describe('the crew that clears it; when not given whoever does `jams`').optional(),
    isolate: quantity(
      'time',
      'time to isolate the energy of the machine and lock it before hands go in, and as long again after; when not given it is part of `clear`. Local codes and the manual of the machine come first',
      { from: 0, to: 86_400 },
    ).optional(),
  })
  .describe('jams: drawn for each case, chance x its jam-factor x tape-factor')

const named = z
  .record(name, jam)
  .refine((kinds) => Object.keys(kinds).length <= mostKinds, {
    message: `at most ${mostKinds} kinds of jam`,
    params: { code: 'out-of-range', fix: 'put rare ones together' },
  })
  .describe('kinds of jam by name, each with its chance and its clearing; counted apart')

export const jams = z
  .union([jam, named])
  .describe(
    'jams: of one kind, or a map of kinds by name; the piece stands with all that is in it until a jam is cleared',
  )

/** Whether it is a key of a jam, and can name no kind. */
export const isKeyOfJam = (key: string): boolean => key in jam.shape

/** Of one kind wherever a key of a jam stands, and where no value is a map. */
forms.add(jams, {
  of(written) {
    const entries = typeof written === 'object' && written !== null ? Object.entries(written) : []
    const isNamed =
      entries.length > 0 &&
      entries.every(([key, value]) => !isKeyOfJam(key) && typeof value === 'object' && value !== null)
    return isNamed ? 1 : 0
  },
})

export type JamKeys = z.output<typeof jam>
export type JamsKeys = z.output<typeof jams>
