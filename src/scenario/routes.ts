/** The ways of a line: where the cases of each piece may go, and whether every case comes everywhere and out again. */
import { rulesOf } from '../kinds/rules.js'
import { type Report, reportUnknown } from './finding.js'
import type { Scenario } from './schema.js'
import type { Path } from './walk.js'

/** What stands in `to` for out of the line. No piece may bear this name. */
export const exitName = 'exit'

/** One way from a piece or source to a piece, or to `exitName`. */
export interface Way {
  /** Keys under the piece where it is named; empty where it only follows from the order of the file. */
  path: Path
  target: string
  /** Name of the case that alone goes this way; null where any may. */
  onlyCase: string | null
}

/**
 * The ways that `keys` name, in order: first those of `to`, a name, a list or a map from cases to names, or else
 * `following`; then those of every other key that ends in `-to`.
 */
export function waysOf(keys: Readonly<Record<string, unknown>>, following: string): Way[] {
  const ways = waysAt(['to'], keys.to ?? following, keys.to !== undefined)
  for (const [key, value] of Object.entries(keys))
    if (key.endsWith('-to') && value !== undefined) ways.push(...waysAt([key], value, true))
  return ways
}

function waysAt(path: Path, value: unknown, isGiven: boolean): Way[] {
  if (typeof value === 'string') return [{ path: isGiven ? path : [], target: value, onlyCase: null }]
  if (Array.isArray(value))
    return value.map((target: string, index) => ({ path: [...path, index], target, onlyCase: null }))
  return Object.entries(value as Record<string, string>).map(([onlyCase, target]) => ({
    path: [...path, onlyCase],
    target,
    onlyCase,
  }))
}

/** The ways of every piece, by name, in the order of the file. */
export function lineWays(scenario: Scenario): Map<string, Way[]> {
  const entries = Object.entries(scenario.line)
  return new Map(
    entries.map(([name, keys], index) => [name, waysOf(keys, entries[index + 1]?.[0] ?? exitName)]),
  )
}

/** The ways of every source, by name. */
export function arrivalWays(scenario: Scenario): Map<string, Way[]> {
  const first = Object.keys(scenario.line)[0] ?? exitName
  return new Map(Object.entries(scenario.arrivals).map(([name, keys]) => [name, waysOf(keys, first)]))
}

/** Ways by the name of the piece or source that they lead from. */
export type Ways = ReadonlyMap<string, readonly Way[]>

/** Names of those from which a way leads to `name`. */
export const feedersOf = (ways: Ways, name: string): string[] =>
  [...ways].filter(([, all]) => all.some(({ target }) => target === name)).map(([each]) => each)

/** Where the cases of `kind` go from `name`; null: all cases. */
export const targetsOf = (ways: Ways, name: string, kind: string | null = null): string[] =>
  (ways.get(name) ?? [])
    .filter(({ onlyCase }) => kind === null || (onlyCase ?? kind) === kind)
    .map(({ target }) => target)

/** All that is reached from `starts`, these included, where `targets` follow a name. */
export function reachedFrom(
  starts: Iterable<string>,
  targets: (name: string) => readonly string[],
): Set<string> {
  const reached = new Set(starts)
  // a set keeps the order in which it was filled, so that this visits what is added on the way
  for (const name of reached) for (const target of targets(name)) reached.add(target)
  return reached
}

/** Where cases come first, source by source. */
export const startsOf = (sources: Ways): string[] => [...sources.values()].flat().map(({ target }) => target)

/** Tells the names of the pieces that cases of a kind may come to. */
export function reachOf(scenario: Scenario): (kind: string) => ReadonlySet<string> {
  const ways = lineWays(scenario)
  const starts = startsOf(arrivalWays(scenario))
  const of = (kind: string) => {
    const reached = reachedFrom(starts, (name) => targetsOf(ways, name, kind))
    reached.delete(exitName)
    return reached
  }
  const named = new Set([...ways.values()].flat().map(({ onlyCase }) => onlyCase))
  // of thousands of kinds those that no way names go alike
  let others: ReadonlySet<string> | null = null
  return (kind) => {
    if (named.has(kind)) return of(kind)
    others ??= of(kind)
    return others
  }
}

/** Every breach of the rules of ways. The later ones are asked only of a line in which all names stand for something. */
export function checkRoutes(scenario: Scenario, report: Report): void {
  const pieces = lineWays(scenario)
  const sources = arrivalWays(scenario)
  let isSound = true
  const strictly: Report = (...finding) => {
    isSound = false
    report(...finding)
  }
  if (pieces.has(exitName))
    strictly(['line', exitName], 'bad-name', '`exit` means out of the line', 'choose another name', true)
  checkTargets('arrivals', sources, pieces, strictly)
  checkTargets('line', pieces, pieces, strictly)
  for (const [name, piece] of Object.entries(scenario.line))
    rulesOf(piece).checkWays?.(piece, { scenario, path: ['line', name] }, strictly)
  for (const [name, { 'right-of-way': first }] of Object.entries(scenario.line)) {
    const feeders = [...feedersOf(pieces, name), ...feedersOf(sources, name)]
    if (first !== undefined && !feeders.includes(first))
      reportUnknown(
        report,
        ['line', name, 'right-of-way'],
        first,
        feeders,
        `passes no cases on to \`${name}\``,
      )
  }
  const isNothingToAsk = [scenario.cases, scenario.arrivals, scenario.line].some(
    (map) => Object.keys(map).length === 0,
  )
  if (!isSound || isNothingToAsk) return
  checkReach(unlikeKinds(Object.keys(scenario.cases), pieces), pieces, startsOf(sources), report)
}

/** Of kinds that go alike, as all do whom no way names, the first alone. */
function unlikeKinds(kinds: readonly string[], pieces: Ways): string[] {
  const named = new Set([...pieces.values()].flat().map(({ onlyCase }) => onlyCase))
  const other = kinds.find((kind) => !named.has(kind))
  return kinds.filter((kind) => named.has(kind) || kind === other)
}

/** Every name that is given stands for a piece, or for out of the line. */
function checkTargets(group: string, all: Ways, pieces: Ways, report: Report): void {
  for (const [name, ways] of all)
    for (const { path, target } of ways)
      if (path.length > 0 && target !== exitName && !pieces.has(target))
        reportUnknown(
          report,
          [group, name, ...path],
          target,
          [...pieces.keys(), exitName],
          'is not a piece of the line',
        )
}

/** Every piece is reached by some case, and from wherever a case comes it has a way out. */
function checkReach(kinds: readonly string[], pieces: Ways, starts: readonly string[], report: Report): void {
  const reachedByAny = new Set<string>()
  const loops = new Set<string>()
  for (const kind of kinds) {
    const targets = (name: string) => targetsOf(pieces, name, kind)
    const reached = reachedFrom(starts, targets)
    for (const name of reached) reachedByAny.add(name)
    const loop = loopWithoutExit(pieces, reached, targets)
    const key = loop && [...loop].sort().join('\n')
    if (!loop || !key || loops.has(key)) continue
    loops.add(key)
    const last = loop.at(-1)!
    const way = pieces.get(last)!.find(({ target }) => target === loop[0])!
    report(
      ['line', last, ...way.path],
      'conflict',
      `the case \`${kind}\` never leaves this loop: ${[...loop, loop[0]].map((name) => `\`${name}\``).join(' to ')}`,
      'send it to a later piece, or put a divert or an inspection with a way out into the loop',
      way.path.length === 0,
    )
  }
  // a piece behind a loop is not reached because of that loop, which has been told
  if (loops.size > 0) return
  for (const name of pieces.keys())
    if (!reachedByAny.has(name))
      report(
        ['line', name],
        'conflict',
        'no case reaches this piece',
        'name it in the `to` of another piece, or remove it',
        true,
      )
}

/** The loop into which a case runs where no way leads out, going the first way each time; null where it always has a way out. */
function loopWithoutExit(
  pieces: Ways,
  reached: ReadonlySet<string>,
  targets: (name: string) => string[],
): string[] | null {
  const leaves = new Set<string>([exitName])
  let before = 0
  while (leaves.size > before) {
    before = leaves.size
    for (const name of pieces.keys()) if (targets(name).some((target) => leaves.has(target))) leaves.add(name)
  }
  const caught = [...pieces.keys()].find((name) => reached.has(name) && !leaves.has(name))
  if (caught === undefined) return null
  const seen: string[] = []
  let name = caught
  while (!seen.includes(name)) {
    seen.push(name)
    name = targets(name)[0]!
  }
  return seen.slice(seen.indexOf(name))
}
