/** Replicates shifts: hands them out in small parts, takes the results as they come and puts them into the order of the shifts. */
import type { ShiftResult } from '../line/line.js'
import { Standstill } from '../line/standstill.js'
import type { Scenario } from '../scenario/schema.js'
import type { Executor } from './executor.js'
import { inLanes } from './lanes.js'
import type { LogEyes } from './seen-stops.js'
import type { ShiftsTask } from './work.js'

/** What a study asks of whoever simulates its shifts. */
export interface Order {
  seed: string
  /** The design, and its number among those of the study, from 0. */
  scenario: Scenario
  design?: number
  /** Without the held-over-the-shift picture. */
  isLean?: boolean
  /** With the stops that such a log would show. */
  eyes?: LogEyes
  /** Number of the first shift, 1 where nobody says. */
  first?: number
  /** So many shifts; fewer are simulated where `isEnough` says so. */
  shifts: number
  /** What is counted begins here, s since the start. */
  countFrom?: number
  /** Shifts that are known already, by their number. */
  known?: ReadonlyMap<number, ShiftResult>
  /** Asked of the first shifts, after each one in their order: true ends the study with these. */
  isEnough?: (shifts: readonly ShiftResult[]) => boolean
  /** Told of shifts as they come, which is not their order where several work. */
  onShifts?: (from: number, results: readonly ShiftResult[]) => void
  /** Asked between shifts: true ends the work early. */
  isCancelled?: () => boolean
}

/** The shifts of a study; when cancelled, those that had come and have no gap before them. */
export interface Replicated {
  shifts: ShiftResult[]
  isComplete: boolean
}

/** Time that a part should take, ms: long enough that messages do not count, short enough to answer an interrupt. */
const usualPartTime = 120
const mostPerPart = 64
/** Of that where each shift may be the last that is needed: what is in hand then is for nothing. */
const shareOfOpen = 1 / 3

/** Shifts of the next part, where so many took `time` ms. */
const nextPerPart = (time: number, shifts: number, partTime: number): number =>
  Math.max(1, Math.min(mostPerPart, Math.floor(partTime / Math.max(1e-3, time / shifts))))

/** Simulates the shifts of an order. Throws `Standstill` of the first shift that locks up, whoever met it. */
export async function replicate(executor: Executor, order: Order): Promise<Replicated> {
  const { first = 1, shifts, known, isEnough, onShifts, isCancelled } = order
  const { seed, scenario, design = 0, isLean = false, countFrom = 0, eyes } = order
  const partTime = (executor.partTime ?? usualPartTime) * (isEnough ? shareOfOpen : 1)
  const results: (ShiftResult | undefined)[] = []
  const inOrder: ShiftResult[] = []
  const stands: Standstill[] = []
  const last = first + shifts - 1
  let next = first
  let perPart = 1
  let isDone = false

  const take = (from: number, brought: readonly ShiftResult[]): void => {
    for (const [index, result] of brought.entries()) results[from - first + index] = result
    while (!isDone && results[inOrder.length]) {
      inOrder.push(results[inOrder.length]!)
      // it has its place in the order now: a study of many shifts need not hold it twice
      results[inOrder.length - 1] = undefined
      isDone = inOrder.length === shifts || isEnough?.(inOrder) === true
    }
  }
  const nextPart = (): ShiftsTask | null => {
    while (next <= last && known?.has(next)) {
      const shift = next++
      take(shift, [known.get(shift)!])
      if (isDone) return null
    }
    if (isDone || next > last) return null
    const from = next
    // the last parts are short, so that all workers end together
    const most = Math.min(perPart, Math.ceil((last - from + 1) / (2 * executor.size)))
    while (next <= last && next - from < most && !known?.has(next)) next++
    const part = { seed, design, scenario, from, to: next - 1, countFrom, isLean }
    return { what: 'shifts', ...part, ...(eyes ? { eyes } : {}) }
  }
  const bring = async (part: ShiftsTask): Promise<void> => {
    const brought = await executor.work(part)
    onShifts?.(part.from, brought)
    take(part.from, brought)
  }
  /** Brings a part, or what there is of it before the line stands; false where it stands. */
  const bringOrStand = async (part: ShiftsTask): Promise<boolean> => {
    try {
      await bring(part)
      return true
    } catch (error) {
      // all bring what they have before it, so that the first shift that stands is told for any number of workers
      if (!(error instanceof Standstill)) throw error
      stands.push(error)
      if (error.shift > part.from) await bring({ ...part, to: error.shift - 1 })
      return false
    }
  }
  const lane = async (openMore: () => void): Promise<void> => {
    while (!isDone && stands.length === 0 && !isCancelled?.()) {
      const part = nextPart()
      if (part === null) return
      const began = performance.now()
      if (!(await bringOrStand(part))) return
      perPart = nextPerPart(performance.now() - began, part.to - part.from + 1, partTime)
      openMore()
    }
  }
  await inLanes(
    () => executor.size,
    () => next <= last,
    lane,
  )
  const [standstill] = stands.sort((a, b) => a.shift - b.shift)
  if (standstill && !isDone) throw standstill
  return { shifts: inOrder, isComplete: isDone }
}
