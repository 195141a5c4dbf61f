/** Writes values into the text of a scenario: what stands there keeps its place, its comments and its form. */
import {
  isCollection,
  isMap,
  isPair,
  isScalar,
  type Node,
  type Pair,
  parseDocument,
  type YAMLMap,
} from 'yaml'
import { misuse } from './fault.js'
import { printable } from './printable.js'

/** A value to be written, as YAML in one line, and what is said of it. */
export interface Change {
  /** Of the format; names of equipment in it exist. */
  path: string
  text: string
  /** Stands in a comment above. */
  comment: string
}

/** The text with all changes made. Throws `Fault` `asked` where something else of it would change with them. */
export function withChanges(text: string, changes: readonly Change[]): string {
  const changed = changes.reduce((before, change) => withChange(before, change), text)
  const expected = treeOf(text) as Record<string, unknown>
  for (const { path, text: value } of changes) put(expected, path.split('.'), treeOf(value))
  // a value that has a name is read at other places too
  if (JSON.stringify(sorted(expected)) !== JSON.stringify(sorted(treeOf(changed))))
    throw misuse(
      'the values cannot be written into this scenario without changing others: first write out all references by `*name`',
    )
  return changed
}

const parsed = (text: string) => parseDocument(text, { version: '1.2' })
const treeOf = (text: string): unknown => parsed(text).toJS({ maxAliasCount: 100 })

function put(into: Record<string, unknown>, [step, ...rest]: string[], value: unknown): void {
  if (rest.length === 0) {
    into[step!] = value
    return
  }
  const inside = into[step!]
  const isOpen = typeof inside === 'object' && inside !== null && !Array.isArray(inside)
  // a copy: what several places share is one object
  into[step!] = isOpen ? { ...inside } : {}
  put(into[step!] as Record<string, unknown>, rest, value)
}

/** With its keys in order: a key that is added may stand elsewhere. */
function sorted(value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return value
  if (Array.isArray(value)) return value.map(sorted)
  const entries = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1))
  return entries.map(([key, inner]) => [key, sorted(inner)])
}

function withChange(text: string, { path, text: value, comment }: Change): string {
  let map = parsed(text).contents as unknown as YAMLMap
  const steps = path.split('.')
  for (const [index, step] of steps.entries()) {
    const rest = steps.slice(index + 1)
    const pair = map.items.find(({ key }) => String(isScalar(key) ? key.value : key) === step)
    if (!pair) return inserted(text, map, `${step}: ${nested(rest, value)}`, comment)
    if (rest.length === 0 || !isMap(pair.value)) return replaced(text, pair, nested(rest, value), comment)
    map = pair.value
  }
  return text
}

/** The value below the keys that do not exist yet. */
const nested = (keys: readonly string[], value: string): string =>
  keys.reduceRight((inner, key) => `{${key}: ${inner}}`, value)

function replaced(text: string, { key, value }: Pair, put: string, comment: string): string {
  const keyEnd = (key as Node).range![1]
  const old = value as Node | null
  const isEmpty = !old?.range || old.range[0] === old.range[1]
  const colon = text.indexOf(':', keyEnd) + 1
  const [from, to] = isEmpty ? [colon, colon] : [old.range![0], endOf(text, old)]
  const was = flat(text.slice(from, to))
  const changed = `${text.slice(0, from)}${isEmpty ? ' ' : ''}${put}${text.slice(to)}`
  return commented(changed, (key as Node).range![0], was === '' ? comment : `${comment}; before: ${was}`)
}

function inserted(text: string, map: YAMLMap, entry: string, comment: string): string {
  const last = map.items.at(-1)
  const end = last ? endOfPair(text, last) : map.range![0] + 1
  if (map.flow) {
    const changed = `${text.slice(0, end)}${last ? ', ' : ''}${entry}${text.slice(end)}`
    return commented(changed, map.range![0], comment)
  }
  const lineEnd = text.indexOf('\n', end)
  const first = (map.items[0]!.key as Node).range![0]
  const indent = text.slice(text.lastIndexOf('\n', first - 1) + 1, first).replace(/\S/g, ' ')
  const at = lineEnd < 0 ? text.length : lineEnd + 1
  const line = `${indent}${entry}\n`
  const changed = `${text.slice(0, at)}${lineEnd < 0 ? '\n' : ''}${line}${text.slice(at)}`
  return commented(changed, at + indent.length + (lineEnd < 0 ? 1 : 0), comment)
}

/** Where what a node says ends: empty lines and comments behind it are not part of it. */
export function endOf(text: string, node: Node): number {
  const [from, end] = node.range!
  if (isScalar(node))
    return node.type?.startsWith('BLOCK') ? from + text.slice(from, end).trimEnd().length : end
  if (!isCollection(node) || node.flow || node.items.length === 0) return end
  const last = node.items.at(-1) as Node | Pair
  return isPair(last) ? endOfPair(text, last) : endOf(text, last)
}

/** The same of a key with its value, which may not be written at all. */
export function endOfPair(text: string, { key, value }: Pair): number {
  const { range } = (value ?? {}) as Partial<Node>
  if (range && range[0] < range[1]) return endOf(text, value as Node)
  return text.indexOf(':', (key as Node).range![1]) + 1
}

/** In one line, without comments. */
function flat(text: string): string {
  const lines = text.split('\n').map((line) => line.replace(/(^|\s)#.*$/, '').trim())
  return lines.filter((line) => line !== '').join(' ')
}

/** A comment in a line of its own above that in which `offset` lies. */
function commented(text: string, offset: number, comment: string): string {
  const start = text.lastIndexOf('\n', offset - 1) + 1
  const indent = /^[ \t]*/.exec(text.slice(start))![0]
  return `${text.slice(0, start)}${indent}# ${printable(comment)}\n${text.slice(start)}`
}
