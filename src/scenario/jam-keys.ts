/** Keys of `jams`, on any piece that handles cases: one sort of jam, or several by their names. */
import * as z from 'zod'
import { timeDistribution } from './distribution.js'
import { assume, bare, broken, name, quantity, share } from './kit.js'
import { forms } from './walk.js'

/** One bit of a number stands for each. */
const mostKinds = 20

const jam = z
  .strictObject({
    chance: share('chance that a case jams: in a sealer at the first head, in other pieces at the end'),
    clear: timeDistribution('time to clear a jam, once somebody is there'),
    'case-lost': assume(share('share of the jammed cases that are spoilt'), '0 %'),
    'tape-factor': assume(bare('factor on the chance for this tape', 0, 1000), 1),
    by: name.describe('the crew that clears it (default: any crew that does `jams`)').optional(),
    isolate: quantity(
      'time',
      'time to isolate and lock the machine before anyone reaches in, and the same time again after clearing (default: part of `clear`). Local codes and the manual of the machine come first',
      { from: 0, to: 86_400 },
    ).optional(),
  })
  .describe('jams: drawn for each case, with chance x jam-factor of the case x tape-factor')

const named = z
  .record(name, jam)
  .refine(
    (kinds) => Object.keys(kinds).length <= mostKinds,
    broken('out-of-range', `at most ${mostKinds} kinds of jam`, 'combine rare kinds'),
  )
  .describe('kinds of jam by name, each with its chance and clearing time; counted separately')

export const jams = z
  .union([jam, named])
  .describe(
    'jams: one kind, or a map of kinds by name. The piece and all cases in it are stopped until a jam is cleared',
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
