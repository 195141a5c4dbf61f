/** Finds where in the YAML text a path stands, and shows that line with a caret. */
import { type Document, isMap, isScalar, isSeq, type LineCounter, type Node } from 'yaml'
import { printable } from './printable.js'
import type { Path } from './walk.js'

export interface Place {
  line: number
  column: number
  window: string
}

/** The source line at an offset with a caret under it; long lines are cut around the caret. */
export function placeAt(text: string, lines: LineCounter, offset: number): Place {
  const { line, col } = lines.linePos(Math.max(0, Math.min(offset, text.length)))
  const start = lines.lineStarts[line - 1] ?? 0
  const end = text.indexOf('\n', start)
  const whole = printable(text.slice(start, end < 0 ? text.length : end).replace(/\r$/, ''))
  const from = Math.max(0, col - 1 - 60)
  const shownLine = whole.slice(from, from + 100)
  const label = `${line}`.padStart(5)
  return { line, column: col, window: `${label} | ${shownLine}\n      | ${' '.repeat(col - 1 - from)}^` }
}

/** Offset of the value at `path`, or of the key where `atKey`; of the nearest enclosing one where the path ends early. */
export function offsetOf(document: Document, path: Path, atKey = false): number {
  let node = document.contents as Node | null
  let offset = node?.range?.[0] ?? 0
  for (const [index, step] of path.entries()) {
    const entry = entryOf(node, step)
    if (!entry) return offset
    const { key, value, isInList } = entry
    const isAtKey = !isInList && ((atKey && index === path.length - 1) || isMap(value) || !value?.range)
    offset = (isAtKey ? key : value)?.range?.[0] ?? offset
    node = value
  }
  return offset
}

interface Entry {
  key: Node | null
  value: Node | null
  isInList: boolean
}

/** What stands in a node under a key, or in its place of a list. */
function entryOf(node: Node | null, step: string | number): Entry | null {
  if (isSeq(node)) {
    const value = node.items[Number(step)] as Node | undefined
    return value ? { key: null, value, isInList: true } : null
  }
  if (!isMap(node)) return null
  const pair = node.items.find(({ key }) => String(isScalar(key) ? key.value : key) === String(step))
  return pair ? { key: pair.key as Node | null, value: pair.value as Node | null, isInList: false } : null
}
