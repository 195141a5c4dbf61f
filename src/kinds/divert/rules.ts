/** Rules between the keys of a divert and the cases: the shape of `to` suits the rule, and by case every case has a way. */
import { nearest } from '../../scenario/nearest.js'
import type { PieceRules } from '../../scenario/piece-rules.js'
import type { DivertKeys } from './keys.js'

export const divertRules: PieceRules<DivertKeys> = {
  checkWays({ rule, to }, { scenario, path }, report) {
    const at = [...path, 'to']
    const cases = Object.keys(scenario.cases)
    const isByCase = rule === 'by-case'
    if (isByCase === Array.isArray(to))
      report(
        at,
        'conflict',
        isByCase
          ? '`rule: by-case` needs a map from cases to names'
          : `\`rule: ${rule}\` needs a list of names`,
        isByCase ? `\`{${cases[0]}: NAME, …}\`` : 'write `[NAME, NAME]`',
        true,
      )
    if (!isByCase || Array.isArray(to)) return
    for (const each of Object.keys(to))
      if (!cases.includes(each))
        report([...at, each], 'no-such-path', `\`${each}\` is not a case`, nearest(each, cases), true)
    for (const each of cases)
      if (!Object.hasOwn(to, each))
        report(at, 'missing-key', `the case \`${each}\` has no way`, `add \`${each}: NAME\``, true)
  },
}
