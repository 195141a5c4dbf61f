/** Source: where cases come from, and what happens to one that the line cannot take. */

import { type Actor, never } from '../engine/clock.js'
import { Ring } from '../engine/ring.js'
import type { Stream } from '../engine/stream.js'
import { Level } from '../engine/tally.js'
import { unset } from '../engine/unset.js'
import type { Scenario } from '../scenario/schema.js'
import type { CaseIndex } from './cases.js'
import { type Floor, samplesPerShift } from './floor.js'
import type { Feeder, Taker } from './handshake.js'
import { HourlyPace } from './hourly-pace.js'
import { LoggedPace } from './logged-pace.js'
import { arrivalMeasures, type HeldSeries, type Measure } from './measure.js'
import { OrderedPace } from './ordered-pace.js'
import { fromMix, type Pace, Time } from './pace.js'
import { SteadyPace } from './steady-pace.js'

export class Source implements Actor, Feeder {
  next!: Taker
  /** People put cases on the line. */
  readonly carries = false
  arrived = 0
  turnedAway = 0

  slot = -1
  readonly pace: Pace
  private readonly mix: Stream
  /** Cumulative shares of the kinds of case, ending at 1. */
  private readonly cumulative: Float64Array
  readonly whenFull: 'wait' | 'queue' | 'turn-away'
  /** Cases that have come and stand before the line: of a batch, or on the floor. */
  readonly standing = new Ring(64)
  private readonly stack: Level
  private readonly blocked: Level
  dueAt = never
  isPaused = false
  private pausedAt = unset
  hasEnded = false
  private shiftStart = unset

  constructor(
    readonly floor: Floor,
    readonly name: string,
    keys: Scenario['arrivals'][string],
  ) {
    this.whenFull = keys['when-full']
    this.stack = new Level(floor.clock, samplesPerShift)
    this.blocked = new Level(floor.clock)
    this.pace = makePace(floor, this.label, keys)
    const shares = Object.values(floor.scenario.cases).map((kind) => kind.share)
    this.mix = floor.stream(this.label, 'mix', shares.length > 1)
    const total = shares.reduce((sum, share) => sum + share, 0)
    let sum = 0
    this.cumulative = Float64Array.from(shares, (share) => {
      sum += share / total
      return sum
    })
  }

  get label(): string {
    return `arrivals.${this.name}`
  }

  join(): void {
    this.slot = this.floor.clock.add(this)
  }

  reset(): void {
    this.standing.clear()
    this.stack.reset(this.floor.pictureFrom, this.floor.end)
    this.blocked.reset(this.floor.pictureFrom, this.floor.end)
    this.countAnew()
    this.isPaused = false
    this.hasEnded = false
    this.pace.reset()
    this.shiftStart = 0
    this.scheduleNext()
  }

  /** Counts anew from now. */
  countAnew(): void {
    const { pictureFrom, end } = this.floor
    this.arrived = 0
    this.turnedAway = 0
    this.stack.restart(pictureFrom, end)
    this.blocked.restart(pictureFrom, end)
    this.pace.clear()
  }

  private schedule(time: number): void {
    this.dueAt = time
    this.tellClock()
  }

  tellClock(): void {
    const { clock } = this.floor
    clock.times[this.slot] = this.dueAt
    clock.changed(this.slot)
  }

  act(): void {
    const { now } = this.floor.clock
    this.schedule(never)
    do {
      this.dueAt = never
      for (let left = this.pace.batch; left > 0; left--) this.bring(this.floor.cases.create(this.kind()))
      this.passOn()
      this.floor.observer?.stands(this.name, this.whenFull, this.standing)
      if (this.whenFull === 'turn-away') while (this.standing.length > 0) this.turnAway()
      if (this.whenFull === 'wait' && this.standing.length > 0) return
      this.findNext()
    } while (this.dueAt <= now && this.pace.mayBeLate)
    this.tellClock()
  }

  /** Finds when the next cases come, in `dueAt`: the pace counts from the start of the shift. */
  findNext(): void {
    const { times } = this.pace
    times[Time.now] = this.floor.clock.now - this.shiftStart
    this.pace.next()
    this.dueAt = this.shiftStart + times[Time.due]!
  }

  private scheduleNext(): void {
    this.findNext()
    this.tellClock()
  }

  bring(item: CaseIndex): void {
    this.arrived++
    this.standing.push(item)
    this.floor.observer?.arrives(this.name, item)
    this.noteStack(1)
  }

  kind(): number {
    const known = this.pace.bring()
    if (known !== fromMix) return known
    this.mix.advance()
    // the first kind whose cumulative share is above the number drawn; of thousands it must not be looked for one by one
    let kind = 0
    let last = this.cumulative.length - 1
    while (kind < last) {
      const middle = (kind + last) >>> 1
      if (this.mix.value >= this.cumulative[middle]!) kind = middle + 1
      else last = middle
    }
    this.floor.controls.drawnFromMix(kind)
    return kind
  }

  /** Gives the line what it takes, in order. */
  passOn(): void {
    while (this.standing.length > 0 && this.next.offer(this.standing.at(0), this)) {
      this.standing.shift()
      this.noteStack(-1)
    }
    this.noteBlocked()
  }

  /** A case comes to stand before the line, or goes: looked at only where cases queue there. */
  noteStack(by: 1 | -1): void {
    if (this.whenFull === 'queue') this.stack.change(by)
  }

  /** Packers stand still while they wait, breaks left out. */
  noteBlocked(): void {
    const value =
      this.whenFull === 'wait' && this.standing.length > 0 && !this.isPaused && !this.hasEnded ? 1 : 0
    if (value !== this.blocked.value) this.blocked.change(value - this.blocked.value)
  }

  turnAway(): void {
    this.floor.observer?.turnedAway(this.name, this.standing.at(0))
    this.floor.cases.remove(this.standing.shift())
    this.noteStack(-1)
    this.turnedAway++
  }

  roomAhead(): void {
    if (this.isPaused || this.standing.length === 0) return
    this.passOn()
    // packers who waited go on: the next interval begins when the last case of the batch is taken
    if (this.whenFull === 'wait' && this.standing.length === 0 && this.dueAt === never && !this.hasEnded)
      this.scheduleNext()
  }

  tailMoves(): void {}

  /** A break begins: nothing comes and nothing is put on the line. */
  pause(): void {
    const { now } = this.floor.clock
    this.isPaused = true
    this.pausedAt = now
    this.floor.clock.set(this.slot, never)
    this.noteBlocked()
  }

  resume(): void {
    const { now } = this.floor.clock
    this.isPaused = false
    this.noteBlocked()
    const start = this.shiftStart
    if (this.dueAt !== never)
      this.schedule(start + this.pace.afterBreak(this.dueAt - start, this.pausedAt - start, now - start))
    this.roomAhead()
  }

  /** The shift is over: nothing more comes; what stands may still go in. */
  end(): void {
    this.hasEnded = true
    this.noteBlocked()
    this.schedule(never)
  }

  /** Another shift of a campaign begins; what stands from the shift before goes first. */
  beginShift(): void {
    const { now } = this.floor.clock
    this.hasEnded = false
    this.shiftStart = now
    this.pace.reset()
    if (this.whenFull !== 'wait' || this.standing.length === 0) this.scheduleNext()
    this.noteBlocked()
  }

  held(): number {
    return this.standing.length
  }

  settle(): void {
    this.stack.settle()
    this.blocked.settle()
  }

  series(): HeldSeries[] {
    return this.whenFull === 'queue' ? [{ name: this.name, samples: this.stack.samples }] : []
  }

  measures(): Measure[] {
    const { counted } = this.floor
    const measure = arrivalMeasures(this.name)
    const measures = [measure('arrived', () => this.arrived), ...this.pace.measures(this.name)]
    if (this.whenFull === 'wait')
      measures.push(measure('blocked', () => (this.blocked.mean() * counted.time) / counted.workingTime))
    if (this.whenFull === 'turn-away')
      measures.push(measure('turned-away', () => this.turnedAway, { over: () => this.arrived }))
    if (this.whenFull === 'queue')
      measures.push(
        measure('held', () => this.stack.mean()),
        measure('held-largest', () => this.stack.largest),
      )
    return measures
  }
}

/** The pace that an entry of `arrivals` describes; `owner` names its random streams. */
function makePace(floor: Floor, owner: string, keys: Scenario['arrivals'][string]): Pace {
  if (keys.log) return new LoggedPace(keys.log)
  if (keys.orders) return new OrderedPace(floor, owner, keys.orders)
  if (keys['by-hour']) return new HourlyPace(floor, owner, keys['by-hour'], keys.batch)
  const law = keys['time-between'] ?? { law: 'constant' as const, value: keys.batch / keys.rate! }
  const perSecond = keys.rate === undefined ? null : keys.rate / keys.batch
  return new SteadyPace(floor, owner, law, keys.batch, perSecond)
}
