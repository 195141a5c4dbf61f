/** Days that a record does not cover: without a shift, and without a stop where the others have many. */
import { DateTime } from 'luxon'
import type { Reading } from './reading.js'
import type { LoggedShift, LoggedStop } from './record.js'

/** A day without a stop is told where days have so many on average: by chance alone it would be one in 150. */
const manyStops = 5

const utc = { zone: 'utc' } as const
const serial = (day: string): number => DateTime.fromISO(day, utc).toMillis() / 86_400_000
const dayOf = (number: number): string => DateTime.fromMillis(number * 86_400_000, utc).toISODate()!

/** Tells of days between the first and the last without a shift, and of those on which nobody seems to have logged. */
export function tellGaps(
  shifts: readonly LoggedShift[],
  stops: readonly LoggedStop[],
  { record, ledger }: Pick<Reading, 'record' | 'ledger'>,
): void {
  const days = [...new Set(shifts.map(({ day }) => day))]
  for (const [index, day] of days.entries()) {
    const before = index === 0 ? serial(day) - 1 : serial(days[index - 1]!)
    const count = serial(day) - before - 1
    const [first, last] = [dayOf(before + 1), dayOf(serial(day) - 1)]
    if (count > 0)
      ledger.tell('days-between', {
        file: record.shifts.file,
        count,
        what: count === 1 ? first : `${first} to ${last}`,
      })
  }
  const logged = new Set(stops.map(({ shift }) => shifts[shift]!.day))
  if (stops.length < manyStops * days.length) return
  for (const day of days)
    if (!logged.has(day)) ledger.tell('days-without-stops', { file: record.stops.file, what: day })
}
