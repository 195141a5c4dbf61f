/** A place that holds one case for a time, by hand: what a kind of equipment says that is no more than that. */
import { type Distribution, meanOf } from '../scenario/law.js'
import type { ByHand } from './by-hand.js'
import { inGeneral } from './in-general.js'
import type { MayJam } from './jams-by-hand.js'

export const placeByHand: ByHand<{ time: Distribution } & MayJam> = {
  ...inGeneral,
  paceKey: 'time',
  faster: 'shorten `time`',
  cycle: ({ time }) => ({ headway: 0, folding: 0, cycle: meanOf(time), how: 'time per case' }),
  stay: ({ time }) => meanOf(time),
  places: () => 1,
  room: () => ({ takesIn: 0, holds: 0, handsOn: 0, isRigid: false, hasRoom: false }),
}
