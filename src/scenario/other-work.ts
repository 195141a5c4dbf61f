/** Other work of a crew, beside the line: what it comes to for all people of the crew together. */

import type { OtherWorkGiven, OtherWorkKeys } from './crew-keys.js'
import { type Distribution, meanOf } from './law.js'

export type { OtherWorkKeys }

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
  'other-work'?: OtherWorkGiven | undefined
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
