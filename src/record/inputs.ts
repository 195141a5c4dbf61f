/** What a clean record says of the inputs of a scenario, over the shifts that are not held out. */
import { arrivalInputs } from './arrivals-of-record.js'
import { casesOver, type Exposing, runningTime } from './exposure.js'
import {
  chosen,
  type Exposure,
  type Facts,
  type LoggedChance,
  type LoggedInput,
  type LoggedTimes,
  type LoggedTimeTo,
  type Occurrence,
} from './input.js'
import { type StopKeys, stopPathOf } from './meanings.js'
import type { CleanRecord, LoggedShift, LoggedStop, Meaning } from './record.js'
import { lengthOf } from './spans.js'
import { sampleOfRuns, sampleOfStops } from './stop-times.js'
import { LocalClock } from './zone.js'

/** What all inputs of one record share. */
interface Shared {
  record: CleanRecord
  facts: Facts
  clock: LocalClock
  running: Exposing
  /** Cases of each shift; null where they are not known, or the shift does not count. */
  cases: readonly (number | null)[]
  casesAre: 'good' | 'scanned' | null
}

/** One sort of stop of a piece: where it stands in a scenario, and when it occurred. */
interface Sort {
  path: Meaning
  piece: string
  keys: StopKeys
  stops: readonly LoggedStop[]
}

/**
 * The inputs that the record knows: first those of stops, in the order of `means`, then arrivals and kinds of cases. What `means` names and no
 * row has is an input too: a count of none in its exposure.
 */
export function loggedInputs(record: CleanRecord, facts: Facts = {}): LoggedInput[] {
  const isCounted = ({ isHeldOut }: LoggedShift) => !isHeldOut
  const shared: Shared = {
    record,
    facts,
    clock: new LocalClock(record.zone),
    running: runningTime(record, isCounted),
    ...casesOf(record),
  }
  const ofStops = record.meanings.flatMap((path): LoggedInput[] => {
    const named = stopPathOf(path)
    if (!named) return []
    const stops = record.stops.filter(
      ({ means, shift }) => means === path && isCounted(record.shifts[shift]!),
    )
    const sort: Sort = { path, ...named, stops }
    return [
      ...(named.keys.chance ? [chanceOf(sort, named.keys.chance, shared)] : []),
      ...(named.keys.timeTo === undefined ? [] : [timeToOf(sort, named.keys.timeTo, shared)]),
      timesOf(sort, shared),
    ]
  })
  return [...ofStops, ...arrivalInputs(record, facts, shared.clock)]
}

/** Cases of each shift: the good ones as counted, or else those that the scanner saw. */
function casesOf({ shifts, cases }: CleanRecord): Pick<Shared, 'cases' | 'casesAre'> {
  const fitted = (count: (number: number) => number | null) =>
    shifts.map(({ isHeldOut }, number) => (isHeldOut ? null : count(number)))
  if (shifts.some(({ good }) => good !== null))
    return { cases: fitted((number) => shifts[number]!.good), casesAre: 'good' }
  if (!cases) return { cases: fitted(() => null), casesAre: null }
  const seen: number[] = Array(shifts.length).fill(0)
  for (const shift of cases.shifts) seen[shift]!++
  return { cases: fitted((number) => seen[number]!), casesAre: 'scanned' }
}

/** Stops as occurrences: `value` and `exposure` as the input counts them. */
const occurrencesOf = (
  stops: readonly LoggedStop[],
  clock: LocalClock,
  value: (stop: LoggedStop) => number,
  exposure: Exposing | null,
): Occurrence[] =>
  stops.map((stop) => ({
    at: stop.begins,
    value: value(stop),
    isCutOff: stop.isCutOff,
    piece: stop.piece,
    shift: stop.shift,
    hour: clock.hour(stop.begins),
    exposureBefore: exposure?.until(stop.begins) ?? null,
  }))

const distinct = (stops: readonly LoggedStop[]): string[] => [...new Set(stops.map(({ piece }) => piece))]

function chanceOf(
  { path, piece, keys, stops }: Sort,
  { key, of }: NonNullable<StopKeys['chance']>,
  shared: Shared,
): LoggedChance {
  const { record, facts, clock, cases, casesAre } = shared
  const heads = of === 'strips' ? facts.heads?.get(piece) : undefined
  const perCase = heads ?? 1
  const exposing =
    casesAre === null
      ? null
      : casesOver(
          record,
          cases.map((count) => count && count * perCase),
        )
  const counted = casesAre === null ? stops : stops.filter(({ shift }) => cases[shift] !== null)
  const pieces = distinct(counted)
  const unit: Exposure['unit'] = heads === undefined ? 'cases' : 'strips'
  return {
    what: 'chance',
    path: `${path}.${key}`,
    words: `${keys.words} of ${piece}`,
    count: counted.length,
    exposure: exposing && { value: exposing.total, unit },
    exposureByHour: exposing?.byHour(clock) ?? null,
    exposureByPiece: exposing && pieces.length === 1 ? new Map([[pieces[0]!, exposing.total]]) : null,
    occurrences: occurrencesOf(counted, clock, lengthOf, exposing),
    seenFrom: record.seenFrom,
    holdsWalk: false,
    notes: chosen([
      ...notesOfCases(shared, stops.length - counted.length),
      of === 'strips' &&
        heads === undefined &&
        'The number of heads of the sealer is not known: this is a chance per case, not per strip.',
      pieces.length > 1 && `Logged at ${pieces.length} pieces: ${pieces.join(', ')}.`,
    ]),
  }
}

/** What the cases are, and what is not known of them; `uncounted` stops were in shifts without a count. */
function notesOfCases({ record, cases, casesAre }: Shared, uncounted: number): (string | false)[] {
  if (casesAre === null)
    return [
      'The record has neither good cases of shifts nor cases of a scanner, so the number of cases is not known.',
    ]
  const unknown = record.shifts.filter(({ isHeldOut }, number) => !isHeldOut && cases[number] === null).length
  return [
    casesAre === 'good'
      ? 'Counted per good case: spoilt cases are not included.'
      : 'Counted per case that the scanner saw.',
    unknown > 0 &&
      `Shifts without a count of cases: ${unknown}; these shifts and their stops (${uncounted}) are not used here.`,
  ]
}

function timesOf({ path, piece, keys, stops }: Sort, { record, clock }: Shared): LoggedTimes {
  const cutOff = stops.filter(({ isCutOff }) => isCutOff).length
  return {
    what: 'times',
    path: `${path}.${keys.times}`,
    words: `how long ${keys.words} of ${piece} last`,
    count: stops.length,
    sample: sampleOfStops(stops, record),
    occurrences: occurrencesOf(stops, clock, lengthOf, null),
    seenFrom: record.seenFrom,
    holdsWalk: true,
    notes: chosen([
      cutOff > 0 &&
        `${cutOff} of ${stops.length} ended at a break or at the end of a shift: their true length is longer.`,
    ]),
  }
}

/**
 * Running time from one breakdown to the next, machine by machine; what each ran after its last one is censored, and days that are held out
 * are passed over as if the clock stood.
 */
function timeToOf({ path, piece, keys, stops }: Sort, key: string, shared: Shared): LoggedTimeTo {
  const { record, clock, running } = shared
  const machines = machinesOf(piece, stops, record)
  const since = new Map<LoggedStop, number>()
  const left: number[] = []
  for (const machine of machines) {
    let last = 0
    for (const stop of stops.filter((each) => machines.length === 1 || each.piece === machine)) {
      const now = running.until(stop.begins)
      since.set(stop, now - last)
      last = now
    }
    left.push(running.total - last)
  }
  const value = running.total * machines.length
  return {
    what: 'time-to',
    path: `${path}.${key}`,
    words: `running time of ${piece} until one of its ${keys.words}`,
    count: stops.length,
    sample: sampleOfRuns(
      stops.map((stop) => since.get(stop)!),
      left,
      record.roundedTo,
    ),
    exposure: { value, unit: 's' },
    exposureByHour: running.byHour(clock).map((seconds) => seconds * machines.length),
    exposureByPiece: new Map(machines.map((machine) => [machine, running.total])),
    occurrences: occurrencesOf(stops, clock, (stop) => since.get(stop)!, running),
    seenFrom: record.seenFrom,
    holdsWalk: false,
    notes: chosen([
      machines.length > 1 &&
        `Logged at ${machines.length} pieces, assumed to be machines of the same kind that each ran all the time: ${machines.join(', ')}. If they are different pieces of the scenario, say so under \`means\`.`,
    ]),
  }
}

/** The plant's names for one piece of the scenario; one machine where some of its stops name none. */
function machinesOf(piece: string, stops: readonly LoggedStop[], record: CleanRecord): string[] {
  const own = record.stops.filter(({ means }) => means !== null && stopPathOf(means)?.piece === piece)
  const names = distinct(own)
  return names.length === 0 || [...names, ...distinct(stops)].includes('') ? [names[0] || piece] : names
}
