/** Names of the measures of which more is said than of others. */

/** Share of shifts that reach the target. */
export const heldName = 'target-held'

/** Cost of 1000 good cases. */
export const costName = 'cost-per-1000'
