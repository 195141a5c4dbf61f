/** Station: any place that holds one case for a time, with servers side by side and a waiting room before them. */

import { never } from '../../engine/clock.js'
import type { Draw } from '../../engine/draw.js'
import { Kept } from '../../engine/kept.js'
import { Ring } from '../../engine/ring.js'
import { Level } from '../../engine/tally.js'
import { unset } from '../../engine/unset.js'
import type { CaseIndex } from '../../line/cases.js'
import { type Floor, samplesPerShift } from '../../line/floor.js'
import { undrawn } from '../../line/jams.js'
import { type HeldSeries, heldMeasures, type Measure, pieceMeasures } from '../../line/measure.js'
import { Mechanism } from '../../line/mechanism.js'
import { Cause, State } from '../../line/states.js'
import type { StationKeys } from './keys.js'

/** No case. */
export const none = -1

export class Station extends Mechanism {
  readonly servers: number
  /** A case that it lets go is closed and no longer rejected. */
  readonly repairs: boolean
  readonly room: number
  readonly time: Draw
  private readonly takesNoTime: boolean
  /** Pace of its people in each hour of the shift; empty: always the same. */
  private readonly paces: Float64Array
  /** Of its speed, at which it works now. */
  private share = unset
  /** Shift and run-out, s. */
  private readonly span: number
  readonly stopEvery: number
  readonly stopTime: Draw | null
  /** Times of work, and of planned stops, that were drawn ahead. */
  readonly kept = new Kept()
  readonly keptStops = new Kept()

  readonly serving: Int32Array
  readonly doneAt: Float64Array
  private readonly isStuck: Uint8Array
  /** Of the case of each server: how it has yet to jam, or `undrawn`. */
  private readonly fates: Int32Array
  /** Whose case jammed. */
  private jammed = none
  readonly waiting = new Ring(64)
  readonly level = new Level(this.floor.clock, samplesPerShift)
  readonly busy = new Level(this.floor.clock)
  /** No service begins before this, for a planned stop, s. */
  closedUntil = unset
  /** Sum of the times waited, s. */
  waitTime = unset
  stuckServers = 0
  private frozenBusy = 0
  sinceStop = 0
  waits = 0
  plannedStops = 0

  constructor(floor: Floor, name: string, keys: StationKeys) {
    super(floor, name, keys.jams)
    this.servers = keys.servers
    this.repairs = keys.repairs
    this.room = keys['waiting-room'] === 'unlimited' ? Infinity : keys['waiting-room']
    this.time = floor.draws(this.label, 'time', keys.time)
    this.takesNoTime = keys.time.law === 'constant' && keys.time.value === 0
    this.paces = Float64Array.from(keys['by-hour'] ?? [])
    const { shift } = floor.scenario
    this.span = shift.length + shift['run-out']
    this.stopEvery = keys.every?.cases ?? Infinity
    this.stopTime = keys.every ? floor.draws(this.label, 'planned stop', keys.every.stop) : null
    this.serving = new Int32Array(this.servers)
    this.doneAt = new Float64Array(this.servers)
    this.isStuck = new Uint8Array(this.servers)
    this.fates = new Int32Array(this.servers)
  }

  override empty(): void {
    this.serving.fill(none)
    this.doneAt.fill(never)
    this.isStuck.fill(0)
    this.fates.fill(undrawn)
    this.waiting.clear()
    this.level.reset(this.floor.pictureFrom, this.floor.end)
    this.busy.reset(this.floor.pictureFrom, this.floor.end)
    this.stuckServers = 0
    this.sinceStop = 0
    this.closedUntil = 0
    this.share = 1
    this.kept.forget()
    this.keptStops.forget()
  }

  /** Cases since the last planned stop stay. */
  override countAnew(): void {
    const { pictureFrom, end } = this.floor
    this.level.restart(pictureFrom, end)
    this.busy.restart(pictureFrom, end)
    this.waits = 0
    this.waitTime = 0
    this.plannedStops = 0
  }

  override held(): number {
    return this.level.value
  }

  override take(item: CaseIndex): boolean {
    const { now } = this.floor.clock
    if (this.level.value >= this.servers + this.room) return false
    this.floor.cases.enteredAt[item] = now
    this.waiting.push(item)
    this.level.change(1)
    this.startServices()
    return true
  }

  /** One server, at the same pace all day, where nothing jams, and none comes and goes at one instant beside others: what its stage knows. */
  get isPlain(): boolean {
    const isPassedAtOnce = this.takesNoTime && this.room > 0
    return this.servers === 1 && this.jams === null && this.paces.length === 0 && !isPassedAtOnce
  }

  private startServices(): void {
    const { now } = this.floor.clock
    if (this.unit.frozen || this.closedUntil > now) return
    for (let server = 0; server < this.servers && this.waiting.length > 0; server++) {
      if (this.serving[server] !== none) continue
      const item = this.waiting.shift()
      this.serving[server] = item
      this.kept.nextOf(this.time)
      this.doneAt[server] =
        this.paces.length === 0 && this.share === 1
          ? now + this.kept.value
          : now + this.kept.value / this.shareNow()
      this.floor.observer?.serviceBegins(this.name, item, this.doneAt[server]!)
      this.busy.change(1)
      this.waits++
      this.waitTime += now - this.floor.cases.enteredAt[item]!
    }
  }

  /** Of its usual pace: that of a case that begins now. */
  private shareNow(): number {
    return this.paces.length === 0 ? this.share : this.share * this.paces[this.hour()]!
  }

  /** Cases in hand keep their time. */
  override worksAt(share: number): void {
    this.share = share
  }

  /** The hour of the shift; after those that have a pace of their own the last of them. */
  private hour(): number {
    return Math.min(Math.floor((this.floor.clock.now % this.span) / 3600), this.paces.length - 1)
  }

  override step(): void {
    const { now } = this.floor.clock
    const server = this.earliest(false)
    if (server !== none && this.doneAt[server]! <= now) {
      if (this.jams !== null && this.jamsAt(server)) return
      this.busy.change(-1)
      if (!this.letGo(server)) {
        this.isStuck[server] = 1
        this.stuckServers++
      }
    }
    this.startServices()
  }

  /** The server that is (stuck: was) done first, or none. */
  private earliest(stuck: boolean): number {
    let best = none
    for (let server = 0; server < this.servers; server++) {
      if (this.serving[server] === none || this.isStuck[server] !== (stuck ? 1 : 0)) continue
      if (best === none || this.doneAt[server]! < this.doneAt[best]!) best = server
    }
    return best
  }

  /** Passes the case of `server` on, if the next piece takes it, and lets others in. */
  private letGo(server: number): boolean {
    const { now } = this.floor.clock
    const item = this.serving[server]!
    if (this.repairs) this.repair(item)
    if (!this.unit.next.offer(item, this.unit)) return false
    this.vacate(server)
    if (++this.sinceStop >= this.stopEvery) {
      this.sinceStop = 0
      this.plannedStops++
      this.keptStops.nextOf(this.stopTime!)
      this.closedUntil = now + this.keptStops.value
      this.floor.observer?.plannedStop(this.name, this.closedUntil)
    }
    this.startServices()
    this.unit.invite()
    return true
  }

  /** The case is closed, and no longer rejected. */
  repair(item: CaseIndex): void {
    this.floor.cases.unsealed[item] = 0
    this.floor.cases.rejected[item] = 0
  }

  private vacate(server: number): void {
    this.serving[server] = none
    this.doneAt[server] = never
    this.fates[server] = undrawn
    this.level.change(-1)
  }

  /** Whether the case of `server`, whose time is over, jams: then all places stand. */
  private jamsAt(server: number): boolean {
    const item = this.serving[server]!
    if (this.fates[server] === undrawn) this.fates[server] = this.jams!.fateOf(this.floor.cases.kind[item]!)
    if (this.fates[server] === 0) return false
    this.jammed = server
    this.fates[server] = this.jams!.stop(this.unit, item, this.fates[server]!)
    return true
  }

  override putRight(cause: Cause): void {
    if (cause !== Cause.jam || !this.jams!.spoils(this.name, this.serving[this.jammed]!)) return
    this.vacate(this.jammed)
    this.frozenBusy--
  }

  override roomAhead(): void {
    // all that stand done offer, the longest done first, until one is told no again: whoever has room calls but once
    for (let server = this.earliest(true); server !== none; server = this.earliest(true)) {
      this.isStuck[server] = 0
      this.stuckServers--
      if (this.letGo(server)) continue
      this.isStuck[server] = 1
      this.stuckServers++
      return
    }
  }

  override plan(): void {
    const { now } = this.floor.clock
    const server = this.earliest(false)
    const due = server === none ? never : this.doneAt[server]!
    const isClosed = this.closedUntil > now
    const next = isClosed ? Math.min(due, this.closedUntil) : due
    // in a planned stop cases in hand are finished first
    if (this.busy.value > 0) this.unit.plans(next, State.working, never)
    else if (isClosed) this.unit.plans(next, State.plannedStop, never)
    else this.unit.plans(next, this.stuckServers > 0 ? State.blocked : State.waiting, never)
  }

  /** Nothing is at work while it stands. */
  override freeze(): void {
    this.frozenBusy = this.busy.value
    this.busy.change(-this.frozenBusy)
  }

  override thaw(passed: number): void {
    const { now } = this.floor.clock
    this.busy.change(this.frozenBusy)
    if (this.closedUntil > now - passed) this.closedUntil += passed
    for (let server = 0; server < this.servers; server++) {
      if (this.isStuck[server]) {
        // was done before: it offers again at once
        this.isStuck[server] = 0
        this.stuckServers--
        this.busy.change(1)
      } else if (this.serving[server] !== none) this.doneAt[server]! += passed
    }
    this.startServices()
  }

  override close(): void {
    this.level.settle()
    this.busy.settle()
  }

  override series(): HeldSeries[] {
    return [{ name: this.name, samples: this.level.samples }]
  }

  override measures(): Measure[] {
    const { name } = this
    const measure = pieceMeasures(name)
    const measures = [
      measure('wait', () => this.waitTime / this.waits),
      ...heldMeasures(name, `at ${name}, waiting and in work`, this.level, () => this.shareFull()),
      measure('utilisation', () => this.busy.mean() / this.servers),
    ]
    if (this.stopTime) measures.push(measure('planned-stops', () => this.plannedStops))
    return measures
  }

  private shareFull(): number {
    return this.room === Infinity ? 0 : this.level.shareFrom(this.servers + this.room)
  }
}
