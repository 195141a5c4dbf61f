/** The text of a scenario with other contents: what does not change keeps its place, its comments and its form. */
import type { Document } from 'yaml'
import { isMap } from '../../scenario/is-map.js'
import { firstDifference, isSame } from './differences.js'
import { type Edited, isRefused, type Refused } from './edited.js'
import { spliced } from './splices.js'
import { documentOf, type Tree, treeOfDocument } from './yaml-text.js'

/** More changes than this are no edit. */
const mostChanges = 500

const unread: Refused = { rule: 'the text is not YAML that can be read', fix: 'correct the text first' }
const shared: Refused = {
  rule: 'this value stands in a part of the text that other places refer to by `*name`',
  fix: 'write out these references in the text first',
}

/**
 * The text with what `change` makes of its tree, in place; or why that cannot be written into it. `change` says the name of what it makes, null
 * where it makes nothing that has one, or why it cannot be done.
 */
export function rewritten(text: string, change: (tree: Tree) => Refused | string | null): Edited {
  const document = documentOf(text)
  const tree = document && treeOfDocument(document)
  if (!tree) return unread
  const wanted = copyOf(tree) as Tree
  const said = change(wanted)
  if (said !== null && typeof said !== 'string') return said
  const made = withTree(text, document, wanted)
  return said === null || isRefused(made) ? made : { ...made, name: said }
}

/** A copy in which nothing is shared: what references bring is one object in several places. */
function copyOf(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(copyOf)
  if (!isMap(value)) return value
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, copyOf(inner)]))
}

/** The text that says `wanted`, made of a text and its document. */
function withTree(text: string, before: Document.Parsed, wanted: Tree): Edited {
  let [now, document]: [string, Document.Parsed | null] = [text, before]
  for (let changes = 0; document && changes < mostChanges; changes++) {
    const difference = firstDifference(document, wanted)
    // what several places share is said at all of them
    if (!difference) {
      const tree = treeOfDocument(document)
      return tree && isSame(tree, wanted) ? { text: now, tree } : shared
    }
    now = spliced(now, difference)
    document = documentOf(now)
  }
  return shared
}
