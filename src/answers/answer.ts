/** What a question gives back: its document, and the rows behind the figures. */
import type { ReadScenario } from '../scenario/read.js'
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

/** Whether an error stands at the head of a document. */
export const hasErrors = ({ warnings = [] }: Warned): boolean =>
  warnings.some(({ severity }) => severity === 'error')

/** What made a document. */
export const madeOf = (
  { scenario, sha256 }: ReadScenario,
  { shifts, plain, repeat }: Pick<Made, 'shifts' | 'plain' | 'repeat'>,
): Made => ({
  version,
  node: runtime,
  seed: scenario.study.seed,
  scenario: { title: scenario.title, sha256 },
  shifts,
  confidence: scenario.study.confidence,
  plain,
  repeat,
})
