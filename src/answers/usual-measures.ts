/** Names of the measures of which more is said than of others. */
import type { MeasureKey } from '../catalogue/of-line.js'

/** Share of shifts that reach the target. */
export const heldName: MeasureKey = 'target-held'

/** Cost of 1000 good cases. */
export const costName: MeasureKey = 'cost-per-1000'
