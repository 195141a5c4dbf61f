/** The reference as data: entries in groups, of which each topic is written as Markdown. */
import { plain } from './markdown.js'

/** One thing that may be looked up. */
export interface Entry {
  /** What it is called; a step in capitals stands for any name. */
  name: string
  /** Where several have the same name: which this is of. */
  of?: string
  /** Sentences, without marks but for code between backticks. */
  says: readonly string[]
}

/** Entries that belong together. */
export interface Group {
  title: string
  note?: string
  entries: readonly Entry[]
}

/** A topic of the reference. */
export interface Reference {
  name: string
  title: string
  /** What it lists, in a sentence or two. */
  intro: string
  groups: readonly Group[]
}

const sentence = (text: string): string => {
  const begun = /^[a-z][a-z-]*(?=[ ,]|$)/.test(text) ? text[0]!.toUpperCase() + text.slice(1) : text
  return /[.!?:]$/.test(begun) ? begun : `${begun}.`
}

/** An entry as an item of a list. */
export const entryText = ({ name, of, says }: Entry): string =>
  `- \`${name}\`${of === undefined ? '' : ` (${plain(of)})`}: ${says
    .filter((each) => each !== '')
    .map((each) => plain(sentence(each)))
    .join(' ')}`

/** A topic as Markdown. */
export const referenceText = ({ title, intro, groups }: Reference): string =>
  [
    `# ${plain(title)}`,
    plain(intro),
    ...groups
      .filter(({ entries }) => entries.length > 0)
      .flatMap((group) => [
        `## ${plain(group.title)}`,
        ...(group.note === undefined ? [] : [plain(group.note)]),
        group.entries.map(entryText).join('\n'),
      ]),
  ].join('\n\n')
