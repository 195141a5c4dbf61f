/** Where the time of the shifts went: run, breaks, stops by what they mean, and time that counts for no stop. */
import type { CleanRecord, LoggedStop, Meaning } from './record.js'
import { lengthOf, total, union, without } from './spans.js'

/** All in s; `shifts` is the sum of the others. */
export interface TimeSpent {
  shifts: number
  breaks: number
  /** By meaning; null: nothing says what it means. Where two pieces stood at once, that time is of the one that stood first. */
  stopped: Map<Meaning | null, number>
  lost: number
  run: number
}

/** Stops of each shift, in order. */
export function stopsByShift({ shifts, stops }: Pick<CleanRecord, 'shifts' | 'stops'>): LoggedStop[][] {
  const byShift: LoggedStop[][] = shifts.map(() => [])
  for (const stop of stops) byShift[stop.shift]!.push(stop)
  return byShift
}

/** Time of all shifts. */
export function timeSpent(record: Pick<CleanRecord, 'shifts' | 'stops'>): TimeSpent {
  const spent: TimeSpent = { shifts: 0, breaks: 0, stopped: new Map(), lost: 0, run: 0 }
  for (const [number, stops] of stopsByShift(record).entries()) {
    const shift = record.shifts[number]!
    let until = -Infinity
    for (const { means, begins, ends } of stops) {
      const seconds = Math.max(0, ends - Math.max(begins, until))
      spent.stopped.set(means, (spent.stopped.get(means) ?? 0) + seconds)
      until = Math.max(until, ends)
    }
    const stood = union(stops)
    spent.shifts += lengthOf(shift)
    spent.breaks += total(shift.breaks)
    spent.lost += total(shift.lost.flatMap((span) => without(span, stood)))
    spent.run += total(without(shift, union([...shift.breaks, ...shift.lost, ...stood])))
  }
  return spent
}
