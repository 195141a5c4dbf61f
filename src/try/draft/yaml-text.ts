/** The text of a scenario as YAML: its tree, its nodes with their places, and values as they are written in one line. */
import { type Document, type Node, parseDocument, stringify } from 'yaml'

export type Tree = Record<string, unknown>

/** What the loader of scenarios takes: letters, and references by `*name`. */
const [mostLetters, mostReferences] = [1_000_000, 100]

/** The document; its nodes know where they stand in the text. Null where the text is no YAML of one map. */
export function documentOf(text: string): Document.Parsed | null {
  if (text.length > mostLetters) return null
  try {
    const document = parseDocument(text, { version: '1.2', prettyErrors: false, logLevel: 'error' })
    return document.errors.length > 0 ? null : document
  } catch {
    return null
  }
}

/** What the text says, references written out; null where it is no map that can be read. */
export function treeOf(text: string): Tree | null {
  const document = documentOf(text)
  return document && treeOfDocument(document)
}

export function treeOfDocument(document: Document.Parsed): Tree | null {
  try {
    const tree: unknown = document.toJS({ maxAliasCount: mostReferences })
    if (tree === null || tree === undefined) return {}
    return typeof tree === 'object' && !Array.isArray(tree) ? (tree as Tree) : null
  } catch {
    return null
  }
}

/** A value in one line, as it may stand anywhere, also within braces. */
export function lineOf(value: unknown): string {
  const list = stringify([value], { collectionStyle: 'flow', lineWidth: 0, flowCollectionPadding: false })
  return list.trimEnd().slice(1, -1)
}

/** The value of a node, references in it written out. */
export const contentOf = (node: unknown, document: Document): unknown =>
  isNode(node) ? node.toJS(document, { maxAliasCount: mostReferences }) : node

const isNode = (node: unknown): node is Node => typeof node === 'object' && node !== null && 'toJS' in node
