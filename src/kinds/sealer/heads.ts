/** The heads of a sealer, as its keys name them. Apart from the schema, which no thread that simulates loads. */
import type { SealerHead, SealerKeys } from './keys.js'

/** The heads that it has, by name, in the order of the file. */
export const headsOf = ({ heads }: Pick<SealerKeys, 'heads'>): [string, SealerHead][] =>
  Object.entries(heads).flatMap(([which, head]) => (head ? [[which, head]] : []))

/** Timing of the cutting arms of its heads. */
export const cutsOf = (keys: Pick<SealerKeys, 'heads'>) =>
  headsOf(keys).map(([, { cut }]) => ({ wipeTravel: cut['wipe-travel'], reset: cut.reset }))
