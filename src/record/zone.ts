/** What the clock of a place shows, turned into UTC and back: a time that a change of the clock leaves out does not exist, one that it repeats exists twice. */
import { DateTime, IANAZone } from 'luxon'
import { nearest } from '../scenario/nearest.js'

const secondsOfDay = 86_400

/** What is wrong with the name of a time zone, and the nearest mend; null where nothing is. */
export function zoneFault(zone: string): { rule: string; fix: string } | null {
  if (IANAZone.isValidZone(zone)) return null
  const rule = 'must be the name of a time zone in the IANA list, such as `Europe/Berlin`'
  const fix = nearest(zone.slice(0, 40), Intl.supportedValuesOf('timeZone'))
  return { rule, fix: fix.length > 100 ? 'write it like `Europe/Berlin`' : fix }
}

/** What a reading of a clock stands for, s since 1970 in UTC: one time, none, or two of which the earlier comes first. */
export type Meant = readonly [] | readonly [utc: number] | readonly [utc: number, again: number]

/** The clock of one place; null: it shows UTC. */
export class LocalClock {
  private readonly zone: IANAZone | null
  /** Offset from UTC of each day on which it does not change, s; null where it may change. */
  private readonly offsets = new Map<number, number | null>()

  constructor(zone: string | null) {
    this.zone = zone === null ? null : IANAZone.create(zone)
  }

  /** What it stands for when the clock shows `local`, s since 1970. */
  meant(local: number): Meant {
    const steady = this.steadyOffset(Math.floor(local / secondsOfDay))
    if (steady !== null) return [local - steady]
    const around = [local - secondsOfDay, local + secondsOfDay].map((utc) => this.offsetAt(utc))
    const times = [...new Set(around)].map((offset) => local - offset).sort((a, b) => a - b)
    return times.filter((utc) => utc + this.offsetAt(utc) === local) as unknown as Meant
  }

  /** What the clock shows at `utc`, s since 1970. */
  local(utc: number): number {
    const steady = this.steadyOffset(Math.floor(utc / secondsOfDay))
    return utc + (steady ?? this.offsetAt(utc))
  }

  /** The date that it shows at `utc`, `2026-01-31`. */
  day(utc: number): string {
    return DateTime.fromSeconds(this.local(utc), { zone: 'utc' }).toISODate()!
  }

  /** The hour of the day that it shows, 0 to 23. */
  hour(utc: number): number {
    const inDay = this.local(utc) / secondsOfDay
    return Math.floor((inDay - Math.floor(inDay)) * 24 + 1e-9)
  }

  /** Of a day of UTC or of the place alike: for it holds from a day before it to a day after. */
  private steadyOffset(day: number): number | null {
    let offset = this.offsets.get(day)
    if (offset === undefined) {
      const [before, after] = [
        this.offsetAt((day - 1) * secondsOfDay),
        this.offsetAt((day + 2) * secondsOfDay),
      ]
      offset = before === after ? before : null
      this.offsets.set(day, offset)
    }
    return offset
  }

  private offsetAt(utc: number): number {
    return this.zone === null ? 0 : this.zone.offset(utc * 1000) * 60
  }
}
