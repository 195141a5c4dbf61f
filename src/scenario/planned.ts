/** Planned work in a shift: when it is due. */
import type { PlannedKeys } from './planned-keys.js'

export type { PlannedKeys }

type Times = Pick<PlannedKeys, 'at' | 'every'>

/** Rounding of a number of intervals that fill a shift. */
const hair = 1e-9

/** How often it is due in a shift of `length` s: not at its end. */
export const duesPerShift = ({ every }: Times, length: number): number =>
  every === undefined ? 1 : Math.max(0, Math.ceil(length / every - hair) - 1)

/** When it is due for the time `number`, from 0, s since the start of the shift. */
export const dueOf = ({ at, every }: Times, number: number): number =>
  every === undefined ? (at ?? 0) : (number + 1) * every
