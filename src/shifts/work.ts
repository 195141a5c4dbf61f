/** A piece of work of a study and what comes of it: the same whoever does it, in this thread or in another. */
import { Line, type ShiftResult } from '../line/line.js'
import { Standstill } from '../line/standstill.js'
import type { Scenario } from '../scenario/schema.js'
import { type LogEyes, SeenStops } from './seen-stops.js'
import { recordStretch, type Stretch } from './stretch.js'

/**
 * Of the design of that number, from 0, what is asked for of shifts `from` to `to`, both included. The number names the same scenario
 * in all tasks of a study.
 */
interface Part {
  seed: string
  design: number
  scenario: Scenario
  from: number
  to: number
}

/** The shifts, counted from the cut, s; `isLean`: without the held-over-the-shift picture; `eyes`: with the stops that such a log would show. */
export type ShiftsTask = Part & { what: 'shifts'; countFrom: number; isLean?: boolean; eyes?: LogEyes }

/** The cases inside at so many even instants of each shift. */
type SeriesTask = Part & { what: 'series'; instants: number }

/** So many seconds of shift `from` as they happened, and why these. */
type StretchTask = Part & { what: 'stretch'; countFrom: number; length: number; why: string }

export type Task = ShiftsTask | SeriesTask | StretchTask

/** What a task brings: of shifts their results, of series one row of numbers each, of a stretch what was recorded. */
export type Results<Asked extends Task = Task> = Asked extends ShiftsTask
  ? ShiftResult[]
  : Asked extends SeriesTask
    ? Float64Array[]
    : Stretch

/** Does a task. */
export type Work = <Asked extends Task>(task: Asked) => Promise<Results<Asked>>

/** Shifts whose held-over-the-shift picture is kept: more change nothing that an eye could see, and would fill the memory. */
export const mostHeldShifts = 500

/** Lines that a simulator keeps built. */
const mostLines = 32

export const nothingHeld = new Float64Array(0)

/** Does tasks one after the other; the line of a design is built once, when it is first asked for. */
export class Simulator {
  private readonly lines = new Map<number, Line>()

  /** Simulates what the task asks for. Throws `Standstill` with the first shift of it that locks up. */
  do(task: Task): Results {
    const line = this.lineOf(task)
    const { what, seed, from } = task
    const each = <T>(of: (shift: number) => T) =>
      Array.from({ length: task.to - from + 1 }, (_, index) => of(from + index))
    line.countFrom = what === 'series' ? 0 : task.countFrom
    switch (what) {
      case 'series':
        return each((shift) => seriesOf(line, seed, shift, task.instants))
      case 'stretch':
        return recordStretch(line, task.scenario, seed, from, task)
      case 'shifts':
        return each((shift) => {
          const result = task.eyes
            ? withStops(line, task.scenario, seed, shift, task.eyes)
            : line.simulate(seed, shift)
          return task.isLean || shift > mostHeldShifts ? { ...result, held: nothingHeld } : result
        })
    }
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

/** A shift with its stops as a log shows them: simulated to its end alike. */
function withStops(line: Line, scenario: Scenario, seed: string, shift: number, eyes: LogEyes): ShiftResult {
  const seen = new SeenStops(scenario, eyes)
  line.observe((event) => seen.take(event), false)
  try {
    const result = line.simulate(seed, shift)
    return { ...result, stops: seen.close(line.end) }
  } finally {
    line.observe(null)
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
  | { results: Results }
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
export function taken(brought: Brought): Results {
  if ('results' in brought) return brought.results
  if ('bug' in brought) throw new Error(brought.bug)
  const { piece, rule, fix, shift } = brought.standstill
  throw new Standstill(piece, rule, fix, shift)
}
