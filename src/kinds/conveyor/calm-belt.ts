/** A belt conveyor before a place while nothing disturbs it: it stands from when a case is at its end until that leaves. */
import { CalmPiece } from '../../line/calm/calm-piece.js'
import type { Row } from '../../line/calm/row.js'
import type { Equipment } from '../../line/equipment.js'
import type { BeltConveyor } from './belt-conveyor.js'

/** Travel of the belt as `Travel` has it: how far it had run at the instant since which it runs. The two change with each standstill. */
export class CalmBelt extends CalmPiece {
  /** By the first case on it: travel of the belt, m, at the instant since which it runs, s. */
  readonly ats: Float64Array
  readonly sinces: Float64Array
  /** Belt travel at which each entered, and from which the next may, m. */
  readonly places: Float64Array
  private readonly clears: Float64Array
  private began = 0
  /** The last case that has left when the last one comes. */
  gone = 0

  constructor(
    row: Row,
    unit: Equipment,
    private readonly belt: BeltConveyor,
  ) {
    super(row, unit)
    this.ats = new Float64Array(row.mask + 1)
    this.sinces = new Float64Array(row.mask + 1)
    this.places = new Float64Array(row.mask + 1)
    this.clears = new Float64Array(row.mask + 1)
  }

  get speed(): number {
    return this.belt.travel.speed
  }

  override isCalm(): boolean {
    const { belt } = this
    return belt.travel.isRunning && !belt.isBlocked && !belt.offersAgain && !belt.isHeld
  }

  override begin(): void {
    const { belt, row } = this
    const { mask } = row
    const { cases } = belt.floor
    const { items, entries } = belt
    this.first = row.next
    this.began = row.next
    this.told = row.next + items.length
    this.gone = row.next - 1
    this.ats[row.next & mask] = belt.travel.at
    this.sinces[row.next & mask] = belt.travel.since
    this.places[(row.next - 1) & mask] = belt.lastEntry
    this.left[(row.next - 1) & mask] = -Infinity
    this.entered[(row.next - 1) & mask] = -Infinity
    for (let index = 0; index < items.length; index++) {
      const number = row.bring(items.at(index), cases.length[items.at(index)]!)
      this.entered[number & mask] = row.from
      this.places[number & mask] = entries[(belt.firstEntry + index) & (entries.length - 1)]!
    }
    this.clears[(row.next - 1) & mask] = belt.clearFrom
  }

  override resume(number: number): void {
    this.findDue(number)
  }

  override enter(number: number): void {
    const { row, due, left, belt, ats, sinces } = this
    const { mask } = row
    const place = number & mask
    const { speed } = belt.keys
    const clearFrom = this.clears[(number - 1) & mask]!
    let first = this.gone + 1
    let clear = sinces[first & mask]! + (clearFrom - ats[first & mask]!) / speed
    while (first < number && due[first & mask]! <= clear) {
      first++
      clear = Math.max(sinces[first & mask]!, sinces[first & mask]! + (clearFrom - ats[first & mask]!) / speed)
    }
    let at = Math.max(this.wanted[place]!, this.entered[(number - 1) & mask]!, clear)
    while (first < number && due[first & mask]! <= at) at = Math.max(at, left[first++ & mask]!)
    this.entered[place] = at
    if (!(at < row.until)) {
      due[place] = Infinity
      return
    }
    this.gone = first - 1
    this.places[place] = ats[first & mask]! + speed * (at - sinces[first & mask]!)
    this.clears[place] = this.places[place]! + row.lengths[place]! + belt.keys.spacing
    this.findDue(number)
  }

  private findDue(number: number): void {
    const { row, belt } = this
    const place = number & row.mask
    this.due[place] =
      this.sinces[place]! + (this.places[place]! + belt.keys.length - this.ats[place]!) / belt.keys.speed
  }

  override leaves(number: number): void {
    const { mask } = this.row
    const place = number & mask
    const next = (number + 1) & mask
    const isStopped = this.left[place]! > this.due[place]!
    this.ats[next] = isStopped
      ? this.ats[place]! + this.belt.keys.speed * (this.due[place]! - this.sinces[place]!)
      : this.ats[place]!
    this.sinces[next] = isStopped ? this.left[place]! : this.sinces[place]!
  }

  override tell(): void {
    const { row, belt, left, due } = this
    const { mask, until, from } = row
    const { level, full } = belt
    const { clock } = belt.floor
    const { began } = this
    clock.now = from
    level.settle()
    this.waiting = -level.empty
    level.up = this.told
    level.down = began
    level.tell(this.entered, left, mask, row.next, until)
    this.told = level.up
    this.first = level.down
    clock.now = until
    level.settle()
    this.waiting += level.empty
    let blocked = 0
    for (let number = began; number < this.first; number++) {
      const stops = due[number & mask]!
      const starts = left[number & mask]!
      if (starts === stops) continue
      blocked += starts - stops
      clock.now = stops
      full.change(1)
      clock.now = starts
      full.change(-1)
    }
    if (this.isBlocked) {
      blocked += until - due[this.first & mask]!
      clock.now = due[this.first & mask]!
      full.change(1)
    }
    this.blocked = blocked
  }

  protected override rests(): void {
    this.restsOfConveyor(this.began)
  }

  override end(): void {
    const { row, belt, first, told } = this
    const { mask } = row
    belt.travel.at = this.ats[first & mask]!
    belt.travel.since = this.sinces[first & mask]!
    if (this.isBlocked) {
      belt.travel.at += belt.keys.speed * (this.due[first & mask]! - belt.travel.since)
      belt.travel.since = Infinity
      belt.travel.isRunning = false
    }
    belt.items.clear()
    belt.firstEntry = 0
    for (let number = first; number < told; number++) {
      belt.entries[number - first] = this.places[number & mask]!
      belt.items.push(row.items[number & mask]!)
    }
    belt.lastEntry = this.places[(told - 1) & mask]!
    belt.clearFrom = this.clears[(told - 1) & mask]!
    belt.wakeAt = Infinity
  }

  private get isBlocked(): boolean {
    return this.first < this.told && this.due[this.first & this.row.mask]! < this.row.until
  }

  override ended(): void {
    if (this.isBlocked) this.belt.isBlocked = !this.unit.next.offer(this.belt.first(), this.unit)
  }
}
