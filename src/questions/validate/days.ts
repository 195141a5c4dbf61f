/** Which days of a record count, and what the plant did on each of them. */
import { holdOut } from '../../record/hold-out.js'
import type { CleanRecord, LoggedShift } from '../../record/record.js'
import { misuse } from '../../scenario/fault.js'
import { printable } from '../../scenario/printable.js'
import type { Kept } from './asked.js'

/** A day on which the plant was seen: the days of a record are taken as independent, its shifts are not. */
export interface PlantDay {
  day: string
  /** Good cases of its shifts. */
  good: number
  /** Numbers of its shifts in the record. */
  shifts: readonly number[]
}

/** A day that does not count, and why. */
export interface LeftOut {
  day: string
  why: string
}

export interface PlantDays {
  days: PlantDay[]
  leftOut: LeftOut[]
  /** A fit may have used these days: they show no more than how well it fitted. */
  isCalibration: boolean
}

/** The days that count. Throws `Fault` `asked` where there are none. */
export function plantDays(record: CleanRecord, kept: Kept, seed: string): PlantDays {
  const wanted = wantedDays(record, kept, seed)
  const byDay = new Map<string, number[]>()
  for (const [number, { day }] of record.shifts.entries())
    if (wanted.has(day)) byDay.set(day, [...(byDay.get(day) ?? []), number])
  const days: PlantDay[] = []
  const leftOut: LeftOut[] = []
  for (const [day, shifts] of byDay) {
    const counts = shifts.map((number) => record.shifts[number]!.good)
    if (counts.some((good) => good === null)) leftOut.push({ day, why: 'its good cases were not counted' })
    else days.push({ day, shifts, good: counts.reduce<number>((sum, good) => sum + good!, 0) })
  }
  return { days, leftOut, isCalibration: kept.by === 'nothing' }
}

function wantedDays(record: CleanRecord, kept: Kept, seed: string): ReadonlySet<string> {
  const all = new Set(record.shifts.map(({ day }: LoggedShift) => day))
  switch (kept.by) {
    case 'unseen':
    case 'nothing':
      return all
    case 'share':
      return new Set(holdOut(record, kept.share, seed).days)
    case 'list': {
      const unknown = kept.days.filter((day) => !all.has(day))
      if (unknown.length > 0)
        throw misuse(
          `${printable(kept.name)} names days that are not in the record, such as ${unknown[0]}: it belongs to another record`,
        )
      return new Set(kept.days)
    }
  }
}
