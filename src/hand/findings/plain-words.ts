/** What was written in people's own words, and what it is taken for: each said once. */
import type { Rule } from '../finding.js'

/** Tape by the inch, rates and stops a shift, times somewhere between two. */
export const readAsFindings: Rule = ({ readAs }, tell) => {
  for (const { path, written, meaning } of readAs)
    if (meaning !== null)
      tell.note(
        'read-as',
        path,
        `\`${written}\` is read as ${meaning}.`,
        'definition of the format',
        'nothing to do, if this is what you mean',
      )
}
