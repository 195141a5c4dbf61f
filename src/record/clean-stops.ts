/** Stops as the simulator understands them: one at a time for each piece, within one shift and between its breaks; what does not fit is told. */
import type { Ledger } from './ledger.js'
import type { StopRow } from './read-stops.js'
import { type Reasons, severalPieces, tellUnknown, underNamesOfNow } from './reasons.js'
import type { LoggedRest, LoggedShift, LoggedStop, Meaning, Span } from './record.js'
import { lastFrom, lengthOf, total, union, within, without } from './spans.js'

/** What cleaning rests on. */
export interface Cleaning {
  file: string
  /** Grain of the clock, s. */
  grain: number
  /** Lengths were timed finer than the clock that the stops begin by: they may lie so much later than they seem, s; 0: not so. */
  slack: number
  /** Shorter stops are not logged, s. */
  seenFrom: number
  reasons: Reasons
  ledger: Ledger
}

interface MeantRow extends StopRow {
  means: Meaning | null
}

/** Shifts with the breaks and the lost time that the log shows, and its stops in order. */
export interface CleanStops {
  shifts: LoggedShift[]
  stops: LoggedStop[]
  rests: LoggedRest[]
}

/** Cleans the rows of a log of stops. */
export function cleanStops(
  rows: readonly StopRow[],
  shifts: readonly LoggedShift[],
  cleaning: Cleaning,
): CleanStops {
  const { reasons, file, ledger } = cleaning
  const named = underNamesOfNow(rows, reasons, file, ledger)
  const isSeveral = severalPieces(named, reasons)
  const sound = soundRows(named, cleaning).map((row): MeantRow => ({ ...row, means: reasons.meaningOf(row) }))
  const breaks = sound.filter(({ means }) => means === 'break')
  for (const { row, ...span } of breaks) ledger.tell('logged-breaks', { file, row, seconds: lengthOf(span) })
  const placing = new Placing(withBreaks(shifts, breaks), cleaning)
  const others = sound.filter(({ means }) => means !== 'break')
  const [several, single] = [
    others.filter(({ piece }) => isSeveral(piece)),
    others.filter(({ piece }) => !isSeveral(piece)),
  ]
  for (const stop of several) {
    const seconds = placing.lose(stop)
    ledger.tell('two-pieces', { file, row: stop.row, seconds, what: stop.piece })
  }
  for (const stop of apart(single, cleaning)) placing.place(stop)
  const placed = placing.placed
  tellUnknown(placed.stops, reasons, file, ledger)
  return placed
}

/** A log of which more stops end before they begin is read wrongly. */
const mostBackwards = 1 / 20

/** Rows in order, without doubles and without those that end before they begin. */
function soundRows(rows: readonly StopRow[], { file, grain, ledger }: Cleaning): StopRow[] {
  const backwards = rows.filter(({ begins, ends }) => ends < begins)
  if (backwards.length > 1 && backwards.length > rows.length * mostBackwards)
    for (const { row } of backwards) ledger.tell('mostly-backwards', { file, row, what: String(rows.length) })
  const met = new Set<string>()
  return [...rows]
    .sort((a, b) => a.begins - b.begins || a.row - b.row)
    .filter((stop) => {
      const { begins, ends, piece, reason, row } = stop
      const key = JSON.stringify([begins, ends, piece, reason])
      const fault = met.has(key)
        ? 'doubled'
        : ends < begins
          ? 'ends-before'
          : ends === begins && grain === 0
            ? 'instant-left-out'
            : null
      met.add(key)
      if (fault) ledger.tell(fault, { file, row, seconds: Math.max(0, lengthOf(stop)) })
      else if (ends === begins) ledger.tell('instant', { file, row })
      return fault === null
    })
}

/** Stops of which no two of one piece overlap: they are made one, under the reason of the first. */
function apart(stops: readonly MeantRow[], { file, slack, ledger }: Cleaning): MeantRow[] {
  const latest = new Map<string, MeantRow>()
  const kept: MeantRow[] = []
  for (const stop of stops) {
    const last = latest.get(stop.piece)
    if (!last || stop.begins >= last.ends - slack) {
      const later = Math.max(0, (last?.ends ?? stop.begins) - stop.begins)
      if (later > 0) ledger.tell('moved', { file, row: stop.row, seconds: later })
      const own = { ...stop, begins: stop.begins + later, ends: stop.ends + later }
      latest.set(stop.piece, own)
      kept.push(own)
      continue
    }
    const { row } = stop
    const seconds = Math.min(stop.ends, last.ends) - stop.begins
    ledger.tell('overlap', { file, row, seconds })
    if (stop.reason !== last.reason)
      ledger.tell('overlap-other', { file, row, what: `${stop.reason} under ${last.reason}` })
    last.ends = Math.max(last.ends, stop.ends)
  }
  return kept
}

/** Shifts with the logged breaks among those at fixed times. */
function withBreaks(shifts: readonly LoggedShift[], breaks: readonly Span[]): LoggedShift[] {
  const logged = union(breaks)
  return shifts.map((shift) => ({
    ...shift,
    breaks: union([
      ...shift.breaks,
      ...logged
        .slice(Math.max(0, lastFrom(logged, shift.begins)))
        .flatMap((each) => within(each, shift) ?? []),
    ]),
  }))
}

/** Puts stops into the shifts in which they were, between the breaks. */
class Placing {
  private readonly stops: LoggedStop[] = []
  private readonly lost: Span[][]
  private readonly rests: LoggedRest[] = []

  constructor(
    private readonly shifts: readonly LoggedShift[],
    private readonly cleaning: Cleaning,
  ) {
    this.lost = shifts.map(() => [])
  }

  get placed(): CleanStops {
    return {
      shifts: this.shifts.map((shift, index) => ({ ...shift, lost: union(this.lost[index]!) })),
      stops: this.stops.sort((a, b) => a.begins - b.begins || a.row - b.row),
      rests: this.rests,
    }
  }

  /** Counts a stop, or what is left of it, as stopped for no stop; gives its length, s. */
  private rest(span: Span & { means: Meaning | null }): number {
    for (const { shift, ...inside } of this.inShifts(span))
      this.rests.push({ ...inside, means: span.means, shift })
    return this.lose(span)
  }

  /** Counts the time of `span` within shifts and between breaks as stopped, for no stop; gives its length, s. */
  lose(span: Span): number {
    let seconds = 0
    for (const { shift, ...inside } of this.inShifts(span)) {
      const parts = without(inside, this.shifts[shift]!.breaks)
      this.lost[shift]!.push(...parts)
      seconds += total(parts)
    }
    return seconds
  }

  /** What of `span` lies in shifts, with the number of the shift. */
  private inShifts(span: Span): (Span & { shift: number })[] {
    const first = Math.max(0, lastFrom(this.shifts, span.begins))
    const last = lastFrom(this.shifts, span.ends)
    return this.shifts.slice(first, last + 1).flatMap((shift, place) => {
      const inside = within(span, shift)
      return inside ? [{ ...inside, shift: first + place }] : []
    })
  }

  /** Takes a stop as far as it was in one shift before a break; the rest of it is lost time. */
  place(stop: MeantRow): void {
    const { file, grain, seenFrom, ledger } = this.cleaning
    const { begins, ends, row, means } = stop
    const number = lastFrom(this.shifts, begins)
    const shift = this.shifts[number]
    const found = { file, row }
    if (!shift || begins >= shift.ends || isInBreak(shift, begins)) {
      const seconds = this.rest(stop)
      ledger.tell(seconds > 0 ? 'begins-outside' : 'outside', {
        ...found,
        seconds: seconds || lengthOf(stop),
      })
      return
    }
    if (lengthOf(stop) + grain < seenFrom) {
      ledger.tell('shorter-than-seen', { ...found, seconds: this.rest(stop) })
      return
    }
    const next = shift.breaks.find((each) => each.begins > begins)
    const border = next?.begins ?? shift.ends
    const isCutOff = ends > border
    if (isCutOff) {
      this.rest({ begins: border, ends, means })
      ledger.tell('cut-off', { ...found, seconds: ends - border })
    }
    this.stops.push({
      ...stop,
      ends: Math.min(ends, border),
      shift: number,
      isCutOff,
      limit: border - begins,
    })
  }
}

const isInBreak = ({ breaks }: LoggedShift, time: number): boolean => {
  const last = breaks[lastFrom(breaks, time)]
  return last !== undefined && time < last.ends
}
