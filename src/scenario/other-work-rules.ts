/** Rules of other work: it comes by a share or by a time, and all of it together leaves time for the line. */
import type { Report } from './finding.js'
import { meanOf } from './law.js'
import { type OtherWorkKeys, otherWorkOf } from './other-work.js'
import type { Scenario } from './schema.js'
import type { Path } from './walk.js'

/** Work that takes less than this on the mean is a slip of the unit, and a study of it would not end, s. */
export const shortestWork = 1

/** Breaches of the rules on the other work of a crew; `path` is that of its key. */
export function checkOtherWork(crew: Scenario['crew'][string], path: Path, report: Report): void {
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
