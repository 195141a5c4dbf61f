/** One shift of a line whose arrivals and exits are noted, for tests of the ways of arriving. */
import { Line } from '../../src/line/line.js'
import { loadScenario } from '../../src/scenario/load.js'

export interface Shift {
  /** Time in s to a microsecond, and kind, of each case that arrives. */
  arrivals: [number, string][]
  /** The same of each that leaves. */
  exits: [number, string][]
  measure(path: string): number
}

const cases =
  '{a: {length: 400 mm, width: 300 mm, height: 300 mm}, b: {length: 600 mm, width: 300 mm, height: 300 mm}}'
/** Takes whatever comes. */
export const open = '{s: {type: station, time: 1 ms, waiting-room: unlimited}}'
/** Holds one case for 10 s and has no room before it. */
export const slow = '{s: {type: station, time: 10 s}}'

export interface Around {
  cases?: string
  line?: string
  /** Header and rows of whatever log the source names. */
  rows?: string[][]
}

/** A line with the source or, in a map that begins with `p`, the sources. */
export function build(source: string, shift: string, options: Around = {}): Line {
  const text = `cases: ${options.cases ?? cases}\narrivals: ${source.startsWith('{p:') ? source : `{p: ${source}}`}\nline: ${options.line ?? open}\nshift: ${shift}`
  const { scenario } = loadScenario(text, {
    readRows: (_, taker) => {
      taker.header(options.rows![0]!)
      for (const row of options.rows!.slice(1)) if (!taker.row(row)) return
    },
  })
  return new Line(scenario)
}

/** Simulates one shift of such a line. */
export function simulate(source: string, shift: string, options: Around & { shift?: number } = {}): Shift {
  const line = build(source, shift, options)
  const arrivals: [number, string][] = []
  const exits: [number, string][] = []
  const micro = (time: number) => Math.round(time * 1e6) / 1e6
  line.observe((event) => {
    if (event.event === 'arrives') arrivals.push([micro(event.time), event.kind!])
    // cases are numbered in order of arrival
    if (event.event === 'leaves') exits.push([micro(event.time), arrivals[event.case! - 1]![1]])
  })
  const result = line.simulate('arrivals', options.shift ?? 1)
  return {
    arrivals,
    exits,
    measure(path) {
      const index = line.columns.findIndex(
        (column) => column.part === 'value' && column.measure.path.join('.') === path,
      )
      if (index < 0) throw new Error(`no measure ${path}`)
      return result.values[index]!
    },
  }
}

/** Times of arrival, s. */
export const times = (shift: Shift): number[] => shift.arrivals.map(([time]) => time)
