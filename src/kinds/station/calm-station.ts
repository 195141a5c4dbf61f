/** A station with one server while nothing disturbs it: first come, first served. */
import { CalmPiece } from '../../line/calm/calm-piece.js'
import type { Row } from '../../line/calm/row.js'
import type { Equipment } from '../../line/equipment.js'
import { State } from '../../line/states.js'
import type { Station } from './model.js'

const none = -1

export class CalmStation extends CalmPiece {
  /** When the work on each begins, s, and what was drawn for it, s. */
  private readonly begun: Float64Array
  private readonly times: Float64Array
  /** By the case that left before a planned stop: how long that lasts, s; below 0 where none follows. */
  private readonly stops: Float64Array
  /** The next that is let in must wait until this one has left: so many before it. */
  private readonly room: number
  private began = 0
  private sinceStop = 0
  private closedUntil = 0
  /** The next of which work has not been told to begin, and to end. */
  private nextBegun = 0
  private nextDone = 0
  /** Seconds of the spell at work, and in planned stops. */
  private working = 0
  private stopped = 0

  constructor(
    row: Row,
    unit: Equipment,
    private readonly station: Station,
  ) {
    super(row, unit)
    const places = row.mask + 1
    this.begun = new Float64Array(places)
    this.times = new Float64Array(places)
    this.stops = new Float64Array(places)
    this.room = station.room === Infinity ? 0 : station.servers + station.room
  }

  override isCalm(): boolean {
    return this.station.stuckServers === 0
  }

  override begin(): void {
    const { station, row } = this
    const { mask } = row
    this.first = row.next
    this.began = row.next
    this.sinceStop = station.sinceStop
    this.closedUntil = station.closedUntil
    for (let back = 1; back <= Math.max(1, this.room); back++) this.left[(row.next - back) & mask] = -Infinity
    this.entered[(row.next - 1) & mask] = -Infinity
    this.nextDone = row.next
    if (station.serving[0] !== none) {
      const number = row.bring(station.serving[0]!, 0)
      this.entered[number & mask] = row.from
      this.begun[number & mask] = row.from
      this.times[number & mask] = station.doneAt[0]! - row.from
    }
    this.nextBegun = row.next
    for (let index = 0; index < station.waiting.length; index++) {
      const item = station.waiting.at(index)
      this.entered[row.bring(item, 0) & mask] = station.floor.cases.enteredAt[item]!
    }
    this.told = row.next
  }

  override resume(number: number): void {
    this.stops[number & this.row.mask] = -1
    if (number < this.nextBegun) this.due[number & this.row.mask] = this.station.doneAt[0]!
    else this.serve(number)
  }

  override enter(number: number): void {
    const { row, left } = this
    const { mask } = row
    const place = number & mask
    let at = Math.max(this.wanted[place]!, this.entered[(number - 1) & mask]!)
    if (this.room > 0) at = Math.max(at, left[(number - this.room) & mask]!)
    this.entered[place] = at
    this.serve(number)
  }

  private serve(number: number): void {
    const { row, station } = this
    const place = number & row.mask
    const at = Math.max(this.entered[place]!, this.left[(number - 1) & row.mask]!, this.closedUntil)
    this.begun[place] = at
    this.due[place] = Infinity
    this.stops[place] = -1
    if (!(at < row.until)) return
    station.nextTime()
    this.times[place] = station.drawn
    this.due[place] = at + station.drawn
  }

  override leaves(number: number): void {
    const { row, station } = this
    const place = number & row.mask
    const at = this.left[place]!
    if (!(at < row.until) || ++this.sinceStop < station.stopEvery) return
    this.sinceStop = 0
    station.nextStop()
    this.stops[place] = station.drawn
    this.closedUntil = at + station.drawn
  }

  override tell(): void {
    const { row, station } = this
    const { mask, until } = row
    const { level } = station
    level.up = this.told
    level.down = this.first
    level.tell(this.entered, this.left, mask, row.next, until)
    this.told = level.up
    if (station.repairs) this.tellRepairs(level.down)
    this.tellWork()
    this.tellStops(level.down)
    this.first = level.down
  }

  private tellRepairs(gone: number): void {
    const { cases } = this.station.floor
    for (let number = this.first; number < gone; number++) {
      const item = this.row.items[number & this.row.mask]!
      cases.unsealed[item] = 0
      cases.rejected[item] = 0
    }
  }

  private tellWork(): void {
    const { row, station, begun, due } = this
    const { mask, until, from } = row
    const { busy } = station
    const began = this.nextDone
    busy.up = this.nextBegun
    busy.down = began
    busy.tell(begun, due, mask, this.told, until)
    let waited = 0
    for (let number = this.nextBegun; number < busy.up; number++)
      waited += begun[number & mask]! - this.entered[number & mask]!
    station.waits += busy.up - this.nextBegun
    station.waitTime += waited
    let working = 0
    for (let number = began; number < busy.down; number++) working += due[number & mask]! - begun[number & mask]!
    if (busy.down < busy.up) working += until - begun[busy.down & mask]!
    this.working = working
    this.nextBegun = busy.up
    this.nextDone = busy.down
    void from
  }

  private tellStops(gone: number): void {
    const { row, station, stops, left } = this
    const { mask, until } = row
    let stopped = Math.max(0, Math.min(until, station.closedUntil) - row.from)
    let blocked = 0
    let since = station.sinceStop
    for (let number = this.first; number < gone; number++) {
      since++
      blocked += left[number & mask]! - this.due[number & mask]!
      const stop = stops[number & mask]!
      if (since < station.stopEvery) continue
      since = 0
      station.plannedStops++
      station.closedUntil = left[number & mask]! + stop
      stopped += Math.min(until, station.closedUntil) - left[number & mask]!
    }
    station.sinceStop = since
    if (gone < this.told && this.due[gone & mask]! < until) blocked += until - this.due[gone & mask]!
    this.stopped = stopped
    this.blocked = blocked
    this.waiting = until - row.from - this.working - stopped - blocked
  }

  protected override rests(): void {
    const { row, begun, due } = this
    const { mask } = row
    let since = row.from
    for (let number = this.began; number < this.nextBegun; number++) {
      this.rest(since, begun[number & mask]!)
      since = due[number & mask]!
    }
    this.rest(since, Infinity)
  }

  override end(): void {
    const { row, station } = this
    const { mask } = row
    this.unit.stateTimes[State.plannedStop]! += this.stopped
    this.other = this.stopped
    station.serving[0] = none
    station.doneAt[0] = Infinity
    station.waiting.clear()
    let number = this.first
    // one that is done offers again
    if (number < this.nextDone) station.busy.change(1)
    if (number < this.nextBegun) {
      station.serving[0] = row.items[number & mask]!
      station.doneAt[0] = this.due[number & mask]!
      number++
    }
    for (; number < this.told; number++) {
      const item = row.items[number & mask]!
      station.waiting.push(item)
      station.floor.cases.enteredAt[item] = this.entered[number & mask]!
    }
    // what was drawn for cases that come later is kept for them
    for (let each = this.nextBegun; each < row.next; each++)
      if (this.due[each & mask]! < Infinity) station.keepTime(this.times[each & mask]!)
    for (let each = this.first; each < row.next; each++)
      if (this.due[each & mask]! < Infinity && this.stops[each & mask]! >= 0) station.keepStop(this.stops[each & mask]!)
  }
}
