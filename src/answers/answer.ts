/** What a question gives back: its document, and the rows behind the figures. */
import type { ReadScenario, ScenarioAsked } from '../scenario/read.js'
import { runtime, version } from '../version.js'
import type { Made } from './made.js'
import type { Warned } from './warning.js'

export interface Answer<Document extends Warned> {
  document: Document
  /** CSV texts by the name of their file; made when they are asked for. */
  rows: () => ReadonlyMap<string, string>
  /** What was required of the figures is shown. */
  isMet: boolean
  /** What the answer is about cannot work as described. */
  cannotWork: boolean
}

/** What made a document. `flags` make it again, with seed and confidence, which stand before `last`. */
export const madeOf = (
  { scenario, sha256, asked }: ReadScenario,
  { command, shifts, plain }: Pick<Made, 'shifts' | 'plain'> & { command: string },
  flags: Flags,
  last: Flags = {},
): Made => ({
  version,
  node: runtime,
  seed: scenario.study.seed,
  scenario: { title: scenario.title, sha256 },
  shifts,
  confidence: scenario.study.confidence,
  plain,
  repeat: repeatOf(command, asked, {
    ...flags,
    ...{ seed: scenario.study.seed, confidence: asked.confidence, engine: asked.engine, ...last },
  }),
})

/** A word as a shell would need it: plain where nothing in it is special, else in single quotes. */
export const quoted = (text: string): string =>
  /^[\w./:=-]+$/.test(text) ? text : `'${text.replaceAll("'", `'\\''`)}'`

/** Options with their values: a list is said once for each, true without a value, and what is undefined or false not at all. */
type Flags = Readonly<Record<string, string | number | boolean | readonly string[] | undefined>>

function words([name, value]: [string, Flags[string]]): string[] {
  if (value === undefined || value === false) return []
  if (value === true) return [`--${name}`]
  if (typeof value === 'number') return [`--${name} ${value}`]
  return (typeof value === 'string' ? [value] : value).map((each) => `--${name} ${quoted(each)}`)
}

/** `tapeshift run line.yaml --set ... --seed a`; `record`: what is named after the scenario. */
export const repeatOf = (
  command: string,
  { name, record, set }: Pick<ScenarioAsked, 'set'> & { name: string; record?: string },
  flags: Flags,
): string =>
  [
    'tapeshift',
    command,
    ...[name, ...(record === undefined ? [] : [record])].map(quoted),
    ...Object.entries({ set, ...flags }).flatMap(words),
  ].join(' ')
