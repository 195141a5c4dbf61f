/** Keeps days of a record back, for a validation that no fit has seen. */
import { Stream } from '../engine/stream.js'
import type { CleanRecord } from './record.js'

/** A record of which some days are held out. */
export interface HeldOut {
  record: CleanRecord
  /** `2026-01-31`, in order. */
  days: readonly string[]
}

/**
 * Marks a `share` of the days, 0 to 1, as held out: whole days, for what happens on one day is not independent. Which ones is drawn by
 * `seed`. At least one where `share` is above 0 and there is more than one day; never all.
 */
export function holdOut(record: CleanRecord, share: number, seed: string): HeldOut {
  const days = [...new Set(record.shifts.map(({ day }) => day))]
  const wanted = share > 0 ? Math.max(1, Math.round(share * days.length)) : 0
  const stream = new Stream('record', 'days held out')
  stream.begin(seed, 0)
  const drawn = days
    .map((day) => ({ day, place: stream.next() }))
    .sort((a, b) => a.place - b.place)
    .slice(0, Math.min(wanted, days.length - 1))
  const held = new Set(drawn.map(({ day }) => day))
  return {
    record: {
      ...record,
      shifts: record.shifts.map((shift) => ({ ...shift, isHeldOut: held.has(shift.day) })),
    },
    days: days.filter((day) => held.has(day)),
  }
}
