/** Room on belts by hand: none but what they run up to their first case. */
import type { Room } from './by-hand.js'

/**
 * Rigid belts hold no more while they stand, but they move until their first case is at the end: half a case on average.
 * Held up now and then they carry cases close together, and have those to hand on. `ride` in s.
 */
export function roomOnBelts(
  ride: number,
  { rate, flow, before }: { rate: number; flow: number; before: number },
): Room {
  const closer = Math.max(0, Math.min(before, rate) - flow)
  return { takesIn: 0, holds: 0.5, handsOn: closer * ride, isRigid: true, hasRoom: false }
}
