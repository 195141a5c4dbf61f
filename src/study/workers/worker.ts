/** A worker thread: builds the line once, then simulates the shifts that it is given. */
import { workerData } from 'piscina'
import { Line, type ShiftResult } from '../../line/line.js'
import type { Scenario } from '../../scenario/schema.js'

const { scenario, seed } = workerData as { scenario: Scenario; seed: string }
const line = new Line(scenario)

/** Shifts `from` to `to`, both included. */
export default function simulate({ from, to }: { from: number; to: number }): ShiftResult[] {
  return Array.from({ length: to - from + 1 }, (_, index) => line.simulate(seed, from + index))
}
