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
  let node: Node | null = document.contents as Node | null
  let offset = node?.range?.[0] ?? 0
  for (const [index, step] of path.entries()) {
    if (isMap(node)) {
      const pair: { key: unknown; value: unknown } | undefined = node.items.find((item) => {
        const key = item.key
        return (isScalar(key) ? String(key.value) : String(key)) === String(step)
      })
      if (!pair) return offset
      const keyNode = pair.key as Node | null
      const valueNode = pair.value as Node | null
      const isLast = index === path.length - 1
      offset =
        (isLast && atKey) || isMap(valueNode) || !valueNode?.range
          ? (keyNode?.range?.[0] ?? offset)
          : valueNode.range[0]
      node = valueNode
    } else if (isSeq(node)) {
      const item = node.items[Number(step)] as Node | undefined
      if (!item) return offset
      offset = item.range?.[0] ?? offset
      node = item
    } else return offset
  }
  return offset
}
