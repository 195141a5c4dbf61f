/** One place that holds a case for a time and then passes it on: what diverts and inspections share. */
import { never } from '../engine/clock.js'
import type { Draw } from '../engine/draw.js'
import type { Law } from '../engine/variates.js'
import type { CaseIndex } from '../line/cases.js'
import type { Floor } from '../line/floor.js'
import { Mechanism } from '../line/mechanism.js'
import { Cause, State } from '../line/states.js'
import type { JamsKeys } from '../scenario/jams.js'

const none = -1

export abstract class OnePlace extends Mechanism {
  private readonly time: Draw
  private item: CaseIndex = none
  /** When its time is over, s. */
  private doneAt = never
  private isBlocked = false

  constructor(floor: Floor, name: string, { time, jams }: { time: Law; jams?: JamsKeys | undefined }) {
    super(floor, name, jams)
    this.time = floor.draws(this.label, 'time', time)
  }

  /** Offers the case that is done to the piece where it belongs; false when that has no room. */
  protected abstract passOn(item: CaseIndex): boolean

  /** A case has come. */
  protected begin(_item: CaseIndex): void {}

  override empty(): void {
    this.item = none
    this.doneAt = never
    this.isBlocked = false
  }

  override held(): number {
    return this.item === none ? 0 : 1
  }

  override take(item: CaseIndex): boolean {
    const { now } = this.floor.clock
    if (this.unit.frozen || this.item !== none) return false
    this.item = item
    this.time.next()
    this.doneAt = now + this.time.value
    this.begin(item)
    return true
  }

  override step(): void {
    const { now } = this.floor.clock
    if (this.doneAt <= now && !this.isBlocked && !this.jamsWith(this.item)) this.letGo()
  }

  private letGo(): void {
    this.isBlocked = !this.passOn(this.item)
    if (this.isBlocked) return
    this.jams?.passed()
    this.takeOut()
    this.unit.invite()
  }

  private takeOut(): void {
    this.item = none
    this.doneAt = never
  }

  override putRight(cause: Cause): void {
    if (cause === Cause.jam && this.jams!.spoils(this.name, this.item)) this.takeOut()
  }

  override roomAhead(): void {
    if (this.isBlocked) this.letGo()
  }

  override plan(): void {
    if (this.isBlocked) this.unit.plans(never, State.blocked, never)
    else this.unit.plans(this.doneAt, this.item === none ? State.waiting : State.working, never)
  }

  override freeze(): void {}

  override thaw(passed: number): void {
    // a case that was done and refused is offered again at once
    if (this.isBlocked) this.isBlocked = false
    else this.doneAt += passed
  }

  /** Counts nothing of its own. */
  override countAnew(): void {}

  override close(): void {}
}
