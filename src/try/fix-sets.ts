/** Fixes that say themselves which values to change, as `--set` takes them: the page can make such a change. */
import { type Edited, isRefused } from './draft/edited.js'
import { setValue } from './draft/values.js'

/** `line.sealer.heads.top.takes=[36 mm, 72 mm]`. */
const one = /^([a-z][\w-]*(?:\.[^.=;]+)+)=(.+)$/u

/** The values at the end of a fix, `...: PATH=VALUE; PATH=VALUE`; none where it ends otherwise. */
export function setsIn(fix: string): { path: string; value: string }[] {
  const start = fix.search(/[a-z][\w-]*\.\S+=/u)
  if (start < 0) return []
  const found = fix
    .slice(start)
    .split('; ')
    .map((each) => one.exec(each.trim()))
  if (!found.every((match) => match !== null)) return []
  return found.map((match) => ({ path: match[1]!, value: match[2]! }))
}

/** The text with all of them made, or why one cannot be. */
export function withSets(text: string, sets: readonly { path: string; value: string }[]): Edited {
  let now: Edited = { text }
  for (const { path, value } of sets) {
    if (isRefused(now)) return now
    now = setValue(now.text, path, value)
  }
  return now
}
