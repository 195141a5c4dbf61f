/** Other work of a crew, beside the line: its keys, and what it comes to for all people of the crew together. */
import * as z from 'zod'
import { timeDistribution } from './distribution.js'
import { assume, quantity } from './kit.js'
import { type Distribution, meanOf } from './law.js'

const item = z.strictObject({
  does: z.string().min(1).max(40).optional().describe('what it is, in words'),
  share: quantity(
    'share',
    'of the time in which each of them is there; comes by chance, as from many who want something',
    { above: 0, to: 1 },
  ).optional(),
  every: timeDistribution(
    'in place of `share`: time in which the crew is there, from one piece of it to the next',
    { above: 0 },
  ).optional(),
  takes: timeDistribution('how long one piece of it takes; without a default, for stops wait for it'),
  'can-be-left': assume(
    z
      .boolean()
      .describe(
        'true: a stop of the line takes them off at once, and they go on with it later; false: the stop waits until it is done',
      ),
    false,
    'definition of the format',
  ),
})

export type OtherWorkKeys = z.output<typeof item>

export const otherWork = z
  .union([z.array(item).min(1).max(20), item])
  .describe(
    'work beside the line, one kind or a list: begun when no stop waits for them; what is due meanwhile waits in a row',
  )

/** A kind of other work, for a crew as a whole. */
export interface OtherWorkKind {
  does: string
  /** Time in which the crew is there, from one piece that is due to the next, s. */
  every: Distribution
  takes: Distribution
  canBeLeft: boolean
  /** Share of the time of all its people that it asks for; above 1 there is more of it than they can do. */
  load: number
}

interface Keys {
  people: number
  'other-work'?: z.output<typeof otherWork> | undefined
}

/** What is called so where the file has no words for it. */
const unnamed = 'other work'

/**
 * The kinds of other work of a crew. A share comes by chance: exponential times between, for what many want independently of one another
 * comes nearly so (Palm and Khintchine; textbook), as often as the share of the time of all people asks for.
 */
export function otherWorkOf({ people, 'other-work': given }: Keys): OtherWorkKind[] {
  if (given === undefined) return []
  return [given].flat().map(({ does = unnamed, share, every, takes, 'can-be-left': canBeLeft }) => {
    const time = meanOf(takes)
    const between: Distribution = every ?? { law: 'exponential', mean: time / ((share ?? 0) * people) }
    return { does, every: between, takes, canBeLeft, load: time / meanOf(between) / people }
  })
}
