/** A line that nothing has been recorded of yet: its pieces stand where they will, and no case is on it. */
import type { Layout } from '../../../pictures/layout.js'
import type { Stretch } from '../../../shifts/stretch.js'

/** A stretch of no length at the start of the shift. */
export const emptyStretch = ({ pieces, arrivals }: Layout): Stretch => ({
  ...{ shift: 0, from: 0, to: 0, why: '', cases: [], breaks: [], held: [], pieces: [] },
  states: pieces.map(() => []),
  drives: pieces.map(() => []),
  sources: arrivals.map(({ name }) => ({ name, whenFull: 'wait' })),
})
