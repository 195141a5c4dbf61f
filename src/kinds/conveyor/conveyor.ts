/** What conveyors of both kinds share: cases held, and the share of time in which they are full. */
import { Level } from '../../engine/tally.js'
import { unset } from '../../engine/unset.js'
import type { CaseIndex } from '../../line/cases.js'
import { type Floor, samplesPerShift } from '../../line/floor.js'
import { type HeldSeries, heldMeasures, type Measure } from '../../line/measure.js'
import { Mechanism } from '../../line/mechanism.js'
import { Cause } from '../../line/states.js'
import { Tail } from '../../line/tail.js'
import type { ConveyorKeys } from './keys.js'

export abstract class Conveyor extends Mechanism {
  readonly level = new Level(this.floor.clock, samplesPerShift)
  readonly full = new Level(this.floor.clock)
  /** What it asks of the case that it passed on last. */
  protected readonly tail = new Tail()
  /** What follows takes cases in whole. */
  protected isBeforePlace = true
  /** Length of the case that left last, m; 0 where it was taken out. */
  protected leftLength = unset

  constructor(
    floor: Floor,
    name: string,
    readonly keys: ConveyorKeys,
  ) {
    super(floor, name, keys.jams)
  }

  override get carries(): boolean {
    return true
  }

  override get takesWhole(): boolean {
    return false
  }

  /** No room for another case, even the shortest. */
  protected abstract isFull(): boolean

  override empty(): void {
    this.isBeforePlace = this.unit.next.takesWhole
    this.leftLength = 0
    this.level.reset(this.floor.pictureFrom, this.floor.end)
    this.full.reset(this.floor.pictureFrom, this.floor.end)
  }

  override countAnew(): void {
    const { pictureFrom, end } = this.floor
    this.level.restart(pictureFrom, end)
    this.full.restart(pictureFrom, end)
  }

  /** The case at the end, which jammed; and takes it out of what the conveyor knows, while that stands. */
  abstract first(): CaseIndex
  protected abstract takeOutFirst(): void

  override putRight(cause: Cause): void {
    if (cause !== Cause.jam || !this.jams!.spoils(this.name, this.first())) return
    this.takeOutFirst()
    this.count(-1)
  }

  /** A case has come (+1) or gone (-1). */
  protected count(by: 1 | -1): void {
    this.level.change(by)
    this.noteFull()
  }

  noteFull(): void {
    const value = this.isFull() ? 1 : 0
    if (value !== this.full.value) this.full.change(value - this.full.value)
  }

  override held(): number {
    return this.level.value
  }

  override close(): void {
    this.level.settle()
    this.full.settle()
  }

  override series(): HeldSeries[] {
    return [{ name: this.name, samples: this.level.samples }]
  }

  override measures(): Measure[] {
    return heldMeasures(this.name, `on ${this.name}`, this.level, () => this.full.mean())
  }
}
