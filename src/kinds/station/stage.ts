/** A station with one server while nothing disturbs it: first come, first served. */
import type { Equipment } from '../../line/equipment.js'
import { State } from '../../line/states.js'
import type { Spell } from '../spell.js'
import { Stage } from '../stage.js'
import { none, type Station } from './model.js'

/** No planned stop follows a case. */
const noStop = -1

export class StationStage extends Stage {
  /** When the work on each begins, s, and what was drawn for it, s. */
  private readonly begun: Float64Array
  private readonly times: Float64Array
  /** How long the planned stop lasts after each has left, s; or `noStop`. */
  private readonly stops: Float64Array
  /** A case comes when the one that came so many before it has left; 0 where all come at once. */
  private readonly room: number
  private sinceStop = 0
  private closedUntil = 0
  /** Of those whose work has been told to begin, and to end, the next. */
  private nextBegun = 0
  private nextDone = 0

  constructor(
    spell: Spell,
    unit: Equipment,
    private readonly station: Station,
  ) {
    super(spell, unit)
    this.begun = spell.ring()
    this.times = spell.ring()
    this.stops = spell.ring()
    this.room = station.room === Infinity ? 0 : station.servers + station.room
  }

  override isCalm(): boolean {
    return this.station.stuckServers === 0
  }

  protected override takeUp(): void {
    const { station, spell } = this
    const { mask } = spell
    this.sinceStop = station.sinceStop
    this.closedUntil = station.closedUntil
    for (let back = 2; back <= this.room; back++) this.gone[(spell.next - back) & mask] = -Infinity
    this.nextDone = spell.next
    const { length } = station.floor.cases
    if (station.serving[0] !== none) {
      const number = spell.add(station.serving[0]!, length[station.serving[0]!]!)
      this.entered[number & mask] = spell.from
      this.begun[number & mask] = spell.from
    }
    this.nextBegun = spell.next
    for (let index = 0; index < station.waiting.length; index++) {
      const item = station.waiting.at(index)
      this.entered[spell.add(item, length[item]!) & mask] = station.floor.cases.enteredAt[item]!
    }
  }

  override resume(number: number): void {
    const place = number & this.spell.mask
    this.stops[place] = noStop
    if (number < this.nextBegun) this.due[place] = this.station.doneAt[0]!
    else this.serve(number)
  }

  override findEntry(number: number): void {
    const { entered, gone } = this
    const { mask } = this.spell
    let at = Math.max(this.wanted[number & mask]!, entered[(number - 1) & mask]!)
    if (this.room > 0) at = Math.max(at, gone[(number - this.room) & mask]!)
    entered[number & mask] = at
  }

  override comes(number: number): void {
    this.serve(number)
  }

  private serve(number: number): void {
    const { spell, station } = this
    const place = number & spell.mask
    const at = Math.max(this.entered[place]!, this.gone[(number - 1) & spell.mask]!, this.closedUntil)
    this.begun[place] = at
    this.due[place] = Infinity
    this.stops[place] = noStop
    if (!(at < spell.until)) return
    station.kept.nextOf(station.time)
    this.times[place] = station.kept.value
    this.due[place] = at + this.times[place]!
  }

  override leave(number: number): void {
    const { spell, station } = this
    const at = this.gone[number & spell.mask]!
    if (!(at < spell.until) || ++this.sinceStop < station.stopEvery) return
    this.sinceStop = 0
    station.keptStops.nextOf(station.stopTime!)
    this.stops[number & spell.mask] = station.keptStops.value
    this.closedUntil = at + this.stops[number & spell.mask]!
  }

  override tell(): void {
    const { spell, station } = this
    const { level } = station
    level.ups = this.newest
    level.downs = this.oldest
    level.tell(this.entered, this.gone, spell.mask, spell.next, spell.until)
    this.newest = level.ups
    this.oldest = level.downs
    const working = this.tellServices()
    this.tellStops()
    this.waiting = spell.until - spell.from - working - this.blocked - this.other
  }

  /** Gives the time at work, s. */
  private tellServices(): number {
    const { spell, station, begun, due, entered } = this
    const { mask, until, from } = spell
    let { nextBegun, nextDone } = this
    let waited = 0
    for (; nextBegun < this.newest && begun[nextBegun & mask]! < until; nextBegun++)
      waited += begun[nextBegun & mask]! - entered[nextBegun & mask]!
    station.waits += nextBegun - this.nextBegun
    station.waitTime += waited
    let working = 0
    for (; nextDone < nextBegun && due[nextDone & mask]! < until; nextDone++)
      working += due[nextDone & mask]! - begun[nextDone & mask]!
    if (nextDone < nextBegun) working += until - begun[nextDone & mask]!
    station.floor.clock.now = from
    station.busy.settle()
    station.busy.tellArea(working, nextBegun - nextDone, until)
    this.nextBegun = nextBegun
    this.nextDone = nextDone
    return working
  }

  /** Counts planned stops, and for how long cases that were done could not leave. */
  private tellStops(): void {
    const { spell, station, gone, due } = this
    const { mask, until, from } = spell
    let stopped = Math.max(0, Math.min(until, station.closedUntil) - from)
    let blocked = 0
    for (let number = this.first; number < this.oldest; number++) {
      const at = gone[number & mask]!
      blocked += at - due[number & mask]!
      if (station.repairs) station.repair(spell.items[number & mask]!)
      if (++station.sinceStop < station.stopEvery) continue
      station.sinceStop = 0
      station.plannedStops++
      station.closedUntil = at + this.stops[number & mask]!
      stopped += Math.min(until, station.closedUntil) - at
    }
    if (this.oldest < this.nextDone) blocked += until - due[this.oldest & mask]!
    this.blocked = blocked
    this.other = stopped
    this.unit.stateTimes[State.plannedStop]! += stopped
  }

  protected override rests(): void {
    const { begun, due } = this
    const { mask, from } = this.spell
    let since = from
    for (let number = this.first; number < this.nextBegun; number++) {
      this.rest(since, begun[number & mask]!)
      since = due[number & mask]!
    }
    this.rest(since, Infinity)
  }

  override end(): void {
    const { spell, station } = this
    const { mask, items } = spell
    let number = this.oldest
    station.serving[0] = none
    station.doneAt[0] = Infinity
    station.waiting.clear()
    // one that is done is offered again
    if (number < this.nextDone) station.busy.change(1)
    if (number < this.nextBegun) {
      station.serving[0] = items[number & mask]!
      station.doneAt[0] = this.due[number & mask]!
      number++
    }
    for (; number < this.newest; number++) {
      station.waiting.push(items[number & mask]!)
      station.floor.cases.enteredAt[items[number & mask]!] = this.entered[number & mask]!
    }
    this.keepDrawn()
  }

  /** What was drawn for times after the end of the spell is kept for them. */
  private keepDrawn(): void {
    const { spell, station, due, stops } = this
    const { mask, next } = spell
    for (let number = next - 1; number >= this.nextBegun; number--)
      if (due[number & mask]! < Infinity) station.kept.putBack(this.times[number & mask]!)
    for (let number = next - 1; number >= this.oldest; number--)
      if (due[number & mask]! < Infinity && stops[number & mask]! !== noStop)
        station.keptStops.putBack(stops[number & mask]!)
  }

  /** What stands in it offers by itself when it acts. */
  override offer(): void {}
}
