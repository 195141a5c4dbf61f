/** An inspection by hand. */
import type { ByHand } from '../by-hand.js'
import { placeByHand } from '../place-by-hand.js'
import type { InspectKeys } from './keys.js'

export const inspectByHand: ByHand<InspectKeys> = {
  ...placeByHand,
  split(keys, ways, { unsealed }) {
    const rejects = keys.chance + (1 - keys.chance) * unsealed * keys['finds-unsealed']
    return () => [
      [ways[0]!.target, 1 - rejects],
      [ways[1]!.target, rejects],
    ]
  },
  unseen: (keys) => 1 - keys['finds-unsealed'],
}
