/** What can be copied from the page: the change in the words of the command line, and the command that repeats the answer. */
import { quoted } from '../../../answers/answer.js'
import { repeating, saidChange } from '../../command.js'
import type { Desk } from '../desk/desk.js'

/** A text to copy, with what it is. */
export interface Copied {
  title: string
  text: string
}

export function copiesOf(desk: Desk): Copied[] {
  const { figures, drawn } = desk.known
  const { line, text, isChanged } = desk
  const change = isChanged.value ? saidChange(line.text, text.value) : null
  const now = (drawn.value ?? figures.value)?.after
  const isFixed = (now?.evidence?.length ?? 0) > 0 && now?.drawn === undefined
  const { seed, shifts } = now?.made ?? { seed: '', shifts: 0 }
  const answered = { name: line.name, seed, shifts, isFixed }
  const isSaved = isChanged.value && change === null
  return [
    ...(now
      ? [
          {
            title: `The command that gives these figures${isSaved ? ', once the file is saved in its place' : ''}`,
            text: repeating(answered, change?.sets ?? []),
          },
        ]
      : []),
    ...(change && change.sets.length > 0
      ? [
          {
            title: 'The change as options',
            text: change.sets.map((each) => `--set ${quoted(each)}`).join(' '),
          },
          { title: 'The change as a variant, for the file', text: change.variant },
        ]
      : []),
  ]
}
