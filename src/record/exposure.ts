/** In what events were counted: running time, or cases spread over it, up to any moment and by the hour of the day. */
import { stopsByShift } from './minutes.js'
import type { CleanRecord, LoggedShift, Span } from './record.js'
import { lastFrom, lengthOf, total, union, without } from './spans.js'
import type { LocalClock } from './zone.js'

/** A span in which exposure grows evenly. */
interface Stretch extends Span {
  /** Exposure a second. */
  rate: number
  /** Exposure of all stretches before it. */
  before: number
}

/** Exposure as it grows over the shifts of a record. */
export class Exposing {
  readonly total: number
  private readonly stretches: readonly Stretch[]

  /** `spans` in order and apart, each with its exposure a second. */
  constructor(spans: readonly Omit<Stretch, 'before'>[]) {
    let sum = 0
    this.stretches = spans.map((span) => {
      const before = sum
      sum += span.rate * lengthOf(span)
      return { ...span, before }
    })
    this.total = sum
  }

  /** Exposure until `time`. */
  until(time: number): number {
    const stretch = this.stretches[lastFrom(this.stretches, time)]
    if (!stretch) return 0
    return stretch.before + stretch.rate * (Math.min(time, stretch.ends) - stretch.begins)
  }

  /** Exposure in each local hour of the day. */
  byHour(clock: LocalClock): number[] {
    const hours: number[] = Array(24).fill(0)
    for (const { begins, ends, rate } of this.stretches)
      for (let from = begins; from < ends; ) {
        const local = clock.local(from)
        const next = Math.min(ends, from + 3600 - (((local % 3600) + 3600) % 3600))
        hours[clock.hour(from)]! += rate * (next - from)
        from = next
      }
    return hours
  }
}

/**
 * Spans in which the line ran, shift by shift: without breaks, without stops of any piece and any reason (a log names one cause of a
 * standing line), and without lost time.
 */
export function runningSpans(record: Pick<CleanRecord, 'shifts' | 'stops'>): Span[][] {
  const stops = stopsByShift(record)
  return record.shifts.map((shift, number) =>
    without(shift, union([...shift.breaks, ...shift.lost, ...stops[number]!])),
  )
}

/** Running time of the shifts that `isCounted` takes, s. */
export const runningTime = (
  record: Pick<CleanRecord, 'shifts' | 'stops'>,
  isCounted: (shift: LoggedShift) => boolean,
): Exposing =>
  new Exposing(
    runningSpans(record).flatMap((spans, number) =>
      isCounted(record.shifts[number]!) ? spans.map((span) => ({ ...span, rate: 1 })) : [],
    ),
  )

/** Cases, `counts` of them a shift (null: none known), spread evenly over its running time; over the shift where it never ran. */
export function casesOver(
  record: Pick<CleanRecord, 'shifts' | 'stops'>,
  counts: readonly (number | null)[],
): Exposing {
  return new Exposing(
    runningSpans(record).flatMap((ran, number) => {
      const count = counts[number] ?? null
      if (count === null) return []
      const spans = ran.length > 0 ? ran : [record.shifts[number]!]
      return spans.map(({ begins, ends }) => ({ begins, ends, rate: count / total(spans) }))
    }),
  )
}
