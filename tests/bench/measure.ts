/** What is measured of one line, in a process of its own: calls that have met many lines are compiled for many. */
import { quantileSorted } from 'simple-statistics'
import type { Line } from '../../src/line/line.js'
import { simulateHeapLine } from './heap-line.js'
import { lineOf, longLine } from './lines.js'
import { simulatePlainLine } from './plain-line.js'

const seed = 'bench'
/** All is measured for a moment. */
export const isBrief = process.env.BENCH_BRIEF === '1'
/** Time in which the compiler of the language comes to rest, and time that is measured, s. */
const warmUp = isBrief ? 0.1 : 2
const measured = isBrief ? 0.1 : 3

export interface ShiftTimes {
  /** Time of a shift that 10, 50 and 90 % of the shifts do not pass, ms. */
  quantiles: [number, number, number]
  shifts: number
  /** Means of a shift. */
  cases: number
  events: number
  time: number
}

/** What a process may be asked for. */
export type Asked =
  | { what: 'shifts' | 'cold' | 'allocation'; file: string; engine?: Line['engine'] }
  | { what: 'heap' | 'plain' }
  | { what: 'long'; pieces: number; hours: number }

export async function measure(asked: Asked): Promise<unknown> {
  switch (asked.what) {
    case 'shifts':
      return timeShifts(simulating(await lineOf(asked.file, asked.engine)))
    case 'cold':
      return timeFirst(simulating(await lineOf(asked.file, asked.engine)), 100)
    case 'heap':
      return timeShifts((shift) => simulateHeapLine(seed, shift))
    case 'plain':
      return timeShifts((shift) => ({ ...simulatePlainLine(seed, shift), events: 0 }))
    case 'long':
      return timeShifts(simulating(longLine(asked.pieces, asked.hours)))
    case 'allocation':
      return bytesPerCase(await lineOf(asked.file, asked.engine))
  }
}

interface Counts {
  arrived: number
  events: number
}

const simulating =
  (line: Line) =>
  (shift: number): Counts => {
    line.simulate(seed, shift)
    return line.counts
  }

function timeShifts(simulate: (shift: number) => Counts): ShiftTimes {
  let shift = 0
  for (const start = performance.now(); performance.now() - start < warmUp * 1000; ) simulate(++shift)
  const times: number[] = []
  let cases = 0
  let events = 0
  const start = performance.now()
  do {
    const began = performance.now()
    const counts = simulate(++shift)
    times.push(performance.now() - began)
    cases += counts.arrived
    events += counts.events
  } while (performance.now() - start < measured * 1000)
  return {
    quantiles: [quantile(times, 0.1), quantile(times, 0.5), quantile(times, 0.9)],
    shifts: times.length,
    cases: cases / times.length,
    events: events / times.length,
    time: times.reduce((sum, time) => sum + time, 0) / times.length,
  }
}

/** The first `most` shifts of a process, whose compiler is at work meanwhile. */
function timeFirst(simulate: (shift: number) => Counts, most: number): ShiftTimes {
  const began = performance.now()
  let [cases, events] = [0, 0]
  for (let shift = 1; shift <= most; shift++) {
    const counts = simulate(shift)
    cases += counts.arrived
    events += counts.events
  }
  const time = (performance.now() - began) / most
  return { quantiles: [time, time, time], shifts: most, cases: cases / most, events: events / most, time }
}

/**
 * Bytes that are allocated with a case while a shift runs, once the compiler has come to rest: over parts of half an hour what a
 * tenth of them stay below, for a stop allocates a little; what the reading itself allocates is taken off. Parts in which
 * memory was collected are left out.
 */
function bytesPerCase(line: Line): number {
  let shift = 0
  // counted and not timed, so that a busy machine comes to rest as well
  while (shift < 200) line.simulate(seed, ++shift)
  const used = () => process.memoryUsage().heapUsed
  const reading = quantile(
    Array.from({ length: 100 }, () => -(used() - used())),
    0.5,
  )
  const found: number[] = []
  for (let more = 0; more < 10; more++) {
    const parts = line.simulateInSteps(seed, ++shift, 1800)
    for (let isLast = false; !isLast; ) {
      const cases = line.counts.arrived
      const before = used()
      isLast = parts.next().done === true
      const bytes = used() - before - reading
      // the last part makes the result of the shift; the first begins the streams
      if (!isLast && cases > 0 && bytes >= 0) found.push(bytes / (line.counts.arrived - cases))
    }
  }
  return quantile(found, 0.1)
}

export function quantile(values: readonly number[], share: number): number {
  return quantileSorted(
    values.toSorted((a, b) => a - b),
    share,
  )
}
