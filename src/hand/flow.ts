/** How many cases of each kind come to each piece: arrivals followed along the ways of the line. */

import { headsOf } from '../kinds/sealer/heads.js'
import { arrivalWays, exitName, lineWays } from '../scenario/routes.js'
import type { Scenario } from '../scenario/schema.js'
import { casesPerRoll } from '../trade/tape.js'
import { drawnOf, jamChances } from './pace.js'
import { missedPerRoll } from './rolls.js'

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

type Split = (kind: number) => [target: string, share: number][]

/** Share of the cases that pass an empty roll without anybody knowing, by kind: of sealers without a warning. */
export function unsealedShare(scenario: Scenario): number {
  const { line, tape } = scenario
  const usable = tape.roll - tape['lost-per-roll']
  const perRoll = Math.max(1, ...drawnOf(scenario).map((each) => casesPerRoll(usable, each)))
  return Object.values(line).reduce((most, piece) => {
    if (piece.type !== 'sealer') return most
    const missed = missedPerRoll(piece['roll-change'])
    return Math.max(most, Math.min(1, (headsOf(piece).length * missed) / (perRoll + missed)))
  }, 0)
}

/** Share of the unsealed cases that no inspection finds. */
export const unseenShare = ({ line }: Scenario): number =>
  Object.values(line).reduce(
    (left, piece) => (piece.type === 'inspect' ? left * (1 - piece['finds-unsealed']) : left),
    1,
  )

/** Where the cases of each piece go, by kind; `capacity` weighs the ways of a divert to the shortest queue. */
function splits(scenario: Scenario, capacity: (targets: readonly string[]) => number[]): Map<string, Split> {
  const kinds = Object.keys(scenario.cases)
  const unsealed = unsealedShare(scenario)
  return new Map(
    [...lineWays(scenario)].map(([name, ways]): [string, Split] => {
      const piece = scenario.line[name]!
      const targets = ways.map(({ target }) => target)
      if (piece.type === 'divert') {
        if (piece.rule === 'by-case')
          return [name, (kind) => [[ways.find(({ onlyCase }) => onlyCase === kinds[kind])!.target, 1]]]
        const weights = piece.rule === 'shortest' ? capacity(targets) : targets.map(() => 1)
        const sum = weights.reduce((total, weight) => total + weight, 0)
        return [name, () => targets.map((target, index) => [target, weights[index]! / sum])]
      }
      if (piece.type === 'inspect') {
        const rejects = piece.chance + (1 - piece.chance) * unsealed * piece['finds-unsealed']
        return [
          name,
          () => [
            [targets[0]!, 1 - rejects],
            [targets[1]!, rejects],
          ],
        ]
      }
      if (piece.type === 'sealer' && piece.jams) {
        const lost = piece.jams['case-lost']
        const chances = jamChances(scenario, piece.jams)
        return [name, (kind) => [[targets[0]!, 1 - chances[kind]! * lost]]]
      }
      return [name, () => [[targets[0]!, 1]]]
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
  const kinds = Object.keys(scenario.cases).length
  const names = [...ways.keys()]
  const first = [...arrivalWays(scenario).values()].map((each) => each[0]!.target)
  const coming = new Map(names.map((name) => [name, Array.from({ length: kinds }, () => 0)]))
  const pieces = new Map(names.map((name) => [name, Array.from({ length: kinds }, () => 0)]))
  const out = Array.from({ length: kinds }, () => 0)
  const rejected = Array.from({ length: kinds }, () => 0)
  for (const [source, target] of first.entries())
    for (let kind = 0; kind < kinds; kind++) {
      if (target === exitName) out[kind]! += arriving[source]![kind]!
      else coming.get(target)![kind]! += arriving[source]![kind]!
    }
  const total = arriving.flat().reduce((sum, each) => sum + each, 0)
  for (let sweep = 0; sweep < mostSweeps; sweep++) {
    let moved = 0
    for (const name of names)
      for (let kind = 0; kind < kinds; kind++) {
        const amount = coming.get(name)![kind]!
        if (amount <= total * settled) continue
        moved += amount
        coming.get(name)![kind] = 0
        pieces.get(name)![kind]! += amount
        const targets = ways.get(name)!(kind)
        for (const [index, [target, share]] of targets.entries())
          if (target === exitName) {
            out[kind]! += amount * share
            if (scenario.line[name]!.type === 'inspect' && index === 1) rejected[kind]! += amount * share
          } else coming.get(target)![kind]! += amount * share
      }
    if (moved === 0) break
  }
  return { pieces, out, rejected }
}

/** Names of the pieces that cases of `kind` may come to. */
export function reachedBy(scenario: Scenario, kind: string): Set<string> {
  const ways = lineWays(scenario)
  const reached = new Set([...arrivalWays(scenario).values()].flat().map(({ target }) => target))
  // a set keeps the order in which it was filled, so that this visits what is added on the way
  for (const name of reached)
    for (const way of ways.get(name) ?? []) if ((way.onlyCase ?? kind) === kind) reached.add(way.target)
  reached.delete(exitName)
  return reached
}

/** Pieces that are reached from `start`, itself included, by any way. */
export function reachedFrom(scenario: Scenario, start: string): Set<string> {
  const ways = lineWays(scenario)
  const reached = new Set([start])
  for (const name of reached) for (const way of ways.get(name) ?? []) reached.add(way.target)
  reached.delete(exitName)
  return reached
}
