/** What pencil and paper say of each kind of equipment: one row a kind. */
import type { ByHand } from './by-hand.js'
import { conveyorByHand } from './conveyor/hand.js'
import { divertByHand } from './divert/hand.js'
import { inspectByHand } from './inspect/hand.js'
import type { KeysOf, Kind } from './keys.js'
import { sealerByHand } from './sealer/hand.js'
import { stationByHand } from './station/hand.js'

const kindsByHand: { [K in Kind]: ByHand<KeysOf<K>> } = {
  conveyor: conveyorByHand,
  sealer: sealerByHand,
  station: stationByHand,
  divert: divertByHand,
  inspect: inspectByHand,
}

/** What pencil and paper say of the kind of a piece. */
export const byHandOf = ({ type }: { type: Kind }): ByHand<KeysOf> => kindsByHand[type] as ByHand<KeysOf>
