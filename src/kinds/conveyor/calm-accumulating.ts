/** An accumulating conveyor before a place while nothing disturbs it: the relation of `Bed`, case by case. */
import { CalmPiece } from '../../line/calm/calm-piece.js'
import type { Row } from '../../line/calm/row.js'
import type { Equipment } from '../../line/equipment.js'
import { hair } from '../travel.js'
import type { AccumulatingConveyor } from './accumulating-conveyor.js'

export class CalmAccumulating extends CalmPiece {
  /** Room that each takes, m, and the sum of those of all before it. */
  private readonly pitches: Float64Array
  readonly pitchBefore: Float64Array
  /** The last case that has left when the last one comes, and the room that is taken then, m. */
  gone = 0
  private reserved = 0
  /** The same when each had come. */
  private readonly taken: Float64Array
  /** Numbers of the first inside when the spell began, and of the next. */
  private began = 0
  private inside = 0
  /** At some time there was no room for another case. */
  private wasFull = false
  /** A case is taken only if it will lie wholly on the conveyor while its exit is shut. */
  readonly waitsForRoom: boolean

  constructor(
    row: Row,
    unit: Equipment,
    private readonly conveyor: AccumulatingConveyor,
    isCarriedTo: boolean,
  ) {
    super(row, unit)
    this.waitsForRoom = !isCarriedTo || conveyor.hasZones
    this.taken = new Float64Array(row.mask + 1)
    this.pitches = new Float64Array(row.mask + 1)
    this.pitchBefore = new Float64Array(row.mask + 1)
  }

  get speed(): number {
    return this.conveyor.speed
  }

  get length(): number {
    return this.conveyor.length
  }

  override isCalm(): boolean {
    const { conveyor } = this
    return !conveyor.offersAgain && conveyor.movesAt <= conveyor.floor.clock.now && !conveyor.isHeld
  }

  override begin(): void {
    const { conveyor, row } = this
    const { mask, firstOn, aboard } = conveyor
    this.first = row.next
    this.began = row.next
    this.told = row.next + aboard
    this.inside = this.told
    this.reserved = conveyor.reserved
    this.wasFull = conveyor.isFull()
    this.gone = row.next - 1
    this.note(row.next - 1, firstOn - 1)
    this.left[(row.next - 1) & row.mask] = firstOn > 0 ? conveyor.left[(firstOn - 1) & mask]! : -Infinity
    for (let number = firstOn; number < firstOn + aboard; number++) {
      const item = conveyor.items[number & mask]!
      this.note(row.bring(item, conveyor.floor.cases.length[item]!), number)
    }
  }

  /** Case `number` of the row is that of the conveyor with this number. */
  private note(number: number, own: number): void {
    const { conveyor, row } = this
    if (own < 0) {
      this.entered[number & row.mask] = -Infinity
      this.pitches[number & row.mask] = 0
      this.pitchBefore[number & row.mask] = 0
      return
    }
    const from = own & conveyor.mask
    this.entered[number & row.mask] = conveyor.entered[from]!
    this.pitches[number & row.mask] = conveyor.pitches[from]!
    this.pitchBefore[number & row.mask] = conveyor.pitchBefore[from]!
  }

  override resume(number: number): void {
    this.findDue(number)
    // a standstill may have moved it by a rounding
    if (number === this.began && !this.conveyor.isBlocked) this.due[number & this.row.mask] = this.conveyor.due
  }

  override enter(number: number): void {
    const { conveyor, row, entered, left, pitches, pitchBefore } = this
    const { mask } = row
    const place = number & mask
    const before = (number - 1) & mask
    conveyor.need = row.lengths[place]!
    conveyor.measure()
    const sum = pitchBefore[before]! + pitches[before]!
    pitches[place] = conveyor.pitch
    pitchBefore[place] = sum
    let at = Math.max(this.wanted[place]!, entered[before]! + pitches[before]! / conveyor.speed)
    let { gone, reserved } = this
    for (; at < row.until; ) {
      while (gone + 1 < number && left[(gone + 1) & mask]! <= at) {
        gone++
        reserved = gone + 1 < number ? reserved - pitches[gone & mask]! : 0
      }
      const next = left[(gone + 1) & mask]!
      if (gone + 1 < number) {
        // none may come while those on it reach back to the entrance, nor one that would not lie wholly on it while its exit is shut
        const isTaken =
          reserved >= conveyor.length ||
          (this.waitsForRoom &&
            (conveyor.hasZones || this.due[(gone + 1) & mask]! <= at) &&
            !(conveyor.need <= conveyor.length - reserved + hair))
        if (isTaken) {
          at = next
          continue
        }
      }
      const beyond = sum - conveyor.length - pitchBefore[gone & mask]!
      const clear = beyond > 0 ? left[gone & mask]! + beyond / conveyor.speed : 0
      if (clear <= at) break
      at = clear
    }
    entered[place] = at
    if (!(at < row.until)) {
      this.due[place] = Infinity
      return
    }
    this.gone = gone
    this.reserved = reserved + pitches[place]!
    this.taken[place] = this.reserved
    if (this.reserved + conveyor.shortest > conveyor.length + hair) this.wasFull = true
    this.findDue(number)
  }

  private findDue(number: number): void {
    const { row, left } = this
    const place = number & row.mask
    const before = (number - 1) & row.mask
    this.due[place] = Math.max(
      this.entered[place]! + this.conveyor.crossing,
      left[before]! + this.pitches[before]! / this.conveyor.speed,
    )
  }

  override tell(): void {
    const { row, conveyor, left, due } = this
    const { mask, until, from } = row
    const { level } = conveyor
    const { began } = this
    if (this.wasFull) this.tellFull()
    conveyor.floor.clock.now = from
    level.settle()
    this.waiting = -level.empty
    level.up = this.told
    level.down = this.first
    level.tell(this.entered, left, mask, row.next, until)
    this.told = level.up
    this.first = level.down
    conveyor.floor.clock.now = until
    level.settle()
    this.waiting += level.empty
    let blocked = 0
    for (let number = began; number < this.first; number++) blocked += left[number & mask]! - Math.max(from, due[number & mask]!)
    if (this.first < this.told && due[this.first & mask]! < until)
      blocked += until - Math.max(due[this.first & mask]!, from)
    this.blocked = blocked
  }

  /** The share of time in which it is full. */
  private tellFull(): void {
    const { row, conveyor, left, entered } = this
    const { mask, until, next } = row
    const { clock } = conveyor.floor
    let { first, told } = this
    for (;;) {
      const goes = first < told ? left[first & mask]! : Infinity
      const comes = told < next ? entered[told & mask]! : Infinity
      if (!(goes < until) && !(comes < until)) break
      clock.now = Math.min(goes, comes)
      if (goes <= comes) {
        first++
        conveyor.reserved = first < told ? conveyor.reserved - this.pitches[(first - 1) & mask]! : 0
      } else conveyor.reserved += this.pitches[told++ & mask]!
      conveyor.noteFull()
    }
  }

  protected override rests(): void {
    this.restsOfConveyor(this.began)
  }

  override end(): void {
    const { row, conveyor } = this
    const { mask } = conveyor
    conveyor.firstOn = this.first
    conveyor.aboard = this.told - this.first
    // as it was added and taken off in the order of time
    if (!this.wasFull) this.findReserved()
    for (let number = this.first - 1; number < this.told; number++) {
      const from = number & row.mask
      conveyor.items[number & mask] = row.items[from]!
      conveyor.entered[number & mask] = this.entered[from]!
      conveyor.pitches[number & mask] = this.pitches[from]!
      conveyor.pitchTimes[number & mask] = this.pitches[from]! / conveyor.speed
      conveyor.pitchBefore[number & mask] = this.pitchBefore[from]!
    }
    conveyor.left[(this.first - 1) & mask] = this.left[(this.first - 1) & row.mask]!
    conveyor.ahead = this.first - 1
    conveyor.hasTail = false
    conveyor.isBlocked = false
    conveyor.wakeAt = Infinity
    conveyor.due = Infinity
    if (conveyor.aboard > 0) conveyor.findDue()
  }

  private findReserved(): void {
    const { row, conveyor, left, entered, told, first } = this
    const { mask } = row
    let since = -Infinity
    if (told > this.inside) {
      since = entered[(told - 1) & mask]!
      conveyor.reserved = this.taken[(told - 1) & mask]!
    }
    let number = first
    while (number > this.began && left[(number - 1) & mask]! > since) number--
    for (; number < first; number++)
      conveyor.reserved = number + 1 < told ? conveyor.reserved - this.pitches[number & mask]! : 0
  }

  override ended(): void {
    const { conveyor, row } = this
    if (conveyor.aboard > 0 && this.due[this.first & row.mask]! < row.until) 
      conveyor.isBlocked = !this.unit.next.offer(conveyor.first(), this.unit)
  }
}
