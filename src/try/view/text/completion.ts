/** Completion in the text of a scenario: keys and words that the format has at that place, with what they mean. */
import type { Completion, CompletionContext, CompletionResult } from '@codemirror/autocomplete'
import { parseDocument } from 'yaml'
import { isMap } from '../../../scenario/is-map.js'
import { scenarioSchema } from '../../../scenario/schema.js'
import { child, definition, type Schema } from '../../../scenario/walk.js'
import { quickText } from '../../draft/lengths.js'
import { suited } from '../../draft/steps.js'
import { placeIn } from './place.js'

/** Keys and words for the place at the cursor. */
export function complete(context: CompletionContext): CompletionResult | null {
  const place = placeIn(context.state, context.pos)
  if (!place || (!context.explicit && place.from === context.pos)) return null
  const raw = rawOf(context.state.doc.toString())
  const holder = schemaAt(place.path, raw)
  if (!holder) return null
  const { schema, value } = holder
  const options = place.key === null ? keysOf(schema, value) : wordsOf(child(schema, place.key), place.key)
  return options.length === 0 ? null : { from: place.from, options, validFor: /^[\p{L}\p{N}_.-]*$/u }
}

/** What the text holds so far, also where it is not whole; of a long one nothing is known, for to read it takes longer than a key. */
function rawOf(text: string): unknown {
  if (text.length > quickText) return {}
  try {
    return parseDocument(text, { logLevel: 'silent' }).toJS({ maxAliasCount: 100 })
  } catch {
    return {}
  }
}

function schemaAt(path: readonly string[], raw: unknown): { schema: Schema; value: unknown } | null {
  let value = raw
  let schema = suited(scenarioSchema, value)
  for (const key of path) {
    value = isMap(value) ? value[key] : undefined
    const next = child(schema, key)
    if (!next) return null
    // what is a map once it is written
    schema = suited(next, value ?? {})
  }
  return { schema, value }
}

function keysOf(schema: Schema, value: unknown): Completion[] {
  const { shape } = definition(schema)
  if (!shape) return []
  const given = isMap(value) ? Object.keys(value) : []
  return Object.entries(shape)
    .filter(([key]) => !given.includes(key))
    .map(([key, inner]) => ({ label: key, apply: `${key}: `, type: 'property', info: meaningOf(inner) }))
}

const meaningOf = (schema: Schema): string =>
  schema.description ?? suited(schema, undefined).description ?? ''

/** Words of a closed set; of other values the example of the format. */
function wordsOf(schema: Schema | null, key: string): Completion[] {
  if (!schema) return []
  const plain = suited(schema, '')
  const def = definition(plain) as { entries?: Record<string, string>; values?: unknown[] }
  const words = def.entries ? Object.values(def.entries) : (def.values ?? [])
  if (words.length > 0) return words.map((each) => ({ label: String(each), type: 'enum' }))
  if (definition(plain).type === 'boolean') return ['true', 'false'].map((label) => ({ label, type: 'enum' }))
  const examples = (plain.meta()?.examples ?? []) as unknown[]
  return examples.map((each) => ({ label: String(each), detail: `such as, for ${key}`, type: 'constant' }))
}
