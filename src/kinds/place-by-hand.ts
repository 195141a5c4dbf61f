/** A place that holds one case for a time, by hand: what a kind of equipment says that is no more than that. */
import { type Distribution, meanOf } from '../scenario/law.js'
import { type ByHand, countedByCases, straightOn } from './by-hand.js'

export const placeByHand: ByHand<{ time: Distribution }> = {
  paceKey: 'time',
  faster: 'a shorter `time`',
  cycle: ({ time }) => ({ headway: 0, folding: 0, setting: 0, cycle: meanOf(time), how: 'time a case' }),
  stops: () => [],
  counted: countedByCases,
  stay: ({ time }) => meanOf(time),
  places: () => 1,
  buffer: () => null,
  room: () => ({ takesIn: 0, holds: 0, handsOn: 0, isRigid: false, hasRoom: false }),
  split: straightOn,
  unsealed: () => 0,
  unseen: () => 1,
  row: () => null,
}
