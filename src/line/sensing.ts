/** What stops a piece and starts it again by sensors on conveyors. */
import { type Actor, never } from '../engine/clock.js'
import { placeOf } from '../scenario/sensor-place.js'
import { type SensedKeys, type SensorKeys, seenBy } from '../scenario/sensors.js'
import type { Floor } from './floor.js'
import { type Measure, pieceMeasures } from './measure.js'
import { Sensor } from './sensor.js'
import { State } from './states.js'

/** The piece that is stopped. */
interface Place {
  readonly name: string
  sensed(): void
}

/** Who looks at a conveyor. */
export interface Watcher {
  /** Something has changed on it. */
  look(): void
  /** It holds a piece up until the conveyor is clear, for as long as nothing moves there. */
  readonly bringsNone: boolean
}

/** The conveyor on which a sensor stands. */
interface Watched {
  readonly watchers: Watcher[]
  /** It told somebody no: it has no room. */
  readonly owes: boolean
  readonly mechanism: { see(sensor: Sensor): void }
}

/** What one sensor must show without a break, and for how long it has. */
class Showing {
  /** It has shown it for long enough. */
  holds = false
  /** When to look again if nothing happens, s. */
  nextAt = never
  /** Since when it shows it, s; `never` while it does not. */
  private since = never
  private readonly sensor: Sensor
  private readonly wantsCase: boolean
  private readonly lasts: number

  constructor(
    private readonly floor: Floor,
    keys: SensorKeys,
    private readonly watched: Watched,
  ) {
    this.sensor = new Sensor(placeOf(keys, floor.scenario))
    this.wantsCase = keys.full !== undefined
    this.lasts = keys.for
  }

  reset(): void {
    this.sensor.reset()
    this.holds = false
    this.since = never
  }

  look(): void {
    const { sensor } = this
    const { now } = this.floor.clock
    this.watched.mechanism.see(sensor)
    this.nextAt = sensor.changesAt
    if (sensor.isCovered !== this.wantsCase) {
      this.since = never
      this.holds = false
      return
    }
    if (this.since === never) this.since = now
    const until = this.since + this.lasts
    this.holds = until <= now
    if (!this.holds) this.nextAt = Math.min(this.nextAt, until)
  }
}

/**
 * Stops the piece as soon as `stops-when` holds, and lets it run again `restart` after `starts-when` holds, or else after `stops-when`
 * no longer does. What stops it goes before what starts it: while it holds, nothing starts, and a run-up is broken off. It acts after all else
 * that is due at an instant.
 */
export class Sensing implements Actor, Watcher {
  readonly label: string
  /** The piece stands for it. */
  isHolding = false
  /** State of a piece that stands for it: no room ahead is blocked, nothing to do is waiting. */
  readonly state: State
  /** Times that it let the piece run again. */
  starts = 0
  private readonly slot: number
  private readonly stop: Showing
  private readonly start: Showing | null
  private readonly restart: number
  /** What it waits for while the piece stands: for a case on this conveyor, or for none. */
  private readonly awaited: Watched
  private readonly awaitsCase: boolean
  /** When it has run up, s; `never` while it does not. */
  private runsAt = never

  constructor(
    private readonly floor: Floor,
    readonly place: Place,
    private readonly keys: SensedKeys,
    conveyor: (name: string) => Watched,
  ) {
    this.label = `line.${place.name}`
    const stops = keys['stops-when']!
    const starts = keys['starts-when']
    const showing = (of: SensorKeys) => {
      const watched = conveyor(seenBy(of))
      if (!watched.watchers.includes(this)) watched.watchers.push(this)
      return new Showing(floor, of, watched)
    }
    this.stop = showing(stops)
    this.start = starts === undefined ? null : showing(starts)
    this.awaited = conveyor(seenBy(starts ?? stops))
    this.awaitsCase = starts === undefined ? stops.clear !== undefined : starts.full !== undefined
    this.restart = keys.restart ?? 0
    this.state = stops.full === undefined ? State.waiting : State.blocked
    this.slot = floor.clock.add(this)
  }

  /** At the start of a shift: the piece may run. */
  reset(): void {
    this.stop.reset()
    this.start?.reset()
    this.isHolding = false
    this.runsAt = never
    this.starts = 0
    this.look()
  }

  countAnew(): void {
    this.starts = 0
  }

  /** Something has changed on a conveyor that it looks at. */
  look(): void {
    const { clock } = this.floor
    clock.times[this.slot] = clock.now
    clock.changed(this.slot)
  }

  /**
   * The piece stands for it, and as long as nothing moves on the conveyor that it looks at nothing changes that; where it waits for a
   * case, none can come: there is no room, or who stands for a sensor there brings none.
   */
  get isStuck(): boolean {
    if (!this.isIdle) return false
    const { watchers, owes } = this.awaited
    return !this.awaitsCase || owes || watchers.some((each) => each.bringsNone)
  }

  get bringsNone(): boolean {
    return this.isIdle && !this.awaitsCase
  }

  private get isIdle(): boolean {
    return this.isHolding && this.floor.clock.times[this.slot] === never
  }

  act(): void {
    this.stop.look()
    this.start?.look()
    if (this.isHolding ? this.mayRun() : this.stop.holds) {
      this.turn()
      // what it did may be seen at once
      this.look()
      return
    }
    const { clock } = this.floor
    const next = Math.min(this.stop.nextAt, this.runsAt)
    clock.times[this.slot] = this.start === null ? next : Math.min(next, this.start.nextAt)
    clock.changed(this.slot)
  }

  /** Whether it has run up; begins with that where it may. */
  private mayRun(): boolean {
    const { now } = this.floor.clock
    if (this.stop.holds) this.runsAt = never
    else if (this.runsAt === never && (this.start === null || this.start.holds))
      this.runsAt = now + this.restart
    return this.runsAt <= now
  }

  private turn(): void {
    this.isHolding = !this.isHolding
    this.runsAt = never
    if (!this.isHolding) this.starts++
    const { observer } = this.floor
    if (observer !== null) {
      const { full, clear } = this.keys['stops-when']!
      if (this.isHolding) observer.sensorStops(this.place.name, (full ?? clear)!, full !== undefined)
      else observer.sensorStarts(this.place.name)
    }
    this.place.sensed()
  }
}

/** What stops pieces by sensors. To be made after all else that acts: what is due at the instant at which a sensor sees something is done before. */
export const sensedPieces = (
  floor: Floor,
  pieces: readonly (Place & Watched & { sensing: Sensing | null })[],
): Sensing[] =>
  pieces.flatMap((piece) => {
    const keys = floor.scenario.line[piece.name]!
    if (!('stops-when' in keys) || keys['stops-when'] === undefined) return []
    piece.sensing = new Sensing(floor, piece, keys, (name) => pieces.find((each) => each.name === name)!)
    return [piece.sensing]
  })

/** How often a piece started again after sensors had stopped it. */
export const sensedMeasures = (sensing: Sensing): Measure[] => [
  pieceMeasures(sensing.place.name)('starts', () => sensing.starts),
]
