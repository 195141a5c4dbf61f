/** What each kind of equipment adds to the rules between the keys of a scenario: one row a kind. */
import type { PieceRules } from '../scenario/piece-rules.js'
import { conveyorRules } from './conveyor/rules.js'
import { divertRules } from './divert/rules.js'
import type { KeysOf, Kind } from './keys.js'
import { sealerRules } from './sealer/rules.js'

const kindRules: { [K in Kind]: PieceRules<KeysOf<K>> } = {
  conveyor: conveyorRules,
  sealer: sealerRules,
  station: {},
  divert: divertRules,
  inspect: {},
}

/** The rules of the kind of a piece. */
export const rulesOf = ({ type }: KeysOf): PieceRules<KeysOf> => kindRules[type]
