/** Simulates shifts in a pool of threads; the result is the same for any number of them. */
import { Piscina } from 'piscina'
import type { ShiftResult } from '../../line/line.js'
import { Standstill } from '../../line/standstill.js'
import { type ShiftOrder, type Simulate, simulateHere } from '../replicate.js'
import type { Brought } from './worker.js'

/** Shifts that a thread is given at once: few enough for an even load, many enough that messages do not count. */
const shiftsPerTask = 4

/** A way to simulate with `workers` threads; with 1, in this thread. */
export const simulateWith =
  (workers: number): Simulate =>
  async (order) =>
    workers <= 1 ? simulateHere(order) : simulateInPool(order, workers)

async function simulateInPool(
  { scenario, seed, shifts, onShift, isCancelled }: ShiftOrder,
  workers: number,
): Promise<ShiftResult[]> {
  const pool = new Piscina({
    filename: new URL('./worker.js', import.meta.url).href,
    minThreads: workers,
    maxThreads: workers,
    workerData: { scenario, seed },
  })
  const parts: ShiftResult[][] = []
  let next = 0
  let done = 0
  const stands: Standstill[] = []
  // each lane asks for the next part when it has brought one, so nothing queues up and a cancel takes effect at once
  const lane = async (): Promise<void> => {
    while (next * shiftsPerTask < shifts && stands.length === 0 && !isCancelled?.()) {
      const part = next++
      const from = part * shiftsPerTask + 1
      const to = Math.min(shifts, from + shiftsPerTask - 1)
      const brought = (await pool.run({ from, to })) as Brought
      if ('standstill' in brought) {
        // the other lanes bring what they have in hand, so that the first shift that stands is told for any number of them
        const { piece, rule, fix, shift } = brought.standstill
        stands.push(new Standstill(piece, rule, fix, shift))
        return
      }
      parts[part] = brought
      done += parts[part]!.length
      onShift?.(done)
    }
  }
  try {
    await Promise.all(Array.from({ length: workers }, lane))
  } finally {
    await pool.destroy()
  }
  const [first] = stands.sort((a, b) => a.shift - b.shift)
  if (first) throw first
  return parts.flat()
}
