/** The JSON Schema (2020-12) of the scenario format, for editors. */
import * as z from 'zod'
import { definitions, referring } from './editor.js'
import { scenarioSchema } from './schema.js'

/** The schema as text, ready to be written beside the demo scenarios. */
export function jsonSchemaText(): string {
  const schema = z.toJSONSchema(scenarioSchema, {
    target: 'draft-2020-12',
    io: 'input',
    unrepresentable: 'any',
    reused: 'ref',
  })
  return `${JSON.stringify({ ...schema, $defs: { ...schema.$defs, ...definitions() } }, referring, 1)}\n`
}
