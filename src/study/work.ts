/** A piece of work of a study and what comes of it: the same whoever does it, in this thread or in another. */
import { Line, type ShiftResult } from '../line/line.js'
import { Standstill } from '../line/standstill.js'
import type { Scenario } from '../scenario/schema.js'

/**
 * Of the design of that number, from 0: shifts `from` to `to`, both included, counted from the cut, s; or the cases inside at so many
 * even instants of them. The number names the same scenario in all tasks of a study. `isLean`: without the held-over-the-shift
 * picture.
 */
export type Task = { seed: string; design: number; scenario: Scenario; from: number; to: number } & (
  | { what: 'shifts'; countFrom: number; isLean?: boolean }
  | { what: 'series'; instants: number }
)

/** What a task brings: of shifts their results, of series one row of numbers each. */
export type Work = (task: Task) => Promise<ShiftResult[] | Float64Array[]>

/** Shifts whose held-over-the-shift picture is kept: more change nothing that an eye could see, and would fill the memory. */
export const mostHeldShifts = 500

/** Lines that a simulator keeps built. */
const mostLines = 32

const nothingHeld = new Float64Array(0)

/** Does tasks one after the other; the line of a design is built once, when it is first asked for. */
export class Simulator {
  private readonly lines = new Map<number, Line>()

  /** Simulates what the task asks for. Throws `Standstill` with the first shift of it that locks up. */
  do(task: Task): ShiftResult[] | Float64Array[] {
    const each = <T>(of: (shift: number) => T) =>
      Array.from({ length: task.to - task.from + 1 }, (_, index) => of(task.from + index))
    const line = this.lineOf(task)
    if (task.what === 'series') {
      line.countFrom = 0
      return each((shift) => seriesOf(line, task.seed, shift, task.instants))
    }
    line.countFrom = task.countFrom
    return each((shift) => {
      const result = line.simulate(task.seed, shift)
      return task.isLean || shift > mostHeldShifts ? { ...result, held: nothingHeld } : result
    })
  }

  private lineOf({ design, scenario }: Task): Line {
    const known = this.lines.get(design)
    if (known) return known
    // a study of thousands of designs tries them one after the other: the line that was built first is done with
    if (this.lines.size >= mostLines) this.lines.delete(this.lines.keys().next().value!)
    const line = new Line(scenario)
    this.lines.set(design, line)
    return line
  }
}

/** Cases inside at even instants of a shift. */
function seriesOf(line: Line, seed: string, shift: number, instants: number): Float64Array {
  const series = new Float64Array(instants)
  const steps = line.simulateInSteps(seed, shift, line.end / instants)
  let step = 0
  while (!steps.next().done) series[step++] = line.casesInside
  series[instants - 1] = line.casesInside
  return series
}

/** What a thread hands back: results, or why it has none. An error of our own would lose its class on the way. */
export type Brought =
  | { results: ShiftResult[] | Float64Array[] }
  | { standstill: Pick<Standstill, 'piece' | 'rule' | 'fix' | 'shift'> }
  | { bug: string }

/** Does a task and puts what happens into words that can be sent. */
export function bring(simulator: Simulator, task: Task): Brought {
  try {
    return { results: simulator.do(task) }
  } catch (error) {
    if (error instanceof Standstill) {
      const { piece, rule, fix, shift } = error
      return { standstill: { piece, rule, fix, shift } }
    }
    return { bug: error instanceof Error ? (error.stack ?? error.message) : String(error) }
  }
}

/** The results of what was brought; throws what had happened. */
export function taken(brought: Brought): ShiftResult[] | Float64Array[] {
  if ('results' in brought) return brought.results
  if ('bug' in brought) throw new Error(brought.bug)
  const { piece, rule, fix, shift } = brought.standstill
  throw new Standstill(piece, rule, fix, shift)
}
