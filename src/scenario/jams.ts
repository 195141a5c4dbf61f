/** The kinds of jam that a piece may have, as its keys say. Apart from the schema, which no thread that simulates loads. */
import type { JamKeys, JamsKeys } from './jam-keys.js'

export type { JamKeys, JamsKeys }

/** A kind of jam; where the file names none, the only one has no name. `at`: its place below `jams`. */
export interface NamedJam {
  name: string | null
  at: readonly string[]
  keys: JamKeys
}

/** The kinds of jam in the order of the file. */
export function jamsOf(given: JamsKeys | undefined): NamedJam[] {
  if (given === undefined) return []
  if (isOne(given)) return [{ name: null, at: [], keys: given }]
  return Object.entries(given).map(([name, keys]) => ({ name, at: [name], keys }))
}

const isOne = (given: JamsKeys): given is JamKeys => typeof given.chance === 'number'

/** Time that isolating and restoring take of each jam, s. */
export const isolation = ({ isolate = 0 }: Pick<JamKeys, 'isolate'>): number => 2 * isolate
