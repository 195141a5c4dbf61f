/** What values rest on: none counted, and few observations. */
import type { Bound } from './bound.js'

const jams = 'line.sealer.jams.chance'
const clear = 'line.sealer.jams.clear'

export const inputBounds: Bound[] = [
  {
    code: 'none-counted',
    severity: 'note',
    path: jams,
    told: [`${jams}=0 in 4000 cases`],
    not: [`${jams}=1 in 4000 cases`],
  },
  {
    // project rule: 20 or more
    code: 'few-observations',
    severity: 'note',
    path: clear,
    told: [`${clear}={lognormal: {mean: 80 s, cv: 0.8, from: 19}}`],
    not: [`${clear}={lognormal: {mean: 80 s, cv: 0.8, from: 20}}`],
  },
]
