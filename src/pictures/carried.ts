/** The path of a case that a drive carries: at the speed of the drive, no farther than the ways of those ahead let it. */
import type { Drive } from './drive.js'
import { add, type Polyline, placeOn } from './polyline.js'
import { countBefore, within } from './steps.js'

/** What keeps a case back: it is never beyond this place, from its first corner to its last; and a case that stands for a time. */
export interface Keeping {
  bounds: readonly Polyline[]
  /** Its tail is held, and what carries it slips under it: begin and end, s. */
  held: readonly (readonly [begin: number, end: number])[]
}

/** Places that are as good as one, m. */
const hair = 1e-9

/** Where a bound is at an instant, m, and its slope from there on, m/s. */
interface Bound {
  at: number
  slope: number
}

/**
 * From `start` at `from`, until `until`, as far as `end`. Where a bound is behind the case, which only rounding or a line that is known in
 * part makes it, the case stands until that has caught up.
 */
export function carried(
  drive: Drive,
  { from, until, start, end }: { from: number; until: number; start: number; end: number },
  { bounds, held }: Keeping,
): Polyline {
  const made: Polyline = { times: [from], places: [start] }
  const corners = [
    ...drive.turns(from, until),
    ...bounds.flatMap(({ times }) => within(times, from, until)),
    ...held.flatMap(([begin, over]) => [begin, over].filter((time) => time > from && time < until)),
    until,
  ].sort((a, b) => a - b)
  let time = from
  for (const corner of corners) {
    if (!(corner > time)) continue
    const isHeld = held.some(([begin, over]) => begin <= time && time < over)
    const speed = isHeld ? 0 : drive.speedAt(time)
    const here = bounds.flatMap((bound) => boundAt(bound, time, corner))
    here.push({ at: end, slope: 0 })
    follow(made, { speed, bounds: here, until: corner })
    time = corner
  }
  return made
}

/** A bound over [from, to], between which it has no corner; none where it does not bind. */
function boundAt({ times, places }: Polyline, from: number, to: number): Bound[] {
  if (times[0]! > from || times.at(-1)! < to) return []
  const corner = countBefore(times.length, (place) => times[place]! <= from) - 1
  const at = placeOn(times, places, from)
  const [next, then] = [times[corner + 1], places[corner + 1]]
  if (next === undefined) return []
  const passed = next - from
  return [{ at, slope: passed > 0 ? Math.max(0, then! - at) / passed : 0 }]
}

/** Goes on from the last corner, through a time in which all is straight. */
function follow(
  made: Polyline,
  { speed, bounds, until }: { speed: number; bounds: Bound[]; until: number },
): void {
  let time = made.times.at(-1)!
  let place = made.places.at(-1)!
  const begin = time
  // each bound is met once at most, and once caught up with
  for (let turns = 0; time < until && turns <= 2 * bounds.length; turns++) {
    const apart = ({ at, slope }: Bound) => at + slope * (time - begin) - place
    const rate = Math.min(speed, ...bounds.map((bound) => rateAt(apart(bound), bound.slope)))
    const end = Math.min(until, ...bounds.map((bound) => time + meetsIn(apart(bound), bound.slope - rate)))
    place += rate * (end - time)
    time = end
    add(made, time, place)
  }
  if (time < until) add(made, until, place)
}

/** How fast a case goes at most that is so far behind a bound, or beyond it. */
const rateAt = (apart: number, slope: number): number => (apart > hair ? Infinity : apart < -hair ? 0 : slope)

/** When it meets the bound that goes faster than it by `faster`, s; infinite where it never does. */
function meetsIn(apart: number, faster: number): number {
  const isMet = apart > hair ? faster < 0 : apart < -hair && faster > 0
  return isMet ? -apart / faster : Infinity
}
