/** A worker thread: builds the line once, then simulates the shifts that it is given. */
import { workerData } from 'piscina'
import { Line, type ShiftResult } from '../../line/line.js'
import { Standstill } from '../../line/standstill.js'
import type { Scenario } from '../../scenario/schema.js'

const { scenario, seed } = workerData as { scenario: Scenario; seed: string }
const line = new Line(scenario)

/** What a thread brings: its shifts, or why the line stands. An error of our own would lose its class on the way. */
export type Brought = ShiftResult[] | { standstill: Pick<Standstill, 'piece' | 'rule' | 'fix' | 'shift'> }

/** Shifts `from` to `to`, both included. */
export default function simulate({ from, to }: { from: number; to: number }): Brought {
  try {
    return Array.from({ length: to - from + 1 }, (_, index) => line.simulate(seed, from + index))
  } catch (error) {
    if (!(error instanceof Standstill)) throw error
    const { piece, rule, fix, shift } = error
    return { standstill: { piece, rule, fix, shift } }
  }
}
