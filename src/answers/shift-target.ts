/** The target of a shift in whole cases. */

import { grouped } from '../report/format.js'
import { workingTime } from '../scenario/working-time.js'
import type { ShiftTold } from './made.js'

/** The target of a shift: as it is asked for, and the least whole number of cases that reaches it. */
export interface ShiftTarget {
  cases: number
  least: number
}

/** Target rate times working time, the length of the shift less its breaks; null where no target is given. */
export function shiftTarget({
  target,
  shift,
}: {
  target: number | null
  shift: ShiftTold
}): ShiftTarget | null {
  if (target === null) return null
  const working = workingTime(shift)
  // divided as the line divides, so that a shift at the very edge falls on the same side here and there
  let least = Math.max(0, Math.floor(target * working) - 1)
  while (least / working < target) least++
  return { cases: target * working, least }
}

/** A target need not be whole: `6 300`, `6 299.6`. */
export const casesText = (cases: number) => grouped(cases, Math.abs(cases - Math.round(cases)) < 0.05 ? 0 : 1)
