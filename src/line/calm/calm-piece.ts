/** A piece of a row while nothing disturbs it. */
import type { Equipment } from '../equipment.js'
import type { Row } from './row.js'

/**
 * Times, s, of the cases in a piece, in rings over their running numbers: never is a time that lies beyond the spell, of which nothing
 * more is known. Numbers that a call would take or give back are in fields: they would be allocated.
 */
export abstract class CalmPiece {
  /** When each came here, was ready to leave, and left. */
  readonly entered: Float64Array
  readonly due: Float64Array
  readonly left: Float64Array
  /** When each wants to come here: `due` of the piece before, or when it arrived. */
  wanted: Float64Array
  /** Running number of the oldest case inside, when the spell began. */
  protected first = 0
  /** Of the next case whose coming is to be told. */
  protected told = 0
  /** Seconds of the spell in which it waited, and was blocked. */
  waiting = 0
  blocked = 0
  /** And in which it was in another state than these and working, which it tells by itself. */
  other = 0

  /** Running time left until it breaks down, s, less the spans of work that have ended; and since when it works, s. */
  ran = 0
  worksSince = 0

  constructor(
    protected readonly row: Row,
    protected readonly unit: Equipment,
  ) {
    const places = row.mask + 1
    this.entered = new Float64Array(places)
    this.due = new Float64Array(places)
    this.left = new Float64Array(places)
    this.wanted = this.due
  }

  /** Nothing in it is unusual now. */
  abstract isCalm(): boolean
  /** Takes up the cases inside, the oldest first, by `row.bring`. */
  abstract begin(): void
  /** Case `number` is inside since before the spell: finds when it is due. */
  abstract resume(number: number): void
  /** The case wants to come: finds when it does and when it is due, as far as that is before the end of the spell. */
  abstract enter(number: number): void
  /** It is known when the case leaves. */
  leaves(_number: number): void {}
  /** Tells all that happened before the end of the spell. */
  abstract tell(): void
  /** Tells the spans of work where breakdowns hang on them. */
  tellSpans(): void {
    if (!this.unit.countsRunning) return
    this.ran = this.unit.breakdowns!.left
    this.worksSince = this.unit.worksFrom
    this.rests()
  }

  /** By `rest`, the intervals in which it does not work, in the order in which they begin. */
  protected abstract rests(): void

  protected rest(from: number, until: number): void {
    if (!(until > from) || !(from < this.row.until)) return
    if (from > this.worksSince) this.ran -= from - this.worksSince
    this.worksSince = Math.max(this.worksSince, until)
  }

  /** The same of a conveyor: while nothing lies on it, and while the case at its end cannot leave. `began`: the first that was on it. */
  protected restsOfConveyor(began: number): void {
    const { row, entered, left, due } = this
    const { mask } = row
    for (let number = began; number < this.told; number++) {
      this.rest(Math.max(row.from, left[(number - 1) & mask]!), entered[number & mask]!)
      this.rest(due[number & mask]!, left[number & mask]!)
    }
    if (this.first === this.told) this.rest(Math.max(row.from, left[(this.told - 1) & mask]!), Infinity)
  }

  /** Puts the cases inside where they are at its end. */
  abstract end(): void
  /** All pieces have been put so. */
  ended(): void {}
}
