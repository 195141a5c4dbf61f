/** The scenario as it stood on one shift of the record: its length, its breaks, the cases that came where they were logged, and its stops where asked. */
import type { CleanRecord, LoggedCases, LoggedShift } from '../../record/record.js'
import { lengthOf } from '../../record/spans.js'
import type { RecordedLog } from '../../scenario/arrivals.js'
import { isFault } from '../../scenario/fault.js'
import type { Problem, ScenarioError } from '../../scenario/problems.js'
import type { ReadScenario } from '../../scenario/read.js'
import type { Scenario } from '../../scenario/schema.js'
import type { OwnStops } from './own-stops.js'

/** Where the cases of a shift come from: as they were recorded, or from the law of the scenario. */
export type DrivenBy = 'cases' | 'law'

export interface DrivenShift {
  scenario: Scenario
  drivenBy: DrivenBy
}

/** Makes the scenario of each shift; with its own stops where there is `own`. */
export class Driving {
  /** By length and breaks: most shifts are alike. */
  private readonly made = new Map<string, Scenario>()
  private readonly hasBreaks: boolean
  /** Entry of `arrivals` at which the logged cases come; null where the record does not say which of several. */
  private readonly source: string | null
  /** Cases of the log, shift by shift: where they begin. */
  private readonly firstOf: ReadonlyMap<number, { from: number; to: number }>

  constructor(
    private readonly loaded: ReadScenario,
    private readonly record: CleanRecord,
    private readonly own: OwnStops | null = null,
  ) {
    this.hasBreaks = record.shifts.some(({ breaks }) => breaks.length > 0)
    this.source = sourceOf(loaded.scenario, record.cases)
    this.firstOf = stretchesOf(record.cases)
  }

  /** The scenario of a shift; in its place what of the scenario does not go with that shift. */
  of(number: number): DrivenShift | { problem: Problem } {
    const shift = this.record.shifts[number]!
    try {
      const alike = this.withShift(shift)
      const scenario = this.own?.in(alike, number) ?? alike
      const log = this.logOf(number, scenario)
      if (!log) return { scenario, drivenBy: 'law' }
      return { scenario: withLog(scenario, this.source!, log), drivenBy: 'cases' }
    } catch (error) {
      if (!isFault(error, 'scenario')) throw error
      return { problem: (error as ScenarioError).problems[0]! }
    }
  }

  private withShift(shift: LoggedShift): Scenario {
    const length = lengthOf(shift)
    const breaks = shift.breaks.map((pause) => ({
      at: `${pause.begins - shift.begins} s`,
      for: `${lengthOf(pause)} s`,
    }))
    const key = JSON.stringify([length, breaks])
    const known = this.made.get(key)
    if (known) return known
    const source = `the shift of ${shift.day}`
    const { scenario } = this.loaded.vary(null, [
      { path: 'shift.length', value: `${length} s`, source },
      // a record that shows no break at all does not log them
      ...(this.hasBreaks ? [{ path: 'shift.breaks', value: breaks, source }] : []),
    ])
    this.made.set(key, scenario)
    return scenario
  }

  /** The cases of the shift as they came; null where they were not logged, or not all of them. */
  private logOf(number: number, { cases: kinds }: Scenario): RecordedLog | null {
    const { cases, shifts } = this.record
    const part = this.firstOf.get(number)
    if (!cases || !part || this.source === null) return null
    const { begins, good } = shifts[number]!
    // more good ones than came: the scanner was not there all the time
    if (part.to - part.from < (good ?? 0)) return null
    const names = Object.keys(kinds)
    const places = cases.names.map((name) => names.indexOf(name))
    const own = cases.kinds?.slice(part.from, part.to)
    const isKnown = own?.every((kind) => places[kind]! >= 0)
    return {
      ...{ file: 'the record', time: 'at', unit: 's' },
      times: cases.times.slice(part.from, part.to).map((time) => Math.max(0, time - begins)),
      kinds: own && isKnown ? own.map((kind) => places[kind]!) : null,
    }
  }
}

function sourceOf({ arrivals }: Scenario, cases: LoggedCases | null): string | null {
  const sources = Object.keys(arrivals)
  if (cases?.source != null) return sources.includes(cases.source) ? cases.source : null
  return sources.length === 1 ? sources[0]! : null
}

function stretchesOf(cases: LoggedCases | null): Map<number, { from: number; to: number }> {
  const found = new Map<number, { from: number; to: number }>()
  for (const [index, shift] of cases?.shifts.entries() ?? []) {
    const known = found.get(shift)
    if (known) known.to = index + 1
    else found.set(shift, { from: index, to: index + 1 })
  }
  return found
}

function withLog(scenario: Scenario, source: string, log: RecordedLog): Scenario {
  const { 'when-full': whenFull, to } = scenario.arrivals[source]!
  const replayed = { log, batch: 1, 'when-full': whenFull, ...(to === undefined ? {} : { to }) }
  return { ...scenario, arrivals: { ...scenario.arrivals, [source]: replayed } }
}
