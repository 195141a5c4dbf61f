/** Stops of a machine with room before it: which outlast the room, and by how much. A finite dam, solved on a grid of levels. */
import exp from '@stdlib/math-base-special-exp'
import { after, type Chain, inTurn, stationary, steps, surely } from './chain.js'
import { excess, excessSquared, longer, type Shape, shapesOf } from './stop-times.js'

/** A kind of stop, seen from a steady flow past the machine. Times in s. */
export interface StopKind {
  /** Stops for each second of the flow. */
  often: number
  mean: number
  /** Standard deviation over mean, 0 or more. */
  cv: number
  /** They come evenly, each after as many cases as the one before; else by chance. */
  isEven: boolean
}

/** What of a kind of stop is felt beyond the room. */
interface Outlasting {
  /** Share of the stops that outlast it. */
  share: number
  /** By how much these do, s, and standard deviation over mean of that. */
  mean: number
  cv: number
}

/** All kinds of stop, and how full the room is when a stop begins, s of the flow; infinite where it fills without end. */
export interface Dam {
  stops: Outlasting[]
  level: number
}

/** Points of the grid of levels, empty and full included. With half as many no result moves by more than some 0.1 %. */
const points = 31
/** Where more rooms than that are caught up from one even stop to the next, it has no part in what it finds. */
const forgotten = 6
/** Rounding of speeds that are meant to be alike. */
const hair = 1e-9

const sum = (values: readonly number[]): number => values.reduce((total, each) => total + each, 0)

/**
 * What of each kind of stop outlasts the room before a machine, which is worth `buffer` s of a steady flow; while it catches up the
 * machine does `speed` times the flow. Stops come as often a case at any speed: by chance, but for the even ones that cost most.
 * The level at the beginning of a stop is the chain "up by the stop, at most to full; down by what is caught up before the next". A
 * machine no faster than the flow catches nothing up, and every stop is felt whole; in room without limit none is. Finite dam: Moran, The
 * Theory of Storage (1959, from memory). With exponential stops by chance it is `shareKeptOut`; without limit of room the mean level is that
 * of Pollaczek and Khinchine.
 */
export function outlasting(stops: readonly StopKind[], buffer: number, speed: number): Dam {
  const often = sum(stops.map((stop) => stop.often))
  const isCaughtUp = speed > 1 + hair
  /** For each second by which the level falls the machine passes so many seconds of the flow. */
  const passed = !isCaughtUp ? Infinity : speed === Infinity ? 1 : speed / (speed - 1)
  if (buffer === Infinity)
    return { stops: stops.map(() => ({ share: 0, mean: 0, cv: 0 })), level: levelWithoutLimit(stops, passed) }
  if (buffer <= 0 || often === 0 || !isCaughtUp)
    return {
      stops: stops.map(({ mean, cv }) => ({ share: 1, mean, cv })),
      level: isCaughtUp ? 0 : Math.max(0, buffer),
    }
  const shapes = stops.map(({ mean, cv }) => shapesOf(mean, cv))
  const grid = buffer / (points - 1)
  const levelsOf = levelsAtStops(stops, shapes, passed, grid)
  const mean = (kind: number, of: (room: number) => number) =>
    levelsOf(kind).reduce((total, chance, point) => total + chance * of((points - 1 - point) * grid), 0)
  return {
    stops: shapes.map((each, kind): Outlasting => {
      const share = mean(kind, (room) => longer(room, each))
      if (share < 1e-12) return { share: 0, mean: 0, cv: 0 }
      const first = mean(kind, (room) => excess(room, each)) / share
      const second = mean(kind, (room) => excessSquared(room, each)) / share
      return { share, mean: first, cv: Math.sqrt(Math.max(0, second / (first * first) - 1)) }
    }),
    level: buffer - sum(stops.map((stop, kind) => (stop.often / often) * mean(kind, (room) => room))),
  }
}

/** Mean level without limit: the wait in a queue with one server (Pollaczek-Khinchine); infinite where stops are not caught up. */
function levelWithoutLimit(stops: readonly StopKind[], passed: number): number {
  const load = passed * sum(stops.map((stop) => stop.often * stop.mean))
  if (load >= 1) return Number.POSITIVE_INFINITY
  const squares = passed * sum(stops.map(({ often, mean, cv }) => often * mean * mean * (1 + cv * cv)))
  return squares / (2 * (1 - load))
}

/** Chances of the levels at the beginning of a stop of each kind. */
function levelsAtStops(
  stops: readonly StopKind[],
  shapes: readonly Shape[][],
  passed: number,
  grid: number,
): (kind: number) => Float64Array {
  const kinds = stops.map((_, kind) => kind)
  const all = (some: readonly number[]) => sum(some.map((kind) => stops[kind]!.often))
  const upBy = (some: readonly number[]): Chain => {
    const often = all(some)
    return chainOf((from) =>
      upFrom(from, grid, (distance) =>
        some.reduce(
          (total, kind) => total + (stops[kind]!.often / often) * excess(distance, shapes[kind]!),
          0,
        ),
      ),
    )
  }
  const load = (kind: number) => stops[kind]!.often * stops[kind]!.mean
  const even = kinds
    .filter((kind) => stops[kind]!.isEven)
    .reduce((most, kind) => (most < 0 || load(kind) > load(most) ? kind : most), -1)
  /** Points of the grid that are caught up from one even stop to the next. */
  const cycle = even < 0 ? Infinity : 1 / (stops[even]!.often * passed * grid)
  if (even < 0) {
    const levels = byChance(upBy(kinds), all(kinds) * passed, grid)
    return () => levels
  }
  const others = kinds.filter((kind) => kind !== even)
  const chance = all(others) > 0 ? upBy(others) : null
  const levels = byTurns(upBy([even]), chance, exp(-all(others) * passed * grid), cycle)
  return (kind) => (kind === even ? levels.even : levels.between)
}

const chainOf = (row: (from: number) => Float64Array): Chain =>
  Array.from({ length: points }, (_, from) => row(from))

/**
 * Chances of the points after a rise from the point `from`, of which `beyond(distance)` is the mean excess: shared between neighbours so that
 * the mean stays. What rises past the last point stays there.
 */
function upFrom(from: number, grid: number, beyond: (distance: number) => number): Float64Array {
  const chances = new Float64Array(points)
  const at = (point: number) => beyond((point - from) * grid) / grid
  const last = points - 1
  for (let point = from; point < last; point++)
    // a difference of like numbers may round to a little below 0
    chances[point] = Math.max(
      0,
      (point === from ? at(from) + 1 : at(point - 1)) - 2 * at(point) + at(point + 1),
    )
  chances[last] = from === last ? 1 : at(last - 1) - at(last)
  return chances
}

/** All stops by chance, `density` of them for each second by which the level falls. */
function byChance(up: Chain, density: number, grid: number): Float64Array {
  const fallen = (distance: number) => exp(-density * distance) / density
  // a fall is a rise of the room that is left
  const down = chainOf((from) => upFrom(points - 1 - from, grid, fallen).reverse())
  return stationary(inTurn(up, down))
}

/** Levels at even stops, `cycle` points apart, and between them; of each point caught up `spared` have no stop by chance. */
function byTurns(even: Chain, chance: Chain | null, spared: number, cycle: number) {
  const step = chainOf((from) => {
    const to = Math.max(0, from - 1)
    if (!chance) return surely(to, points)
    const row = chance[to]!.map((each) => each * (1 - spared))
    row[to]! += spared
    return row
  })
  const near = Math.min(cycle, forgotten * (points - 1))
  const [whole, part] = [Math.floor(near), near % 1]
  const less = steps(step, whole)
  const more = inTurn(less, step)
  const round = less.map((row, from) => row.map((each, to) => each * (1 - part) + more[from]![to]! * part))
  const atEven = stationary(inTurn(even, round))
  const between = new Float64Array(points)
  let now = after(atEven, even)
  const count = Math.max(1, whole)
  for (let turn = 0; turn < count; turn++) {
    now = after(now, step)
    for (let point = 0; point < points; point++) between[point]! += now[point]! / count
  }
  // the rest of a long cycle is as its end
  const end = now
  return {
    even: atEven,
    between: between.map((each, point) => (each * near + end[point]! * (cycle - near)) / cycle),
  }
}
