/** Slow starts as keys say. Apart from the schema, which no thread that simulates loads. */
import type { SlowStartKeys } from './slow-start-keys.js'

export type { SlowStartKeys }

/** What each costs, as time in which the piece would have worked at its usual speed, s. */
export const lostBySlowStart = ({ at, for: lasts }: SlowStartKeys): number => (1 - at) * lasts
