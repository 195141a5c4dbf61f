/** What of a campaign is counted: all of it, or what comes after a cut that takes the warm-up away. */
import type { Scenario } from '../scenario/schema.js'

/** Rounding of an instant into a number of shifts, shifts. */
const hair = 1e-9

export class Counted {
  /** Start of what is counted, s since the start of the campaign. */
  from = 0
  /** Its length, run-outs included, s. */
  time = 0
  /** Shift less breaks in it, s. */
  workingTime = 0
  /** The same of each shift that is counted, in whole or in part, s. */
  workingTimeOfEach = 0
  /** Shifts in it: whole ones of a campaign of several; of one, its share of the working time of the shift. */
  shifts = 0
  /** Whole shifts before it. */
  shiftsBefore = 0

  constructor(private readonly shift: Scenario['shift']) {
    this.begin(0)
  }

  /** Shifts of which the whole or a part is counted. */
  get observed(): number {
    return this.shift.campaign - this.shiftsBefore
  }

  /** Counts from `from`, s since the start of the campaign. What `Line.countFrom` forbids gets a RangeError. */
  begin(from: number): void {
    const { shift } = this
    const span = shift.length + shift['run-out']
    const isRow = shift.campaign > 1
    const before = isRow ? Math.round(from / span) : 0
    const fault = isRow ? this.faultInRow(from, before, span) : this.faultInOne(from)
    if (fault !== null) throw new RangeError(`counting cannot begin at ${from} s: ${fault}`)
    const ofOne = this.workingTimeFrom(0)
    this.from = from
    this.time = span * shift.campaign - from
    this.shiftsBefore = before
    this.workingTimeOfEach = isRow ? ofOne : this.workingTimeFrom(from)
    this.workingTime = this.workingTimeOfEach * this.observed
    this.shifts = isRow ? this.observed : from === 0 ? 1 : this.workingTimeOfEach / ofOne
  }

  private faultInRow(from: number, before: number, span: number): string | null {
    const { campaign } = this.shift
    if (from >= 0 && before < campaign && Math.abs(from / span - before) <= hair) return null
    return `of ${campaign} shifts in a row whole ones are cut away, and one must remain: a multiple of ${span} s, at most ${span * (campaign - 1)} s`
  }

  private faultInOne(from: number): string | null {
    if (from === 0 || (from > 0 && this.workingTimeFrom(from) > 0)) return null
    return `some of the working time of the shift must remain: not negative, and less than ${this.shift.length} s or the break before that`
  }

  /** Of one shift: its time after `from` less the breaks in it, s. */
  private workingTimeFrom(from: number): number {
    const { length, breaks } = this.shift
    const rest = (pause: { at: number; for: number }) =>
      pause.at >= from ? pause.for : Math.max(0, pause.at + pause.for - from)
    return Math.max(0, length - from) - breaks.reduce((sum, pause) => sum + rest(pause), 0)
  }
}
