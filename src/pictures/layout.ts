/** The layout: where each piece of a line stands, to scale as far as a scenario says how long things are. */
import type { Shape } from '../kinds/in-pictures.js'
import { inPicturesOf } from '../kinds/pictures.js'
import { sizeEnds } from '../scenario/outside.js'
import { arrivalWays, exitName, lineWays } from '../scenario/routes.js'
import type { Scenario } from '../scenario/schema.js'

/** A piece from above. `x` and `y` are its upstream end and its upper edge, m. */
export interface LayoutPiece extends Shape {
  name: string
  x: number
  y: number
  /** Names of the pieces to which its cases go, in the order of the ways, each once; `exit` is out of the line. */
  next: string[]
}

/** A line from above: x along the travel from 0, y across from 0, m; the pieces in the order of the file. */
export interface Layout {
  pieces: LayoutPiece[]
  arrivals: { name: string; next: string }[]
  /** Outside length and width, m; of a kind that varies the largest. */
  cases: { name: string; length: number; width: number }[]
  /** `at` is the sealer at which a crew stands while nothing else calls it. */
  crews: { name: string; people: number; at?: string }[]
  length: number
  width: number
}

/** Beyond the longest and beside the widest case, m. */
const spare = { length: 0.2, width: 0.1 }
/** Between one lane and the next, m: room to walk. Common practice, no source. */
const aisle = 0.8

type Ways = ReadonlyMap<string, readonly string[]>

/** The pieces in the order of travel, their ways, and those of these that lead onwards in that order. */
interface Travel {
  order: readonly string[]
  byName: ReadonlyMap<string, LayoutPiece>
  ways: Ways
  ahead: Ways
}

/**
 * Pieces follow one another along x in the order of travel; where ways meet, a piece begins behind the furthest of those that lead
 * to it. Ways that part lie side by side along y. A way that leads back moves nothing: each piece is placed once.
 */
export function layoutOf(scenario: Scenario): Layout {
  const ways: Ways = new Map(
    [...lineWays(scenario)].map(([name, all]) => [name, [...new Set(all.map(({ target }) => target))]]),
  )
  const arrivals = [...arrivalWays(scenario)].map(([name, all]) => ({ name, next: all[0]!.target }))
  const cases = Object.entries(scenario.cases).map(([name, kind]) => {
    const { length, width } = sizeEnds(kind).most
    return { name, length, width }
  })
  const longest = Math.max(0, ...cases.map(({ length }) => length))
  const widest = Math.max(0, ...cases.map(({ width }) => width))
  const one = { longest, length: longest + spare.length, width: widest + spare.width }
  const pieces = Object.entries(scenario.line).map(([name, keys]) =>
    unplaced(name, inPicturesOf(keys).shape(keys, one), [...ways.get(name)!]),
  )
  place(pieces, ways, arrivals)
  return {
    pieces,
    arrivals,
    cases,
    crews: Object.entries(scenario.crew).map(([name, crew]) => ({
      name,
      people: crew.people,
      ...(crew['stands-at'] === undefined ? {} : { at: crew['stands-at'] }),
    })),
    length: Math.max(0, ...pieces.map(({ x, length }) => x + length)),
    width: Math.max(0, ...pieces.map(({ y, width }) => y + width)),
  }
}

/** A piece that has no place yet; its keys stand in the order in which a document has them. */
function unplaced(name: string, shape: Shape, next: string[]): LayoutPiece {
  const { type, carries, length, width, speed, heads, ...people } = shape
  const what = carries === undefined ? { type } : { type, carries }
  return { name, ...what, x: 0, y: 0, length, width, speed, heads, next, ...people }
}

/** Gives every piece its place. */
function place(pieces: LayoutPiece[], ways: Ways, arrivals: Layout['arrivals']): void {
  const byName = new Map(pieces.map((piece) => [piece.name, piece]))
  const order = orderOfTravel(ways, [...arrivals.map(({ next }) => next), ...byName.keys()])
  const rank = new Map(order.map((name, index) => [name, index]))
  const isAhead = (from: string, to: string) => rank.get(from)! < (rank.get(to) ?? -1)
  const ahead = new Map(order.map((name) => [name, ways.get(name)!.filter((to) => isAhead(name, to))]))
  const travel: Travel = { order, byName, ways, ahead }
  for (const name of order) {
    const { x, length } = byName.get(name)!
    for (const target of ahead.get(name)!) byName.get(target)!.x = Math.max(byName.get(target)!.x, x + length)
  }
  moveUp(travel)
  const lanes = lanesOf(travel)
  let edge = 0
  for (let lane = 0; lane <= Math.max(0, ...lanes.values()); lane++) {
    const inLane = pieces.filter(({ name }) => lanes.get(name) === lane)
    const width = Math.max(0, ...inLane.map((piece) => piece.width))
    for (const piece of inLane) piece.y = edge + (width - piece.width) / 2
    edge += width + aisle
  }
}

/** Pieces that nothing leads to stand close before the piece that they lead to. */
function moveUp(travel: Travel): void {
  const { order, byName, ahead } = travel
  const isFree = freeChains(travel)
  for (const name of [...order].reverse()) {
    const targets = ahead.get(name)!
    if (!isFree.has(name) || targets.length === 0) continue
    const piece = byName.get(name)!
    const x = Math.min(...targets.map((target) => byName.get(target)!.x)) - piece.length
    if (x > piece.x + hair) piece.x = x
  }
}

/** Pieces that nothing leads to, and what they alone lead to: a whole chain moves, from its end backwards. */
function freeChains({ order, ways, ahead }: Travel): ReadonlySet<string> {
  const fed = order.flatMap((name) => ahead.get(name)!)
  const isFree = new Set(order.filter((name) => !fed.includes(name)))
  for (const name of order) {
    const [target, ...others] = ways.get(name)!
    if (!isFree.has(name) || target === undefined || others.length > 0) continue
    const isOnlyFeeder = fed.filter((each) => each === target).length === 1
    if (isOnlyFeeder && ahead.get(name)!.length > 0) isFree.add(target)
  }
  return isFree
}

/**
 * All pieces so that each stands before those that it leads to, but for ways that lead back to one that is on the way to it; else in
 * the order of the file.
 */
function orderOfTravel(ways: Ways, starts: readonly string[]): string[] {
  const back = waysBack(ways, starts)
  const ahead = (name: string) =>
    ways.get(name)!.filter((target) => target !== exitName && !back.has(`${name}\n${target}`))
  const waitsFor = new Map([...ways.keys()].map((name) => [name, 0]))
  const add = (name: string, by: number) => waitsFor.set(name, waitsFor.get(name)! + by)
  for (const name of ways.keys()) for (const target of ahead(name)) add(target, 1)
  const order: string[] = []
  const left = [...ways.keys()]
  while (left.length > 0) {
    const [next] = left.splice(
      left.findIndex((name) => waitsFor.get(name) === 0),
      1,
    )
    order.push(next!)
    for (const target of ahead(next!)) add(target, -1)
  }
  return order
}

/** Ways, as from and to in two lines, that lead back to where cases come from: found depth first from `starts`, in their order. */
function waysBack(ways: Ways, starts: readonly string[]): Set<string> {
  const met = new Set<string>()
  const back = new Set<string>()
  // without recursion: a line may be long
  const stack: { name: string; next: number }[] = []
  const meet = (name: string) => {
    if (met.has(name) || !ways.has(name)) return
    met.add(name)
    stack.push({ name, next: 0 })
  }
  for (const start of starts) {
    meet(start)
    const onTheWay = new Set<string>()
    for (let top = stack.at(-1); top; top = stack.at(-1)) {
      onTheWay.add(top.name)
      const target = ways.get(top.name)![top.next++]
      if (target === undefined) onTheWay.delete(stack.pop()!.name)
      else if (onTheWay.has(target)) back.add(`${top.name}\n${target}`)
      else meet(target)
    }
  }
  return back
}

/**
 * Number of the lane of each piece, from 0: that of the piece that leads to it, the one beside it where it is not the first of
 * its ways, or the next one that is free there.
 */
function lanesOf({ order, byName, ahead }: Travel): Map<string, number> {
  const lanes = new Map<string, number>()
  const taken: { from: number; to: number }[][] = []
  for (const name of order) {
    const { x, length } = byName.get(name)!
    const feeders = order.filter((each) => ahead.get(each)!.includes(name))
    const wanted = feeders.map((each) => lanes.get(each)! + (ahead.get(each)![0] === name ? 0 : 1))
    const isFree = (lane: number) =>
      (taken[lane] ?? []).every(({ from, to }) => x + length <= from + hair || x >= to - hair)
    let lane = feeders.length > 0 ? Math.min(...wanted) : 0
    while (!isFree(lane)) lane++
    lanes.set(name, lane)
    while (taken.length <= lane) taken.push([])
    taken[lane]!.push({ from: x, to: x + length })
  }
  return lanes
}

/** Rounding of sums of lengths, m. */
const hair = 1e-9
