/** Where in a scenario a place of its text stands: the keys that lead there, also while a line is being written. */
import { syntaxTree } from '@codemirror/language'
import type { EditorState, Text } from '@codemirror/state'

/** Keys that lead to the map in which something is written at `at`, and the key whose value it is, if it is one. */
export interface TextPlace {
  path: string[]
  /** Null where a key is written. */
  key: string | null
  /** Where the word that is written begins. */
  from: number
}

const keyOfLine = /^(\s*(?:- )?)(?:"([^"]*)"|'([^']*)'|([^\s:#{}[\],'"][^:#{}[\],]*?))\s*:(?:\s|$)/

/** The place in the text at `at`; null within a comment. */
export function placeIn(state: EditorState, at: number): TextPlace | null {
  const line = state.doc.lineAt(at)
  const before = line.text.slice(0, at - line.from)
  if (/(^|\s)#/.test(before)) return null
  const word = /[\p{L}\p{N}_.-]*$/u.exec(before)![0]
  const rest = before.slice(0, before.length - word.length)
  const inFlow = flowKeys(state, at)
  const lead = /(?:^|[\s{,])([\p{L}\p{N}_-]+):\s+$/u.exec(rest)
  const path = [
    ...blockKeys(state.doc, inFlow ? inFlow.line : line.number, inFlow !== null),
    ...(inFlow?.keys ?? []),
  ]
  return { path, key: lead?.[1] ?? null, from: at - word.length }
}

/** Keys that lead to a line by how far it is set in; `isWithin` with the key of the line itself. */
function blockKeys(text: Text, number: number, isWithin: boolean): string[] {
  const own = text.line(number).text
  let inset = indentOf(own)
  const keys: string[] = []
  const ownKey = keyOfLine.exec(own)
  if (isWithin && ownKey) keys.unshift(nameOf(ownKey))
  for (let at = number - 1; at >= 1 && inset > 0; at--) {
    const before = text.line(at).text
    const found = keyOfLine.exec(before)
    if (!found || indentOf(before) >= inset) continue
    inset = indentOf(before)
    keys.unshift(nameOf(found))
  }
  return keys
}

const indentOf = (line: string): number => line.length - line.trimStart().length
const nameOf = (found: RegExpExecArray): string => found[2] ?? found[3] ?? found[4]!

/** Keys within the outermost braces around `at`, and the line on which these open; null outside of braces. */
function flowKeys(state: EditorState, at: number): { keys: string[]; line: number } | null {
  const keys: string[] = []
  let outermost: number | null = null
  for (let node = syntaxTree(state).resolveInner(at, -1); node.parent; node = node.parent) {
    if (node.name === 'FlowMapping' || node.name === 'FlowSequence') outermost = node.from
    const holder = node.name === 'FlowMapping' && node.parent.name === 'Pair' ? node.parent.firstChild : null
    if (holder) keys.unshift(state.sliceDoc(holder.from, holder.to).replace(/^["']|["']$/g, ''))
  }
  if (outermost === null) return null
  const line = state.doc.lineAt(outermost)
  // the key before the outermost braces is that of their line
  return { keys: keyOfLine.test(line.text) ? keys.slice(1) : keys, line: line.number }
}
