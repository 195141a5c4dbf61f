/** Rules between the crew and the rest: standing duties, breaks of their own, and other work, which comes by a share or by a time and leaves time for the line. */
import { has } from '../kinds/traits.js'
import type { Report } from './finding.js'
import { meanOf } from './law.js'
import { nearest } from './nearest.js'
import { type OtherWorkKeys, otherWorkOf } from './other-work.js'
import type { Scenario } from './schema.js'
import type { Path } from './walk.js'

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
  path: Path,
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

/** Work that takes less than this on the mean is a slip of the unit, and a study of it would not end, s. */
export const shortestWork = 1

/** Breaches of the rules on the other work of a crew; `path` is that of its key. */
function checkOtherWork(crew: Scenario['crew'][string], path: Path, report: Report): void {
  const given = crew['other-work']
  if (given === undefined) return
  const isList = Array.isArray(given)
  let isSound = true
  for (const [index, item] of [given].flat().entries())
    checkItem(item, crew.people, (key, ...fault) => {
      isSound = false
      report([...path, ...(isList ? [index] : []), ...(key === null ? [] : [key])], ...fault)
    })
  const load = otherWorkOf(crew).reduce((sum, each) => sum + each.load, 0)
  if (isSound && load >= 1)
    report(
      path,
      'conflict',
      `all other work together takes ${Math.round(load * 100)} % of their time, so no time is left for the line`,
      'reduce it, or add `people`',
      true,
    )
}

type Tail = Parameters<Report> extends [Path, ...infer Rest] ? Rest : never

function checkItem(
  { share, every, takes }: OtherWorkKeys,
  people: number,
  report: (key: keyof OtherWorkKeys | null, ...fault: Tail) => void,
): void {
  const [mean, between] = [meanOf(takes), every === undefined ? Infinity : meanOf(every) * people]
  if ((share === undefined) === (every === undefined))
    report(
      null,
      'one-of',
      'other work needs either `share` or `every`',
      'keep or add one, such as `share: 30 %` or `every: 20 min`',
      true,
    )
  else if (mean < shortestWork)
    report('takes', 'out-of-range', `the mean must be at least ${shortestWork} s`, 'such as `4 min`')
  else if (share !== undefined && share >= 1)
    report('share', 'out-of-range', 'leaves no time for the line', 'use less than 100 %, such as `30 %`')
  else if (between <= mean)
    report(
      'every',
      'conflict',
      `one job takes ${minutes(mean)} on average, but for each of ${people} people the next one is due after ${minutes(between)}: the work is never done`,
      `use more than ${minutes(mean / people)}, a shorter \`takes\`, or more \`people\``,
    )
}

const minutes = (seconds: number): string => `${Number((seconds / 60).toPrecision(4))} min`
