/** Writes the JSON Schema beside the demo scenarios: `npm run schema`. */
import { jsonSchemaText } from '../scenario/json-schema.js'
import { writeWhole } from './files.js'

await writeWhole(new URL('../../scenarios/scenario.schema.json', import.meta.url).pathname, jsonSchemaText())
