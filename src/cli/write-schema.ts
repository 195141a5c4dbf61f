/** Writes the JSON Schema beside the demo scenarios: `npm run schema`. */
import { fileURLToPath } from 'node:url'
import { jsonSchemaText } from '../scenario/json-schema.js'
import { writeWhole } from './files.js'

const file = fileURLToPath(new URL('../../scenarios/scenario.schema.json', import.meta.url))
await writeWhole(file, jsonSchemaText())
