/** The topics of the manual, in its order: those that are written, and those that are made. */
import { commandsReference, exitsReference, filesReference, type ProgramText } from './commands.js'
import { type Reference, referenceText } from './entry.js'
import { findingsReference } from './findings.js'
import { recordKeys, scenarioKeys } from './keys.js'
import { measuresReference, statesReference } from './measures.js'

/** Parts of the manual, with their titles. */
export const parts = {
  tutorials: 'Tutorials',
  guides: 'Guides, one a question',
  background: 'Background',
  reference: 'Reference',
} as const
export type Part = keyof typeof parts

/** Written topics by their files. */
export const written = {
  'first-study': 'tutorials',
  'brief-to-decision': 'tutorials',
  'two-or-three-inch': 'tutorials',
  'log-to-decision': 'tutorials',
  'can-it-work': 'guides',
  'how-many': 'guides',
  'which-layout': 'guides',
  'how-much': 'guides',
  'what-if': 'guides',
  'try-in-a-page': 'guides',
  'from-a-log': 'guides',
  'model-and-plant': 'guides',
  'one-shift': 'guides',
  'from-a-program': 'guides',
  'many-machines': 'guides',
  'scenario-file': 'background',
  'how-sure': 'background',
  equipment: 'background',
  'what-happens-when': 'background',
  results: 'background',
  demos: 'background',
  limits: 'background',
  safety: 'background',
  speed: 'background',
} as const satisfies Record<string, Part>
export type Written = keyof typeof written

/** A topic as Markdown; its first line is its title. */
export interface Topic {
  name: string
  part: Part
  title: string
  text: string
}

/** The whole manual. */
export interface Manual {
  topics: readonly Topic[]
  /** What topics of the reference are made of. */
  references: readonly Reference[]
}

/** Names of the topics that are made. */
export const made = [
  'keys',
  'record-keys',
  'measures',
  'states',
  'findings',
  'commands',
  'exit-codes',
  'files',
] as const

/** The manual of a program. `textOf` has the written topics. */
export function manualOf(textOf: (topic: Written) => string, program: ProgramText): Manual {
  const references = [
    scenarioKeys(),
    recordKeys(),
    measuresReference(),
    statesReference(),
    findingsReference(),
    commandsReference(program),
    exitsReference(program),
    filesReference(program),
  ]
  const topics = [
    ...Object.entries(written).map(([name, part]) => topicOf(name, part, textOf(name as Written))),
    ...references.map((each) => topicOf(each.name, 'reference', referenceText(each))),
  ]
  return { topics, references }
}

function topicOf(name: string, part: Part, text: string): Topic {
  const [, title] = /^# (.+)$/m.exec(text) ?? []
  return { name, part, title: title ?? name, text }
}
