/** Rules of drives: speeds by level, whose level counts, and slow starts, that they slow something down and can come. */
import type { KeysOf } from '../kinds/keys.js'
import { type Report, reportUnknown } from './finding.js'
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
      reportUnknown(report, [...at, 'of'], step.of, conveyors, 'is not a conveyor of the line')
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

/** Breaches of the rules on the slow start of a piece. */
export function checkSlowStart({ shift }: Scenario, piece: KeysOf, path: Path, report: Report): void {
  if (!('slow-start' in piece) || piece['slow-start'] === undefined) return
  const { at, after, for: lasts, 'at-shift-start': isAtStart } = piece['slow-start']
  const conflict = (key: 'at' | 'for' | 'after', rule: string, fix: string) =>
    report([...path, 'slow-start', key], 'conflict', rule, fix)
  const span = shift.length + shift['run-out']
  if (at >= 1)
    conflict('at', 'at its whole speed a start is not slow', 'less, such as `60 %`, or take it out')
  if (lasts >= span)
    conflict(
      'for',
      'the start would last as long as the shift: then this is its speed',
      'a shorter time, such as `3 min`, or set the speed itself',
    )
  if (after >= span * shift.campaign && !isAtStart)
    conflict(
      'after',
      'no stop is as long as all that is simulated, so no start would be slow',
      'a shorter time, such as `10 min`, or `at-shift-start: true`',
    )
}
