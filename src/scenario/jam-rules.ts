/** Rules between the jams of a piece and the rest: who clears them is there, and chances that may stand together. */
import { type Report, reportUnknown } from './finding.js'
import { type JamsKeys, jamsOf } from './jams.js'
import type { Scenario } from './schema.js'
import type { Path } from './walk.js'

/** Reports every breach; whether some of the jams are for whoever does `jams`. */
export function checkJams(
  jams: JamsKeys,
  { crew }: Pick<Scenario, 'crew'>,
  path: Path,
  report: Report,
): boolean {
  const kinds = jamsOf(jams)
  const crews = Object.keys(crew)
  for (const { at, keys } of kinds)
    if (keys.by !== undefined && !crews.includes(keys.by))
      reportUnknown(report, [...path, ...at, 'by'], keys.by, crews, 'is not a crew')
  const sum = kinds.reduce((total, { keys }) => total + keys.chance * keys['tape-factor'], 0)
  if (kinds.length > 1 && sum > 1)
    report(
      path,
      'conflict',
      `the chances of all kinds of jam together are ${Number((100 * sum).toPrecision(4))} %: every case would jam more than once`,
      'use chances that add up to 100 % at most',
      true,
    )
  return kinds.some(({ keys }) => keys.by === undefined)
}
