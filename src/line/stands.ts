/** What may make a piece of equipment stand, one beside the other: a stop of its own, a log, planned work, a break, a sensor. */
import type { LoggedStops } from './logged-stops.js'
import type { Sensing } from './sensing.js'
import type { SlowStart } from './slow-start.js'
import { Cause, causes, State } from './states.js'
import { Undisturbed } from './undisturbed.js'

/** A lower part of `Equipment`, which is the only class that is made of it. */
export abstract class Stands extends Undisturbed {
  /** What stops and starts it by sensors; null where nothing does. */
  sensing: Sensing | null = null
  /** What makes it work slower after it stood long; null where nothing does. */
  slowStart: SlowStart | null = null
  private isHalted = false
  /** Pieces of planned work that are done here now. */
  private plannedWorks = 0

  /** Stops as a plant logged them; null where all come by laws. */
  protected abstract readonly logged: LoggedStops | null
  /** Stands still or moves again, as all that may hold it has it. */
  protected abstract moveOn(): void

  /** Its drive runs at another speed from now, m/s. */
  runsAt(speed: number): void {
    this.mechanism.runsAt(speed)
    this.refresh()
  }

  /** It works at this share of its speed from now. */
  worksAt(share: number): void {
    this.mechanism.worksAt(share)
    this.refresh()
  }

  /** At the start of a shift. */
  protected standsForNothing(): void {
    this.isHalted = false
    this.plannedWorks = 0
    if (this.logged !== null) this.logged.isStanding = false
  }

  /** Its stops come from a log. */
  get isLogged(): boolean {
    return this.logged !== null
  }

  protected get mustStand(): boolean {
    return this.isDown || this.sensing?.isHolding === true
  }

  /** Something else than a sensor holds it: a stop of its own, a log, planned work or a break. */
  get isDown(): boolean {
    return (
      this.cause !== Cause.none || this.isHalted || this.plannedWorks > 0 || this.logged?.isStanding === true
    )
  }

  /** As one that is blocked or waits it may break down meanwhile. */
  protected get isHeldBySensorAlone(): boolean {
    return this.sensing?.isHolding === true && !this.isDown
  }

  /** It stands for a sensor alone, and nothing will change that before something moves there. */
  get isStuckBySensor(): boolean {
    return this.isHeldBySensorAlone && this.sensing!.isStuck
  }

  /** Its state while it stands. */
  protected frozenState(): State {
    if (this.logged?.isStanding) return this.logged.state
    if (this.cause !== Cause.none) {
      const { waiting, working } = causes[this.cause]!
      return this.isWorkedOn ? working : waiting
    }
    if (this.plannedWorks > 0) return State.plannedStop
    return this.isHalted || this.sensing === null ? State.onBreak : this.sensing.state
  }

  /** A break begins or ends for this piece. */
  halt(isHalted: boolean): void {
    this.isHalted = isHalted
    this.moveOn()
  }

  /** Planned work begins here or is done: beside a stop or a break, if one lasts. */
  workedOn(begins: boolean): void {
    this.plannedWorks += begins ? 1 : -1
    this.moveOn()
  }

  /** It stands for a sensor on `other` for as long as nothing moves there. */
  waitsForSensorOn(other: Stands): boolean {
    return this.isStuckBySensor && other.watchers.includes(this.sensing!)
  }

  /** Sensors stop it or let it run: beside a stop or a break, if one lasts. */
  sensed(): void {
    this.moveOn()
  }
}
