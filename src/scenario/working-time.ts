/** Working time: what breaks leave of a shift. */

/** Shift less breaks, s. */
export const workingTime = (shift: { length: number; breaks: readonly { for: number }[] }): number =>
  shift.length - shift.breaks.reduce((sum, pause) => sum + pause.for, 0)
