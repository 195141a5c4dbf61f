/** What differs first between what a text says and what it is to say. */
import {
  type Document,
  isAlias,
  isMap,
  isSeq,
  type Pair,
  type ParsedNode,
  type YAMLMap,
  type YAMLSeq,
} from 'yaml'
import { isMap as isTree } from '../../scenario/is-map.js'
import { contentOf } from './yaml-text.js'

export type Holder = YAMLMap.Parsed | YAMLSeq.Parsed

/** Where a value stands: entry `index`, from 0, of what holds it; the whole document is held by nothing. */
export interface Place {
  holder: Holder | null
  index: number
}

/** A value at its place. */
export type Replace = Place & { does: 'replace'; value: unknown }

/**
 * A change of the entries of `holder`, of which `whole` is what comes of all changes; in a list they have no key. An entry is put behind
 * entry `index` (-1: before all), taken out, or moved to before entry `to`, which comes earlier.
 */
export type InHolder = { holder: Holder; index: number; whole: Replace } & (
  | { does: 'insert'; key: string | null; value: unknown }
  | { does: 'remove' }
  | { does: 'move'; to: number }
)

/** The next change towards what the text is to say. */
export type Difference = Replace | InHolder

/** Whether two values say the same, keys in their order. */
export const isSame = (one: unknown, other: unknown): boolean => written(one) === written(other)

const written = (value: unknown) =>
  JSON.stringify(value, (_, each: unknown) =>
    typeof each === 'number' && !Number.isFinite(each) ? `number ${each}` : each,
  )

/** The first difference; null where there is none. */
export const firstDifference = (document: Document.Parsed, wanted: unknown): Difference | null =>
  differenceAt(document.contents, { does: 'replace', holder: null, index: 0, value: wanted }, document)

function differenceAt(node: unknown, whole: Replace, document: Document): Difference | null {
  const { value } = whole
  if (isSame(contentOf(node, document) ?? null, value)) return null
  if (typeof node !== 'object' || node === null || isAlias(node)) return whole
  if (isMap(node) && isTree(value) && node.items.length > 0)
    return inMap(node as YAMLMap.Parsed, whole, value, document)
  if (isSeq(node) && Array.isArray(value) && node.items.length > 0)
    return inList(node as YAMLSeq.Parsed, whole, value, document)
  return whole
}

export const keyOf = ({ key }: Pair): string => {
  const value = typeof key === 'object' && key !== null && 'value' in key ? key.value : key
  return String(value)
}

function inMap(
  map: YAMLMap.Parsed,
  whole: Replace,
  wanted: Record<string, unknown>,
  document: Document,
): Difference | null {
  const keys = map.items.map(keyOf)
  const entries = Object.entries(wanted).filter(([, value]) => value !== undefined)
  if (entries.length === 0) return whole
  const here = { holder: map, whole }
  for (const [at, [key, value]] of entries.entries())
    if (!keys.includes(key)) {
      const before = entries[at - 1]?.[0]
      const index = before === undefined ? -1 : keys.indexOf(before)
      return { does: 'insert', ...here, index, key, value }
    }
  const gone = keys.findIndex((key) => wanted[key] === undefined)
  if (gone >= 0) return { does: 'remove', ...here, index: gone }
  const out = keys.findIndex((key, index) => key !== entries[index]![0])
  if (out >= 0) return { does: 'move', ...here, index: keys.indexOf(entries[out]![0]), to: out }
  for (const [index, pair] of map.items.entries()) {
    const value = wanted[keys[index]!]
    const found = differenceAt(pair.value, { does: 'replace', holder: map, index, value }, document)
    if (found) return found
  }
  return null
}

function inList(
  list: YAMLSeq.Parsed,
  whole: Replace,
  wanted: readonly unknown[],
  document: Document,
): Difference | null {
  if (wanted.length === 0) return whole
  const items: readonly ParsedNode[] = list.items
  const first = items.findIndex((item, index) => !isSame(contentOf(item, document) ?? null, wanted[index]))
  const at = first < 0 ? items.length : first
  const here = { holder: list, whole }
  if (wanted.length > items.length)
    return { does: 'insert', ...here, index: at - 1, key: null, value: wanted[at] }
  if (wanted.length < items.length) return { does: 'remove', ...here, index: Math.min(at, items.length - 1) }
  return differenceAt(items[at], { does: 'replace', holder: list, index: at, value: wanted[at] }, document)
}
