/** What a recorded stretch shows, in a sentence and in numbers. */

import { stopNouns } from '../catalogue/states.js'
import type { Stretch } from '../shifts/stretch.js'
import type { Layout } from './layout.js'
import { countAt, standingOf } from './standing.js'
import { holdingAt } from './steps.js'
import { clockOf, lasting, type Stop, stopsOf, totalOf, waitsOf } from './stops.js'

/** Cases that are in the line at most, and from when. */
export function fullest({ held, from }: Stretch): { time: number; count: number } {
  let best = held[0] ?? [from, 0]
  for (const each of held) if (each[1] > best[1]) best = each
  return { time: best[0], count: best[1] }
}

/** After a stop the queue that it made may still grow for so long before the machine draws it down, s. */
const after = 60

/** Cases in the line at `time`. */
const heldAt = ({ held }: Stretch, time: number): number => holdingAt(held, time) ?? held[0]?.[1] ?? 0

/** By how many cases the line fills from a stop's beginning to its fullest instant; 0 where that is not during or just after it. */
function filledBy(stop: Stop, stretch: Stretch): number {
  const most = fullest(stretch)
  if (most.time < stop.from || most.time > stop.to + after) return 0
  const rise = most.count - heldAt(stretch, stop.from)
  return rise >= Math.max(3, 0.1 * most.count) ? rise : 0
}

/**
 * The stop that the stretch is about: the longest of those while which the line comes to be fullest; else the longest; null where
 * none lasts long enough to be seen. A planned stop is one only in the first sense.
 */
function mainStop(stretch: Stretch): Stop | null {
  const seen = stopsOf(stretch)
    .filter(({ from, to }) => to - from >= 10)
    .sort((a, b) => b.to - b.from - (a.to - a.from))
  const filling = seen.find((stop) => filledBy(stop, stretch) > 0)
  return filling ?? seen.find(({ kind }) => kind !== 'planned') ?? null
}

/** Cases that stand on the floor before the line at `time`. */
function onFloor(stretch: Stretch, time: number): number {
  const standing = standingOf(stretch)
  return stretch.sources.reduce(
    (sum, { whenFull }, source) => sum + (whenFull === 'queue' ? countAt(standing[source]!, time) : 0),
    0,
  )
}

const cases = (count: number) => `${count} ${count === 1 ? 'case' : 'cases'}`

/** The finding: what happened, what it did to the line, and who had to wait. */
export function findingOf(stretch: Stretch, layout: Layout): string {
  const stop = mainStop(stretch)
  const most = fullest(stretch)
  const standing = onFloor(stretch, most.time)
  const floor = standing > 0 ? `, ${standing} of them on the floor before it` : ''
  const full = `the line is fullest at ${clockOf(most.time)} h, with ${cases(most.count)}${floor}`
  const parts: string[] = []
  if (stop) {
    const length = `${stop.isCut ? 'more than ' : ''}${lasting(stop.to - stop.from)}`
    const what = `A ${stopNouns[stop.kind]} of ${length} on ${layout.pieces[stop.piece]!.name} at ${clockOf(stop.from)} h`
    if (filledBy(stop, stretch) > 0)
      parts.push(`${what}: the line fills from ${heldAt(stretch, stop.from)} to ${cases(most.count)}${floor}`)
    else parts.push(what, full)
  } else parts.push('No machine stops', full)
  const waits = waitsOf(stretch).map(totalOf)
  const longest = waits.indexOf(Math.max(...waits))
  if (longest >= 0 && waits[longest]! >= 1)
    parts.push(
      `in all, ${stretch.sources[longest]!.name} waits for room for ${lasting(waits[longest]!)} of these ${lasting(stretch.to - stretch.from)}`,
    )
  return `${parts.join('; ')}.`
}

/** The numbers of the stretch in words, for those who do not see the picture. */
export function numbersOf(stretch: Stretch, layout: Layout): string {
  const { from, to, breaks } = stretch
  const name = (piece: number) => layout.pieces[piece]!.name
  const stops = stopsOf(stretch).map((stop) => {
    const waiting = stop.workFrom - stop.from
    const wait = waiting >= 0.5 ? `, including ${lasting(waiting)} until somebody arrives` : ''
    return `${name(stop.piece)}: ${stopNouns[stop.kind]} at ${clockOf(stop.from, true)} for ${lasting(stop.to - stop.from)}${wait}`
  })
  const waits = waitsOf(stretch).flatMap((all, source) =>
    totalOf(all) >= 0.5
      ? [`${stretch.sources[source]!.name} waits for room for ${lasting(totalOf(all))}`]
      : [],
  )
  const most = fullest(stretch)
  const out = stretch.cases.filter(
    ({ path, lost }) =>
      path.length > 0 && path.at(-1)![2] !== null && path.at(-1)![2]! > from && lost === undefined,
  ).length
  return [
    `Shift ${stretch.shift} from ${clockOf(from, true)} to ${clockOf(to, true)} after its start.`,
    `Stops: ${stops.length > 0 ? stops.join('; ') : 'none'}.`,
    ...(waits.length > 0 ? [`${waits.join('; ')}.`] : []),
    ...breaks.map(([begin, end]) => `Break from ${clockOf(begin)} to ${clockOf(end)}.`),
    `Cases in the line: ${most.count} at most, at ${clockOf(most.time, true)}. ${cases(out)} left the line.`,
  ].join(' ')
}
