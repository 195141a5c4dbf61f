/** What a question gives back: its document, and the rows behind the figures. */
import type { ReadScenario } from '../scenario/read.js'
import { runtime, version } from '../version.js'
import type { Made } from './made.js'
import { type Flags, repeatOf } from './repeat.js'
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
    ...{ seed: scenario.study.seed, confidence: asked.confidence, ...last },
  }),
})
