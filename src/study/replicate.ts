/** Simulates many shifts in this thread, giving way now and then so that others can speak. */
import { Line, type ShiftResult } from '../line/line.js'
import type { Scenario } from '../scenario/schema.js'

/** What a study asks of whoever simulates its shifts. */
export interface ShiftOrder {
  scenario: Scenario
  seed: string
  /** Shifts are numbered from 1 to this. */
  shifts: number
  /** Told of each shift as it comes; not in order where several work. */
  onShift?: (done: number) => void
  /** Asked between shifts: true ends the work early. */
  isCancelled?: () => boolean
}

/** Simulates the shifts of an order: results in the order of the shifts; fewer when cancelled. */
export type Simulate = (order: ShiftOrder) => Promise<ShiftResult[]>

/** Shifts between two pauses for others. */
const shiftsPerPause = 8

/** In this thread, one after the other. */
export const simulateHere: Simulate = async ({ scenario, seed, shifts, onShift, isCancelled }) => {
  const line = new Line(scenario)
  const results: ShiftResult[] = []
  for (let shift = 1; shift <= shifts; shift++) {
    if (isCancelled?.()) break
    results.push(line.simulate(seed, shift))
    onShift?.(shift)
    if (shift % shiftsPerPause === 0) await new Promise((resolve) => setTimeout(resolve))
  }
  return results
}
