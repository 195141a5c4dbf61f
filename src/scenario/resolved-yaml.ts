/** The scenario as it was resolved: every default written out and marked, ready to be simulated again. */
import { Document, isNode, type Node } from 'yaml'
import { restingOn } from './known.js'
import type { Loaded } from './load.js'

/** YAML text of the resolved scenario; what nobody named carries the comment `assumed`, and what says how well it is known what it rests on. */
export function resolvedYaml({ resolved, assumed, evidence }: Loaded): string {
  const document = new Document(resolved)
  document.commentBefore = ' The scenario as simulated: overrides applied, defaults written out.'
  const comments = [
    ...assumed.map(({ path, basis }) => [path, `assumed: ${basis}`] as const),
    ...evidence.map(({ path, known }) => [path, restingOn(known)] as const),
  ]
  for (const [path, comment] of comments) {
    const node = nodeAt(document, path.split('.'))
    if (node) node.comment = ` ${comment}`
  }
  return document.toString({ lineWidth: 0 })
}

function nodeAt(document: Document, steps: string[]): Node | null {
  const node: unknown = document.getIn(
    steps.map((step) => (/^\d+$/.test(step) ? Number(step) : step)),
    true,
  )
  return isNode(node) ? node : null
}
