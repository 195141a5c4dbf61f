/** What nobody named in a scenario, as rows of a table. */

import { flowText } from './flow.js'
import type { Assumed } from './made.js'

/** Path, value and basis of each. */
export const assumedRows = (assumed: readonly Assumed[]): string[][] =>
  assumed.map(({ path, value, basis }) => [path, flowText(value), basis])
