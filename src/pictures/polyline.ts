/** Paths in time as broken lines that never go back: where they are at an instant, and the lower of two. */
import { countBefore } from './steps.js'

/** Corners in order of time; two at one time are a jump. As many times as places, at least one. */
export interface Polyline {
  times: number[]
  places: number[]
}

/** The same where it is only read. */
interface Corners {
  times: ArrayLike<number>
  places: ArrayLike<number>
}

/** Place at `time`, after a jump there; before the first corner the first place, after the last the last. */
export function placeOn(times: ArrayLike<number>, places: ArrayLike<number>, time: number): number {
  const corner = countBefore(times.length, (place) => times[place]! <= time) - 1
  if (corner < 0) return places[0]!
  if (corner === times.length - 1) return places[corner]!
  return onPiece({ times, places }, corner, time)
}

/** Place on the straight piece that begins at a corner. */
function onPiece({ times, places }: Corners, corner: number, time: number): number {
  if (time === times[corner + 1]) return places[corner + 1]!
  const part = (time - times[corner]!) / (times[corner + 1]! - times[corner]!)
  return places[corner]! + (places[corner + 1]! - places[corner]!) * part
}

type Ends = [number, number]

/**
 * The lower of two at every instant; `bound` binds only from its first corner to its last. It lies over the times of
 * `path`, without a jump at the end.
 */
export function lower(path: Polyline, bound: Polyline): Polyline {
  const [first, last] = [path.times[0]!, path.times.at(-1)!]
  if (bound.times.at(-1)! <= first || bound.times[0]! >= last) return path
  const made: Polyline = { times: [first], places: [path.places[0]!] }
  // pieces of the two that hold at `begin`; what jumps there has jumped
  let [ofPath, ofBound] = [0, 0]
  for (let begin = first; begin < last; ) {
    while (path.times[ofPath + 1]! <= begin) ofPath++
    while (bound.times[ofBound + 1]! <= begin) ofBound++
    const isBound = bound.times[ofBound]! <= begin && ofBound + 1 < bound.times.length
    const turn = bound.times[isBound ? ofBound + 1 : ofBound]!
    const end = Math.min(path.times[ofPath + 1]!, turn > begin ? turn : last)
    const [a, b] = [onPiece(path, ofPath, begin), onPiece(path, ofPath, end)]
    const [c, d] = [begin, end].map((time) => (isBound ? onPiece(bound, ofBound, time) : Infinity)) as Ends
    add(made, begin, Math.min(a, c))
    addCrossing(made, [begin, end], [a, b], [c, d])
    add(made, end, Math.min(b, d))
    begin = end
  }
  return made
}

/** Adds the corner where two straight pieces over the same time cross. */
function addCrossing(made: Polyline, [begin, end]: Ends, [a, b]: Ends, [c, d]: Ends): void {
  if ((a - c) * (b - d) >= 0) return
  const part = (c - a) / (c - a + b - d)
  add(made, begin + (end - begin) * part, a + (b - a) * part)
}

/** Adds a corner, without going back; one that says nothing new is left out. */
export function add({ times, places }: Polyline, time: number, place: number): void {
  const ahead = places.length === 0 ? place : Math.max(place, places.at(-1)!)
  if (times.at(-1) === time && places.at(-1) === ahead) return
  times.push(time)
  places.push(ahead)
}

/** Rounding of places that lie on one straight line, m. */
const hair = 1e-9

/** The same path without corners that lie on a straight line between their neighbours, as far as `within`, m. */
export function simplified({ times, places }: Polyline, within = hair): Polyline {
  const made: Polyline = { times: [times[0]!], places: [places[0]!] }
  const isLast = (corner: number) =>
    made.times.at(-1) === times[corner] && made.places.at(-1) === places[corner]
  const keep = (corner: number) => {
    made.times.push(times[corner]!)
    made.places.push(places[corner]!)
  }
  // slopes from the last corner that is kept between which the line must lie to pass all since
  let [least, most] = [-Infinity, Infinity]
  for (let index = 1; index < times.length; index++) {
    const place = made.places.at(-1)!
    const passed = times[index]! - made.times.at(-1)!
    const slope = (places[index]! - place) / passed
    if (passed > 0 && slope >= least && slope <= most) {
      least = Math.max(least, (places[index]! - within - place) / passed)
      most = Math.min(most, (places[index]! + within - place) / passed)
      continue
    }
    // on from the corner before, where that is not kept yet
    if (index > 1 && !isLast(index - 1)) index--
    keep(index)
    ;[least, most] = [-Infinity, Infinity]
  }
  if (!isLast(times.length - 1)) keep(times.length - 1)
  return made
}

/** The same in no more memory than it takes: a list that has grown keeps room for more, and thousands of paths never do. */
export const fitted = ({ times, places }: Polyline): Polyline => ({
  times: times.slice(),
  places: places.slice(),
})

/** The path where it is at `least` or beyond from an instant on: where it would not be, it goes there at `speed` just before. */
export function reaching(
  path: Polyline,
  { least, at, speed }: { least: number; at: number; speed: number },
): Polyline {
  const { times, places } = path
  if (placeOn(times, places, at) >= least - hair) return path
  const ramp = (time: number) => Math.min(least, least - speed * (at - time))
  const corners = [...times, at - least / speed, at].filter(
    (time) => time >= times[0]! && time <= times.at(-1)!,
  )
  corners.sort((a, b) => a - b)
  const made: Polyline = { times: [], places: [] }
  let begin = corners[0]!
  for (const time of corners) {
    const [a, b] = [placeOn(times, places, begin), placeOn(times, places, time)]
    const [c, d] = [ramp(begin), ramp(time)]
    addCrossing(made, [begin, time], [a, b], [c, d])
    add(made, time, Math.max(b, d))
    begin = time
  }
  return made
}

/** The same path so much farther back, m. */
export const lessBy = (back: number, { times, places }: Polyline): Polyline => ({
  times,
  places: places.map((place) => place - back),
})

/** Rounding of sums of times and lengths, m. */
const rounding = 1e-6

/** The path as it begins at 0 and keeps within the piece; with a time, it is at the end then, by rounding or by a jump. */
export function exact({ times, places }: Polyline, end: number, leaves: number | null): Polyline {
  const made = { times: [...times], places: places.map((place) => Math.min(place, end)) }
  if (places[0]! < rounding) made.places[0] = 0
  if (leaves === null) return made
  if (end - made.places.at(-1)! < rounding) made.places[places.length - 1] = end
  else add(made, leaves, end)
  return made
}
