/** Reads a record file: YAML, the schema of records, and every finding at its place. */
import { LineCounter } from 'yaml'
import type { Finding } from '../scenario/finding.js'
import { findingsOf } from '../scenario/issues.js'
import { offsetOf, placeAt } from '../scenario/locate.js'
import { nearest } from '../scenario/nearest.js'
import { shown } from '../scenario/printable.js'
import { problemWithoutPlace, ScenarioError } from '../scenario/problems.js'
import { readYaml } from '../scenario/yaml-file.js'
import { type RecordFile, recordFileSchema } from './format.js'

const asked = {
  name: 'a record',
  keys: 'the key record',
  needs: ['record'],
  starter: 'tapeshift new FILE --record',
} as const

const mostProblems = 100

/** The record file that `text` is; `file` is how messages call it. Throws `ScenarioError` with all findings. */
export function readRecordFile(text: string, file = 'record'): RecordFile {
  const lines = new LineCounter()
  const { document, raw } = readYaml(text, file, lines, asked)
  // what is said of unknown keys at the top would speak of a scenario
  const strangers = Object.keys(raw).filter((key) => key !== 'record')
  if (raw.record === undefined && strangers.some(isOfScenario)) throw new ScenarioError([aScenario(file)])
  const parsed = recordFileSchema.safeParse({ record: raw.record })
  const findings = [
    ...strangers.map(stranger),
    ...(parsed.error?.issues ?? []).flatMap((issue) => findingsOf(issue, recordFileSchema, raw)),
  ]
  if (parsed.success && findings.length === 0) return parsed.data.record
  throw new ScenarioError(
    findings.slice(0, mostProblems).map(({ path, atKey, ...rest }) => ({
      ...rest,
      path: shown(path.join('.'), 200),
      source: file,
      ...placeAt(text, lines, offsetOf(document, path, atKey)),
    })),
  )
}

const stranger = (key: string): Finding => ({
  code: 'unknown-key',
  path: [key],
  found: '',
  rule: `\`${shown(key)}\` is not a key of a record file`,
  fix: nearest(key.slice(0, 40), ['record']),
  atKey: true,
})

const isOfScenario = (key: string): boolean => ['cases', 'arrivals', 'line', 'shift'].includes(key)

const aScenario = (file: string) =>
  problemWithoutPlace(
    file,
    'not-allowed',
    'this is a scenario, not a record of a plant',
    'name the record first, and the scenario with --into; `tapeshift new FILE --record` begins a record',
  )
