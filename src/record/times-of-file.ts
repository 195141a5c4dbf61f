/** The times of one file: read by its pattern, then turned into UTC in the order of its rows; what is none is told with its row. */
import { Divisors } from './grain.js'
import type { Ledger } from './ledger.js'
import { patternsThatFit, TimeReader } from './time-pattern.js'
import type { LocalClock } from './zone.js'

/** Texts that do not fit and are tried with other patterns. */
const mostTried = 200

/** A file of which more rows hold no time is not to be used: 1 in 20, but for a single one, such as a stop that has not ended. */
const mostUnfit = 1 / 20

export class TimesOfFile {
  private readonly reader: TimeReader
  /** Whether the times bring their offset, as the first of them does; null: none was read yet. */
  private isAbsolute: boolean | null = null
  private readonly unfit: string[] = []
  /** Rows with a time that is none. */
  private unread = 0
  private lastUnread = 0
  private readonly divisors = new Divisors()

  constructor(
    private readonly file: string,
    pattern: string,
    private readonly clock: LocalClock,
    private readonly ledger: Ledger,
  ) {
    this.reader = new TimeReader(pattern)
  }

  /** What the clock of the log shows in `text`, s since 1970; NaN where that is no time, which is told. */
  read(text: string, row: number): number {
    const { file, ledger, reader } = this
    const reading = reader.read(text)
    if (!Number.isNaN(reading) && (this.isAbsolute ?? reader.isAbsolute) === reader.isAbsolute) {
      this.isAbsolute = reader.isAbsolute
      this.divisors.take(reading)
      return reading
    }
    if (row !== this.lastUnread) this.unread++
    this.lastUnread = row
    if (text === '') ledger.tell('empty-time', { file, row })
    else if (Number.isNaN(reading) && reader.why === 'no-such-date')
      ledger.tell('no-such-date', { file, row, what: text })
    else {
      ledger.tell('unfit-time', { file, row, what: text })
      if (this.unfit.length < mostTried) this.unfit.push(text)
    }
    return Number.NaN
  }

  /** Tells of the file as a whole, once its `rows` are read. */
  finish(rows: number): void {
    const { file, ledger } = this
    for (const { pattern, count } of patternsThatFit(this.unfit).slice(0, 3))
      ledger.tell('other-pattern', {
        file,
        count,
        what: `\`${pattern}\` fits ${count} of ${this.unfit.length}`,
      })
    const isOne = this.unread === 1 && rows > 1
    if (this.unread > rows * mostUnfit && !isOne)
      ledger.tell('mostly-unfit', { file, count: this.unread, what: String(rows) })
  }

  /** Grain of the clock, s: what the pattern shows, or coarser where every one of many times is whole in that; 0: finer than a second. */
  get grain(): number {
    return Math.max(this.reader.grain, this.divisors.coarsest)
  }

  /** Whether a time is finer than `grain`, s. */
  isFinerThan(grain: number): boolean {
    return this.divisors.isFinerThan(grain)
  }

  /** UTC of a reading; of two that it may be the one that does not lie before `before`. NaN: the clock never shows that, which is told. */
  utc(reading: number, row: number, before: number): number {
    if (this.isAbsolute || Number.isNaN(reading)) return reading
    const [first, again] = this.clock.meant(reading)
    const { file, ledger } = this
    if (first === undefined) {
      ledger.tell('no-such-time', { file, row })
      return Number.NaN
    }
    if (again === undefined) return first
    const isAgain = first < before && before <= again
    ledger.tell('twice', { file, row, what: `row ${row}: the ${isAgain ? 'later' : 'earlier'}` })
    return isAgain ? again : first
  }
}

/** Places of readings from the earliest to the latest row: logs are written either way round. */
export function earliestFirst(readings: Float64Array): number[] {
  const places = Array.from(readings, (_, place) => place)
  const steps = (sign: 1 | -1) =>
    places.filter((place) => place > 0 && sign * (readings[place]! - readings[place - 1]!) > 0).length
  return steps(-1) > steps(1) ? places.reverse() : places
}
