/** How many cases of each kind come to each piece: arrivals followed along the ways of the line. */

import type { Split } from '../kinds/by-hand.js'
import { byHandOf } from '../kinds/hand.js'
import { keptInJams } from '../kinds/jams-by-hand.js'
import { partingOf } from '../kinds/traits.js'
import { arrivalWays, exitName, lineWays, reachedFrom, targetsOf } from '../scenario/routes.js'
import type { Scenario } from '../scenario/schema.js'

/** Repair loops pass the same cases again and again, fewer each time: this often is followed. */
const mostSweeps = 1000
const settled = 1e-12

/** By piece: cases that come, by kind, in the unit in which the arrivals were given. */
export interface Flows {
  pieces: Map<string, number[]>
  /** Cases that leave the line, by kind. */
  out: number[]
  /** Of them those that an inspection rejected and sent straight out. */
  rejected: number[]
}

/** Share of the cases that pass an empty roll without anybody knowing: of the piece that lets most pass. */
export const unsealedShare = (scenario: Scenario): number =>
  Math.max(0, ...Object.values(scenario.line).map((piece) => byHandOf(piece).unsealed(piece, scenario)))

/** Share of the unsealed cases that no inspection finds. */
export const unseenShare = ({ line }: Scenario): number =>
  Object.values(line).reduce((left, piece) => left * byHandOf(piece).unseen(piece), 1)

/** Where the cases of each piece go, by kind; `capacity` weighs the ways of a divert to the shortest queue. */
function splits(scenario: Scenario, capacity: (targets: readonly string[]) => number[]): Map<string, Split> {
  const given = { scenario, unsealed: unsealedShare(scenario), capacity }
  return new Map(
    [...lineWays(scenario)].map(([name, ways]) => {
      const piece = scenario.line[name]!
      const split = byHandOf(piece).split(piece, ways, given)
      const kept = keptInJams(piece, scenario)
      return [name, (kind) => split(kind).map(([target, share]) => [target, share * kept[kind]!])]
    }),
  )
}

/**
 * Cases by piece and kind, where `arriving[source][kind]` come. A divert to the shortest queue is taken to share its cases
 * in proportion to `capacity`. Jams that spoil cases and inspections that send them out thin the flow.
 */
export function flowsOf(
  scenario: Scenario,
  arriving: readonly (readonly number[])[],
  capacity: (targets: readonly string[]) => number[],
): Flows {
  const ways = splits(scenario, capacity)
  const none = () => Object.keys(scenario.cases).map(() => 0)
  const names = [...ways.keys()]
  const flows: Flows = { pieces: new Map(names.map((name) => [name, none()])), out: none(), rejected: none() }
  const coming = new Map(names.map((name) => [name, none()]))
  const send = (target: string, kind: number, amount: number) => {
    const to = target === exitName ? flows.out : coming.get(target)!
    to[kind]! += amount
  }
  for (const [source, [first]] of [...arrivalWays(scenario).values()].entries())
    for (const [kind, amount] of arriving[source]!.entries()) send(first!.target, kind, amount)
  const least = settled * arriving.flat().reduce((sum, each) => sum + each, 0)
  /** Moves on what has come to a piece, and says how much it was. */
  const pass = (name: string, kind: number): number => {
    const amount = coming.get(name)![kind]!
    if (amount <= least) return 0
    coming.get(name)![kind] = 0
    flows.pieces.get(name)![kind]! += amount
    const isAside = partingOf(scenario.line[name]!) === 'aside'
    for (const [index, [target, share]] of ways.get(name)!(kind).entries()) {
      send(target, kind, amount * share)
      if (target === exitName && isAside && index === 1) flows.rejected[kind]! += amount * share
    }
    return amount
  }
  for (let sweep = 0, moved = 1; sweep < mostSweeps && moved > 0; sweep++) {
    moved = 0
    for (const name of names) for (const kind of flows.out.keys()) moved += pass(name, kind)
  }
  return flows
}

/** Pieces that are reached from `start`, itself included, by any way. */
export function piecesAfter(scenario: Scenario, start: string): Set<string> {
  const ways = lineWays(scenario)
  const reached = reachedFrom([start], (name) => targetsOf(ways, name))
  reached.delete(exitName)
  return reached
}
