/** The JSON Schema (2020-12) of the scenario format, for editors. */
import * as z from 'zod'
import { casesFile } from './cases-file.js'
import { definitions, referring } from './editor.js'
import { scenarioSchema } from './schema.js'

/** The schema as text, ready to be written beside the demo scenarios. */
export function jsonSchemaText(): string {
  const options = { target: 'draft-2020-12', io: 'input', unrepresentable: 'any' } as const
  const schema = z.toJSONSchema(scenarioSchema, { ...options, reused: 'ref' })
  const { $schema: _, ...file } = z.toJSONSchema(casesFile, { ...options, reused: 'inline' })
  const properties = {
    ...schema.properties,
    cases: {
      anyOf: [schema.properties?.cases, file],
      description: 'the cases, by name, or a CSV file with the cases',
    },
  }
  return `${JSON.stringify({ ...schema, properties, $defs: { ...schema.$defs, ...definitions() } }, referring)}\n`
}
