/** Pieces that stand side by side under one name of the file: what the line calls each of them, and where their keys stand. */
import type { Path } from './walk.js'

/** The pieces of one name, and the divert that shares cases out among them. */
export interface Group {
  divert: string
  pieces: string[]
}

/** By name in the file; what stands alone is not there. */
export interface Alike {
  line: Record<string, Group>
  /** Crews with a post at such a piece: one for each. */
  crew: Record<string, string[]>
}

/** What follows the name of a piece where its divert is meant, in paths. */
const ofDivert = 'divert'

const priced = (group: unknown, key: unknown) => group === 'money' && (key === 'capital' || key === 'power')

/** Name of the pieces whose divert a path such as `line.NAME.divert` means; null of any other path. */
export const beforeDivert = (path: string): string | null => /^line\.(.+)\.divert$/.exec(path)?.[1] ?? null

/** Paths under which the piece that a path of money names is built. */
export function pricedNames(path: string, { line }: Alike): string[] {
  const pieces = line[path.slice('line.'.length)]?.pieces
  if (pieces) return pieces.map((each) => `line.${each}`)
  const group = line[beforeDivert(path) ?? '']
  return group ? [`line.${group.divert}`] : [path]
}

/** Where what stands at a place of the file stands in the line as it is built: once for each piece. */
export function placesOf(at: Path, alike: Alike): Path[] {
  const [room, name, ...rest] = at
  if (priced(room, name) && rest.length > 0)
    return pricedNames(String(rest[0]), alike).map((each) => [room!, name!, each, ...rest.slice(1)])
  const group = room === 'line' ? alike.line[name!] : undefined
  if (group && rest[0] === ofDivert) return [['line', group.divert, ...rest.slice(1)]]
  const names = group?.pieces ?? (room === 'crew' ? alike.crew[name!] : undefined)
  return names ? names.map((each) => [room!, each, ...rest]) : [at]
}

/** The path in the file of what stands at a place of the line as it is built. */
export function pathInFile(at: Path, alike: Alike): Path {
  const [room, name, ...rest] = at
  if (room === 'crew') {
    const crew = Object.entries(alike.crew).find(([, names]) => names.includes(String(name)))
    return crew ? [room, crew[0], ...rest] : at
  }
  if (priced(room, name) && rest.length > 0) {
    const [, ...steps] = pathInFile(['line', String(rest[0]).slice('line.'.length)], alike)
    return [room!, name!, ['line', ...steps].join('.'), ...rest.slice(1)]
  }
  if (room !== 'line') return at
  for (const [each, { divert, pieces }] of Object.entries(alike.line)) {
    if (pieces.includes(String(name))) return [room, each, ...rest]
    if (divert === name) return [room, each, ofDivert, ...rest]
  }
  return at
}
