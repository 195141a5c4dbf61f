/** Rules of slow starts: that they slow something down, and can come. */
import type { KeysOf } from '../kinds/keys.js'
import type { Report } from './finding.js'
import type { Scenario } from './schema.js'
import type { Path } from './walk.js'

/** Breaches of the rules on the slow start of a piece. */
export function checkSlowStart({ shift }: Scenario, piece: KeysOf, path: Path, report: Report): void {
  if (!('slow-start' in piece) || piece['slow-start'] === undefined) return
  const { at, after, for: lasts, 'at-shift-start': isAtStart } = piece['slow-start']
  const where = [...path, 'slow-start']
  const span = shift.length + shift['run-out']
  if (at >= 1)
    report(
      [...where, 'at'],
      'conflict',
      'at its whole speed a start is not slow',
      'less, such as `60 %`, or take it out',
    )
  if (lasts >= span)
    report(
      [...where, 'for'],
      'conflict',
      'the start would last as long as the shift: then this is its speed',
      'a shorter time, such as `3 min`, or set the speed itself',
    )
  if (after >= span * shift.campaign && !isAtStart)
    report(
      [...where, 'after'],
      'conflict',
      'no stop is as long as all that is simulated, so no start would be slow',
      'a shorter time, such as `10 min`, or `at-shift-start: true`',
    )
}
