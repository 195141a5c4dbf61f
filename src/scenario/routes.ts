/** The ways of a line: where the cases of each piece may go, and whether every case comes everywhere and out again. */
import { rulesOf } from '../kinds/rules.js'
import type { Report } from './finding.js'
import { nearest } from './nearest.js'
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
    strictly(['line', exitName], 'bad-name', '`exit` stands for out of the line', 'choose another name', true)
  for (const [group, all] of [
    ['arrivals', sources],
    ['line', pieces],
  ] as const)
    for (const [name, ways] of all)
      for (const { path, target } of ways)
        if (path.length > 0 && target !== exitName && !pieces.has(target))
          strictly(
            [group, name, ...path],
            'no-such-path',
            `\`${target}\` is no entry of the line`,
            nearest(target, [...pieces.keys(), exitName]),
          )
  for (const [name, piece] of Object.entries(scenario.line))
    rulesOf(piece).checkWays?.(piece, { scenario, path: ['line', name] }, strictly)
  for (const [name, piece] of Object.entries(scenario.line))
    checkRightOfWay(name, piece['right-of-way'], pieces, sources, report)
  const isNothingToAsk = [scenario.cases, scenario.arrivals, scenario.line].some(
    (map) => Object.keys(map).length === 0,
  )
  if (!isSound || isNothingToAsk) return
  checkReach(scenario, pieces, sources, report)
}

function checkRightOfWay(
  name: string,
  given: string | undefined,
  pieces: ReadonlyMap<string, Way[]>,
  sources: ReadonlyMap<string, Way[]>,
  report: Report,
): void {
  if (given === undefined) return
  const feeders = [...pieces, ...sources]
    .filter(([, ways]) => ways.some((way) => way.target === name))
    .map(([each]) => each)
  if (!feeders.includes(given))
    report(
      ['line', name, 'right-of-way'],
      'no-such-path',
      `\`${given}\` passes no cases on to \`${name}\``,
      nearest(given, feeders),
    )
}

/** Every piece is reached by some case, and from wherever a case comes it has a way out. */
function checkReach(
  scenario: Scenario,
  pieces: ReadonlyMap<string, Way[]>,
  sources: ReadonlyMap<string, Way[]>,
  report: Report,
): void {
  const reachedByAny = new Set<string>()
  const loops = new Set<string>()
  for (const kind of Object.keys(scenario.cases)) {
    const targets = (name: string): string[] =>
      (pieces.get(name) ?? []).filter((way) => (way.onlyCase ?? kind) === kind).map((way) => way.target)
    const reached = new Set<string>([...sources.values()].flat().map((way) => way.target))
    // a set keeps the order in which it was filled, so that this visits what is added on the way
    for (const name of reached) for (const target of targets(name)) reached.add(target)
    for (const name of reached) reachedByAny.add(name)

    const leaves = new Set<string>([exitName])
    let before = 0
    while (leaves.size > before) {
      before = leaves.size
      for (const name of pieces.keys())
        if (targets(name).some((target) => leaves.has(target))) leaves.add(name)
    }
    const caught = [...pieces.keys()].find((name) => reached.has(name) && !leaves.has(name))
    if (caught === undefined) continue
    const loop = loopFrom(caught, targets)
    const key = [...loop].sort().join('\n')
    if (loops.has(key)) continue
    loops.add(key)
    const last = loop.at(-1)!
    const way = pieces.get(last)!.find(({ target }) => target === loop[0])!
    report(
      ['line', last, ...way.path],
      'conflict',
      `the case \`${kind}\` never leaves this loop: ${[...loop, loop[0]].map((name) => `\`${name}\``).join(' to ')}`,
      'send it to a later entry, or put a divert or an inspection with a way out into the loop',
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
        'no case comes to this piece',
        'name it in the `to` of another one, or take it out',
        true,
      )
}

/** The loop into which a case runs from `start`, going the first way each time, where no way leads out. */
function loopFrom(start: string, targets: (name: string) => string[]): string[] {
  const seen: string[] = []
  let name = start
  while (!seen.includes(name)) {
    seen.push(name)
    name = targets(name)[0]!
  }
  return seen.slice(seen.indexOf(name))
}
