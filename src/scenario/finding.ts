/** A finding on a scenario before its place in the file is known, and how a rule tells one. */
import { nearest } from './nearest.js'
import type { Problem } from './problems.js'
import type { Path } from './walk.js'

export interface Finding extends Omit<Problem, 'source' | 'line' | 'column' | 'window' | 'path'> {
  path: Path
  /** The place is the key and not its value. */
  atKey: boolean
}

/** Notes one breach of a rule between keys: where, which code, the rule and the nearest mend. */
export type Report = (path: Path, code: Finding['code'], rule: string, fix: string, atKey?: boolean) => void

/** A finding on the value at `path`. */
export function findingAt(path: Path, code: Finding['code'], rule: string, fix: string): Finding {
  return { code, path, found: '', rule, fix, atKey: false }
}

/** Notes a name that is none of those that are `known`; `rule` says so behind the name. */
export const reportUnknown = (
  report: Report,
  path: Path,
  name: string,
  known: readonly string[],
  rule: string,
): void => report(path, 'no-such-path', `\`${name}\` ${rule}`, nearest(name, known))
