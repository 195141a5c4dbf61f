/** Rules between the crew and the rest: standing duties and breaks of their own. */
import { has } from '../kinds/traits.js'
import type { Report } from './finding.js'
import { nearest } from './nearest.js'
import { checkOtherWork } from './other-work-rules.js'
import type { Scenario } from './schema.js'

/** Breaches of the rules on standing duties, and of breaks that people have of their own. */
export function checkDuties(scenario: Scenario, report: Report): void {
  const byHand = Object.entries(scenario.line).flatMap(([name, piece]) =>
    has(piece, 'tapes') && piece.flaps['folded-by'] === 'people' ? [name] : [],
  )
  for (const [name, crew] of Object.entries(scenario.crew)) {
    const post = crew['stands-at']
    if (post !== undefined && !byHand.includes(post))
      report(
        ['crew', name, 'stands-at'],
        'conflict',
        `\`${post}\` is not a sealer whose flaps are folded by people`,
        byHand.length > 0
          ? nearest(post, byHand)
          : 'set `flaps: {folded-by: people}` at a sealer, or remove this',
      )
    if (crew.breaks) checkBreaks(crew.breaks, scenario.shift.length, ['crew', name, 'breaks'], report)
    checkOtherWork(crew, ['crew', name, 'other-work'], report)
  }
  for (const name of byHand)
    if (!Object.values(scenario.crew).some((crew) => crew['stands-at'] === name))
      report(
        ['line', name, 'flaps', 'folded-by'],
        'conflict',
        'nobody is at this sealer to fold the flaps',
        `add \`stands-at: ${name}\` to a crew`,
      )
}

/** Breaks come in order, do not overlap, end within the shift and leave some of it. */
export function checkBreaks(
  breaks: readonly { at: number; for: number }[],
  length: number,
  path: readonly (string | number)[],
  report: Report,
): void {
  let free = 0
  for (const [index, pause] of breaks.entries()) {
    if (pause.at < free)
      report(
        [...path, index],
        'conflict',
        'begins before the previous break has ended',
        'sort the breaks by time, without overlap',
      )
    if (pause.at + pause.for > length)
      report([...path, index], 'conflict', 'ends after the shift', 'make the break earlier or shorter')
    free = pause.at + pause.for
  }
  if (breaks.reduce((sum, pause) => sum + pause.for, 0) >= length)
    report(path, 'conflict', 'the breaks leave no working time', 'have fewer or shorter breaks', true)
}
