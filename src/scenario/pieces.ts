/** Pieces that a variant adds or takes out: in the tree of the file, where the ways of those that stay close by themselves. */

import type { Finding } from './finding.js'
import { isMap, mapsIn } from './is-map.js'
import { nearest } from './nearest.js'
import type { Override } from './overrides.js'
import { shown } from './printable.js'
import { exitName, feedersOf, reachedFrom, targetsOf, type Way, waysOf } from './routes.js'

type Tree = Record<string, unknown>
type Piece = Record<string, unknown>
/** Why a piece cannot be added or taken out. */
export interface PieceFault {
  finding: Omit<Finding, 'found' | 'atKey'>
  override: Override
}

/** The pieces of a tree as far as they are such. */
const piecesIn = (tree: Tree): Record<string, Piece> => Object.fromEntries(mapsIn(tree.line))

const fault = (
  override: Override,
  code: Finding['code'],
  rule: string,
  fix: string,
  within: readonly string[] = [],
): PieceFault => ({
  finding: { code, path: [...override.path.split('.'), ...within], rule, fix },
  override,
})

/** Why a piece cannot stand where it is to; null where it can. */
function cannotStand(line: Record<string, Piece>, name: string, override: Override): PieceFault | null {
  const names = Object.keys(line)
  const { value } = override
  const told = (code: Finding['code'], rule: string, fix: string, within: readonly string[] = []) =>
    fault(override, code, rule, fix, within)
  if (!isMap(value))
    return told('wrong-type', 'a piece is a map of keys', 'such as `{after: NAME, type: station, time: 5 s}`')
  if (Object.hasOwn(line, name))
    return told(
      'bad-name',
      `a piece \`${shown(name)}\` exists already`,
      'choose another name, or change that piece',
    )
  const { after } = value
  if (after === undefined)
    return told(
      'missing-key',
      '`after` is missing: the piece before the new one',
      `such as \`after: ${names[0]}\``,
    )
  if (typeof after !== 'string' || !Object.hasOwn(line, after))
    return told(
      'no-such-path',
      `\`${shown(after)}\` is not a piece of the line`,
      nearest(String(after), names),
      ['after'],
    )
  const { to } = line[after]!
  if (to === undefined || typeof to === 'string') return null
  const ways = [
    ...new Set(
      waysIn({ [after]: line[after]! })
        .get(after)!
        .map(({ target }) => target),
    ),
  ]
  return told(
    'conflict',
    `\`${after}\` sends cases several ways, so the next piece is not clear`,
    `put it after one of ${ways.filter((each) => each !== exitName).join(', ')}`,
    ['after'],
  )
}

/** Puts a piece behind another one of `tree`, in place: what that one passed on to, the new one does. Returns what was wrong. */
export function addPiece(tree: Tree, override: Override): PieceFault | null {
  const name = override.path.slice('line.'.length)
  const line = piecesIn(tree)
  const found = cannotStand(line, name, override)
  if (found) return found
  const { after, ...keys } = override.value as Piece & { after: string }
  const { to, ...before } = line[after]!
  const names = Object.keys(line)
  const next = to ?? names[names.indexOf(after) + 1] ?? exitName
  const added = { ...(to === undefined ? {} : { to }), ...structuredClone(keys) }
  tree.line = Object.fromEntries(
    Object.entries(tree.line as Tree).flatMap(([each, piece]): [string, unknown][] => {
      if (each === after)
        return [
          [each, before],
          [name, added],
        ]
      const isNext = each === next && isMap(piece) && piece['right-of-way'] === after
      return [[each, isNext ? { ...piece, 'right-of-way': name } : piece]]
    }),
  )
  return null
}

/** Takes pieces out of `tree`, in place, all at once. Returns what was wrong; then nothing was taken out. */
export function removePieces(tree: Tree, removals: readonly Override[]): PieceFault[] {
  if (removals.length === 0) return []
  const line = piecesIn(tree)
  const names = Object.keys(line)
  const named = removals.map((override) => ({ override, name: override.path.slice('line.'.length) }))
  const unknown = named.filter(({ name }) => !Object.hasOwn(line, name))
  if (unknown.length > 0)
    return unknown.map(({ override, name }) =>
      fault(override, 'no-such-path', `\`${shown(name)}\` is not a piece of the line`, nearest(name, names)),
    )
  const gap = new Gap(line, new Set(named.map(({ name }) => name)))
  if (gap.kept.length === 0)
    return [fault(removals.at(-1)!, 'conflict', 'no piece of the line is left', 'keep at least one piece')]
  const faults = named.flatMap(({ override, name }) => {
    const open = gap.open(name)
    return open ? [fault(override, 'conflict', open.rule, open.fix)] : []
  })
  if (faults.length > 0) return faults
  const single = gap.kept.find((name) => gap.hasLostItsWays(name))
  if (single !== undefined)
    return [
      fault(
        named.find(({ name }) => gap.leadsTo(single, name))!.override,
        'conflict',
        `\`${single}\` would have only one way left, but it must divide cases between ways`,
        `remove \`${single}\` too`,
      ),
    ]
  close(tree, gap)
  return []
}

/** The ways of all pieces by name; what names nothing is left out, and told later with all other slips. */
function waysIn(line: Record<string, Piece>): Map<string, Way[]> {
  const names = Object.keys(line)
  return new Map(
    names.map((name, index) => {
      const given = Object.entries(line[name]!).filter(([, value]) => value !== null)
      const ways = waysOf(Object.fromEntries(given), names[index + 1] ?? exitName)
      return [name, ways.filter(({ target }) => typeof target === 'string')]
    }),
  )
}

/** What is left of a line where pieces were taken out, and where cases go that went to these. */
class Gap {
  readonly kept: string[]
  private readonly ways: ReadonlyMap<string, readonly Way[]>

  constructor(
    readonly line: Record<string, Piece>,
    readonly out: ReadonlySet<string>,
  ) {
    const names = Object.keys(line)
    this.kept = names.filter((name) => !out.has(name))
    this.ways = waysIn(line)
  }

  /** Targets of the ways on which a piece passes its cases on: of an inspection not those of what it rejects. */
  private onwards(name: string): string[] {
    const on = this.ways.get(name)!.filter(({ path }) => path.length === 0 || path[0] === 'to')
    return on.map(({ target }) => target)
  }

  /** What is reached first of what is left, from `target` on; a way that leads past the others of its divert is none. */
  ends(target: string, seen: readonly string[] = []): string[] {
    if (!this.out.has(target)) return [target]
    if (seen.includes(target)) return []
    return this.endsOf(target, [...seen, target])
  }

  /** The same of all ways of a piece. */
  endsOf(name: string, seen: readonly string[] = []): string[] {
    const targets = [...new Set(this.onwards(name))]
    const ends = targets.map((target) => ({ isCut: this.out.has(target), all: this.ends(target, seen) }))
    const left = ends.filter(({ isCut }) => !isCut).flatMap(({ all }) => all)
    const closed = ends.filter(({ isCut }) => isCut).flatMap(({ all }) => all)
    const others = (each: string) => (each === name ? [] : targetsOf(this.ways, each))
    const behind = reachedFrom(left, others)
    return [...new Set([...left, ...closed.filter((end) => !behind.has(end))])]
  }

  /** Why cases do not know where to go once a piece is out; null where they do. */
  open(name: string): { rule: string; fix: string } | null {
    const ends = this.endsOf(name, [name])
    if (ends.length === 0)
      return {
        rule: `cases sent to \`${name}\` come back to it: without it they would never leave the line`,
        fix: 'remove the pieces that lead back to it too',
      }
    if (ends.length === 1) return null
    return {
      rule: `\`${name}\` sends cases several ways: without it they could go to ${ends.join(' or ')}`,
      fix: `remove all of these ways except one, or keep \`${name}\``,
    }
  }

  leadsTo = (name: string, target: string): boolean => this.onwards(name).includes(target)

  /** Whether a list of several ways is left with one. */
  hasLostItsWays(name: string): boolean {
    const { to } = this.line[name]!
    return Array.isArray(to) && to.length > 1 && (closed(to, name, this) as unknown[]).length < 2
  }

  /** Where cases go that went to `target`. */
  end = (target: string): string => this.ends(target)[0] ?? target
}

/** Leads the ways of what is left past what is out; money and posts of what is out go with it. */
function close(tree: Tree, gap: Gap): void {
  const names = Object.keys(gap.line)
  const next = (index: number, within: readonly string[]) => within[index + 1] ?? exitName
  const entries = gap.kept.map((name, index): [string, Piece] => {
    const piece = { ...gap.line[name]! }
    for (const key of Object.keys(piece))
      if (key === 'to' || key.endsWith('-to')) piece[key] = closed(piece[key], name, gap)
    const following = gap.end(next(names.indexOf(name), names))
    if (piece.to === undefined && following !== next(index, gap.kept)) piece.to = following
    return [name, piece]
  })
  const others = Object.entries(tree.line as Tree).filter(([, piece]) => !isMap(piece))
  const line = Object.fromEntries([...entries, ...others]) as Record<string, Piece>
  tree.line = line
  closeArrivals(tree, gap)
  closeRights(tree, line, gap)
  forget(tree, gap)
}

/** Sources bring their cases to what is left. */
function closeArrivals({ arrivals }: Tree, gap: Gap): void {
  const entrance = gap.end(Object.keys(gap.line)[0]!)
  for (const [, source] of mapsIn(arrivals)) {
    if (typeof source.to === 'string') source.to = gap.end(source.to)
    else if (entrance !== gap.kept[0]) source.to = entrance
  }
}

/** Right of way passes on to the only one that fed what is out; where nobody is left to wait for it, it is none. */
function closeRights({ arrivals }: Tree, line: Record<string, Piece>, gap: Gap): void {
  const sources = mapsIn(arrivals).map(([, { to }]) => to ?? gap.kept[0])
  const ways = waysIn(line)
  for (const [name, piece] of Object.entries(line)) {
    const first = piece['right-of-way']
    if (typeof first !== 'string' || !gap.out.has(first)) continue
    const isAlone = feedersOf(ways, name).length + sources.filter((to) => to === name).length < 2
    if (isAlone) delete piece['right-of-way']
    else piece['right-of-way'] = feederOf(first, gap) ?? first
  }
}

/** The value of a key of ways. Of a list ways that lead past the others are left out. */
function closed(value: unknown, name: string, gap: Gap): unknown {
  if (typeof value === 'string') return gap.end(value)
  const ends = gap.endsOf(name)
  const isLeft = (target: unknown) => !gap.out.has(String(target)) || ends.includes(gap.end(String(target)))
  if (Array.isArray(value)) return value.filter(isLeft).map((target) => gap.end(String(target)))
  if (!isMap(value)) return value
  return Object.fromEntries(
    Object.entries(value)
      .filter(([, target]) => isLeft(target))
      .map(([kind, target]) => [kind, gap.end(String(target))]),
  )
}

/** The only one that passed its cases on to a piece, by any others that are out; null where there are several. */
function feederOf(name: string, gap: Gap): string | null {
  const feeders = feedersOf(waysIn(gap.line), name)
  if (feeders.length !== 1) return null
  return gap.out.has(feeders[0]!) ? feederOf(feeders[0]!, gap) : feeders[0]!
}

/** What is said of a piece that is out goes with it: its price, its power, the post at it. */
function forget({ money, crew }: Tree, { out }: Gap): void {
  const { capital, power }: Tree = isMap(money) ? money : {}
  for (const priced of [capital, power].filter(isMap))
    for (const path of Object.keys(priced)) if (out.has(path.split('.')[1] ?? '')) delete priced[path]
  for (const [, people] of mapsIn(crew)) if (out.has(String(people['stands-at']))) delete people['stands-at']
}
