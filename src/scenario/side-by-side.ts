/**
 * Pieces side by side: a piece that stands several times is written out as so many alike, with a divert before them; they merge in
 * what they pass their cases on to. The line is then the one that the same pieces written out by hand would be.
 */
import type { KeysOf } from '../kinds/keys.js'
import { type Alike, beforeDivert, pricedNames } from './alike.js'
import type { Report } from './finding.js'
import { exitName } from './routes.js'
import type { Scenario } from './schema.js'

/** How many pieces like this one there are. */
export const countOf = (piece: KeysOf): number => piece['side-by-side'] ?? 1

/** What the pieces of each name are called in the line as it is built. */
function alikeIn({ line, crew }: Scenario): Alike {
  const numbered = (name: string, count: number) =>
    Array.from({ length: count }, (_, index) => `${name} ${index + 1}`)
  const pieces = Object.entries(line).filter(([, keys]) => countOf(keys) > 1)
  const alike: Alike = {
    line: Object.fromEntries(
      pieces.map(([name, keys]) => [
        name,
        { divert: `${name} divert`, pieces: numbered(name, countOf(keys)) },
      ]),
    ),
    crew: {},
  }
  for (const [name, { 'stands-at': post }] of Object.entries(crew))
    if (post !== undefined && alike.line[post])
      alike.crew[name] = numbered(name, alike.line[post].pieces.length)
  return alike
}

/** The scenario with every piece written out; the same object where none stands several times. */
export function writtenOut(scenario: Scenario): Scenario {
  if (Object.values(scenario.line).every((keys) => keys['side-by-side'] === undefined)) return scenario
  const alike = alikeIn(scenario)
  const entrance = (name: string) => alike.line[name]?.divert ?? name
  const { money } = scenario
  return {
    ...scenario,
    arrivals: Object.fromEntries(
      Object.entries(scenario.arrivals).map(([name, keys]) => [name, led(keys, entrance)]),
    ),
    line: piecesOf(scenario, alike, entrance),
    crew: Object.fromEntries(Object.entries(scenario.crew).flatMap((crew) => crewsOf(crew, alike))),
    ...(money ? { money: { ...money, ...pricedEach(money, alike) } } : {}),
    ...(Object.keys(alike.line).length > 0 ? { alike } : {}),
  }
}

type Crew = [name: string, keys: Scenario['crew'][string]]

/** A post at a piece that stands several times is several posts. */
function crewsOf([name, keys]: Crew, alike: Alike): Crew[] {
  const names = alike.crew[name]
  if (!names) return [[name, keys]]
  const { pieces } = alike.line[keys['stands-at']!]!
  return names.map((each, index) => [each, { ...keys, 'stands-at': pieces[index]! }])
}

/** The pieces in the order of the file. */
function piecesOf({ line }: Scenario, alike: Alike, entrance: (name: string) => string): Scenario['line'] {
  const entries = Object.entries(line)
  return Object.fromEntries(
    entries.flatMap(([name, keys], index): [string, KeysOf][] => {
      const { 'side-by-side': _, divert, ...own } = led(keys, entrance)
      const group = alike.line[name]
      if (!group) return [[name, own as KeysOf]]
      const { 'right-of-way': first, ...each } = own
      const following = entries[index + 1]?.[0]
      const to = each.to ?? (following === undefined ? exitName : entrance(following))
      const split = {
        ...{ type: 'divert' as const, rule: divert?.rule ?? ('shortest' as const), to: group.pieces },
        time: divert?.time ?? { law: 'constant' as const, value: 0 },
        ...(first === undefined ? {} : { 'right-of-way': first }),
      }
      return [
        [group.divert, split],
        ...group.pieces.map((piece): [string, KeysOf] => [piece, { ...each, to } as KeysOf]),
      ]
    }),
  )
}

/** The keys with every way leading to where the pieces of its name are entered. */
function led<Keys extends object>(keys: Keys, entrance: (name: string) => string): Keys {
  const entries = Object.entries(keys).map(([key, value]: [string, unknown]) => {
    if (key !== 'to' && !key.endsWith('-to')) return [key, value]
    if (typeof value === 'string') return [key, entrance(value)]
    if (Array.isArray(value)) return [key, value.map((each: string) => entrance(each))]
    if (typeof value !== 'object' || value === null) return [key, value]
    return [key, Object.fromEntries(Object.entries(value).map(([of, each]) => [of, entrance(String(each))]))]
  })
  return Object.fromEntries(entries) as Keys
}

/** What money says of a piece it says of each; of a divert that is not there it says nothing. */
function pricedEach(money: NonNullable<Scenario['money']>, alike: Alike) {
  const each = <T>(of: Record<string, T> | undefined): Record<string, T> | undefined =>
    of &&
    Object.fromEntries(
      Object.entries(of).flatMap(([path, value]) => {
        const before = beforeDivert(path)
        if (before !== null && !alike.line[before]) return []
        return pricedNames(path, alike).map((each) => [each, value])
      }),
    )
  const { capital, power } = money
  return {
    ...(capital ? { capital: each(capital) } : {}),
    ...(power ? { power: each(power) } : {}),
  }
}

/** Breaches of the rules on pieces side by side; asked of the scenario as the file gives it. */
export function checkSideBySide(scenario: Scenario, report: Report): void {
  const { line } = scenario
  const alike = alikeIn(scenario)
  for (const [name, { divert, pieces }] of Object.entries(alike.line))
    for (const each of [divert, ...pieces])
      if (Object.hasOwn(line, each))
        report(
          ['line', each],
          'bad-name',
          `\`${each}\` is already the name of one of the pieces of \`${name}\` side by side`,
          'choose another name',
          true,
        )
  for (const [name, keys] of Object.entries(line)) {
    if (keys.divert && keys['side-by-side'] === undefined)
      report(
        ['line', name, 'divert'],
        'conflict',
        '`divert` is only for several pieces side by side',
        'add `side-by-side: 2`, or remove it',
        true,
      )
    const first = keys['right-of-way']
    if (first !== undefined && alike.line[first])
      report(
        ['line', name, 'right-of-way'],
        'conflict',
        `right of way must be given to one piece, but there are ${alike.line[first].pieces.length} of \`${first}\` side by side`,
        'put a piece after them in which they merge, such as a conveyor, and name that piece',
      )
  }
}
