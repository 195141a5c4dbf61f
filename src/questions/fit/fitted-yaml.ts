/** The values of a fit as a YAML file: paths of a scenario and values, each with what is known of it. */
import { Document, isMap, type Node, parseDocument } from 'yaml'
import type { FitResult } from './document.js'
import { knownText, valuesOf } from './known.js'

/** The text. */
export function fittedYaml({ made, record, inputs }: FitResult): string {
  const document = new Document({
    record: { title: made.record.title, sha256: made.record.sha256 },
    ...(record.heldOut.length > 0 ? { 'held-out': record.heldOut } : {}),
    values: {},
  })
  document.commentBefore = ` Values for a scenario, and their evidence. Made by: ${made.repeat}\n Into a scenario: --into line.yaml --write line-fitted.yaml`
  const values = document.get('values', true)
  if (!isMap(values)) return document.toString()
  values.flow = false
  for (const input of inputs)
    for (const [path, text] of valuesOf(input)) {
      const node = parseDocument(text).contents as Node
      node.comment = path === input.path ? ` ${knownText(input)}` : ' goes with it'
      values.set(document.createNode(path), node)
    }
  const heldOut = document.get('held-out', true) as Node | undefined
  if (heldOut) heldOut.comment = ' days that no fit used: for validation'
  return document.toString({ lineWidth: 0, flowCollectionPadding: false })
}
