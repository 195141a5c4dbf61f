/** The reference of what `check` finds, from its codes. */
import { codes, severities } from '../hand/finding.js'
import type { Reference } from './entry.js'

export const findingsReference = (): Reference => ({
  name: 'findings',
  title: 'Findings of check',
  intro: `Every code with its rule. A finding is one of ${severities.map((each) => `\`${each}\``).join(', ')}; with it stand the figures that led to it, its basis and the nearest fix. An error says that the line cannot work as described (exit code 3).`,
  groups: [
    {
      title: 'Codes',
      entries: Object.entries(codes).map(([name, rule]) => ({ name, says: [rule] })),
    },
  ],
})
