/** Rules between cases that are made to measure and the machines that must be set for a size. */
import { has } from '../kinds/traits.js'
import type { Report } from './finding.js'
import { varies } from './outside.js'
import { arrivalWays, lineWays, reachedFrom, startsOf, targetsOf } from './routes.js'
import type { Scenario } from './schema.js'

/** A machine that people set for a size cannot be set for every case: where height or width vary, it must set itself. */
export function checkSizes(scenario: Scenario, report: Report): void {
  const varying = Object.entries(scenario.cases).filter(([, kind]) => varies(kind, ['height', 'width']))
  if (varying.length === 0) return
  const ways = lineWays(scenario)
  const starts = startsOf(arrivalWays(scenario))
  for (const [kind] of varying) {
    const reached = reachedFrom(starts, (name) => targetsOf(ways, name, kind))
    for (const [name, piece] of Object.entries(scenario.line))
      if (reached.has(name) && has(piece, 'tapes') && piece['size-setting'].by === 'crew')
        report(
          ['line', name, 'size-setting', 'by'],
          'conflict',
          `the case \`${kind}\` varies in height or width, but a machine set by people would need a changeover for each of them`,
          '`machine`, which sets itself; or one height and one width for this case',
        )
  }
}
