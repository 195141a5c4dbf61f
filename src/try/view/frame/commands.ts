/** What can be copied from the page: the change in the words of the command line, and the command that repeats the answer. */
import { quoted } from '../../../answers/made.js'
import type { RunResult } from '../../../questions/run/document.js'
import { repeating, type Said, saidChange } from '../../command.js'
import type { Line } from '../../data.js'

/** A text to copy, with what it is. */
export interface Copied {
  title: string
  text: string
}

/** The change from the line as it came; null where there is none that can be said, or none at all. */
export const changeOf = (line: Line, text: string): Said | null =>
  text === line.text ? null : saidChange(line.text, text, line)

/** The texts for `now`, the line with the change `said`. */
export function copiesOf(line: Line, text: string, said: Said | null, now: RunResult | null): Copied[] {
  const sets = said?.sets ?? []
  const isFile = text !== line.text && said?.sets == null
  return [
    ...(now
      ? [
          {
            title: `The command that gives these figures${isFile ? ', once the changed file is saved under that name' : ''}`,
            text: repeating(
              {
                ...{ name: line.name, seed: now.made.seed, shifts: now.made.shifts },
                isFixed: (now.evidence?.length ?? 0) > 0 && now.drawn === undefined,
              },
              sets,
            ),
          },
        ]
      : []),
    ...(sets.length > 0
      ? [{ title: 'The change as options', text: sets.map((each) => `--set ${quoted(each)}`).join(' ') }]
      : []),
    ...(said ? [{ title: 'The change as a variant, for the file', text: said.variant }] : []),
  ]
}
