/** What may be completed where: the same for all shells. */
import type { ArgumentText, CommandText, OptionText } from '../commands.js'

/** What a place takes: words of a list, a file, or what only the user knows. */
export type Candidates = readonly string[] | 'files' | 'none'

/** Names of values that are files or folders. */
const ofFiles = /FILE|DIR|SCENARIO|RECORD|RESULT/

/** What the value of an option may be; a flag has none. */
export const ofOption = ({ value, choices }: OptionText): Candidates =>
  choices ?? (value !== undefined && ofFiles.test(value) ? 'files' : 'none')

/** What stands in the place of an argument; `topics` are what `help` takes. */
export function ofArgument({ name, choices }: ArgumentText, topics: readonly string[]): Candidates {
  if (choices) return choices
  if (name === 'TOPIC') return topics
  return ofFiles.test(name) ? 'files' : 'none'
}

/** All options of a command, `--help` too. */
export const optionsOf = ({ options }: CommandText): OptionText[] => [
  ...options,
  { long: '--help', short: '-h', meaning: 'display help for command' },
]

/** A first sentence short enough to stand beside a candidate, without signs that shells read. */
export const brief = (meaning: string): string =>
  meaning
    .split(/[;:(]/)[0]!
    .replace(/[`"'\\$[\]]/g, '')
    .trim()
