/** Rules of speeds by level: whose level counts, and between which bounds a step holds. */
import type { KeysOf } from '../kinds/keys.js'
import type { Report } from './finding.js'
import { nearest } from './nearest.js'
import type { Scenario } from './schema.js'
import { countOf } from './side-by-side.js'
import { backBelow } from './speeds.js'
import type { Path } from './walk.js'

/** Breaches of the rules on the speeds of a piece. */
export function checkSpeeds({ line }: Scenario, piece: KeysOf, path: Path, report: Report): void {
  if (!('speeds' in piece) || piece.speeds === undefined) return
  const conveyors = Object.keys(line).filter((name) => line[name]!.type === 'conveyor')
  for (const [index, step] of piece.speeds.entries()) {
    const at = [...path, 'speeds', index]
    const watched = Object.hasOwn(line, step.of) ? line[step.of]! : null
    if (watched?.type !== 'conveyor')
      report(
        [...at, 'of'],
        'no-such-path',
        `\`${step.of}\` is not a conveyor of the line`,
        nearest(step.of, conveyors),
      )
    else if (countOf(watched) > 1)
      report(
        [...at, 'of'],
        'conflict',
        `there are ${countOf(watched)} of \`${step.of}\` side by side, and each has its own level`,
        'name a conveyor before or after them',
      )
    if (backBelow(step) > step.above)
      report(
        [...at, 'back-below'],
        'conflict',
        '`back-below` is above `above`: the speed would change back at once',
        'use at most the value of `above`',
      )
  }
}
