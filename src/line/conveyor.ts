/** What conveyors of both kinds share: cases held, and the share of time in which they are full. */
import { Level } from '../engine/tally.js'
import type { EquipmentKeys } from '../scenario/schema.js'
import { type Floor, samplesPerShift } from './floor.js'
import { type HeldSeries, heldMeasures, type Measure } from './measure.js'
import { Mechanism } from './mechanism.js'

export type ConveyorKeys = EquipmentKeys<'conveyor'>

export abstract class Conveyor extends Mechanism {
  protected readonly level = new Level(samplesPerShift)
  private readonly full = new Level()

  constructor(
    floor: Floor,
    name: string,
    protected readonly keys: ConveyorKeys,
  ) {
    super(floor, name)
  }

  /** No room for another case, even the shortest. */
  protected abstract isFull(): boolean

  override empty(): void {
    this.level.reset(this.floor.pictureFrom, this.floor.end)
    this.full.reset(this.floor.pictureFrom, this.floor.end)
  }

  override countAnew(now: number): void {
    const { pictureFrom, end } = this.floor
    this.level.restart(now, pictureFrom, end)
    this.full.restart(now, pictureFrom, end)
  }

  /** A case has come (+1) or gone (-1). */
  protected count(now: number, by: 1 | -1): void {
    this.level.change(now, by)
    this.noteFull(now)
  }

  protected noteFull(now: number): void {
    const value = this.isFull() ? 1 : 0
    if (value !== this.full.value) this.full.change(now, value - this.full.value)
  }

  override held(): number {
    return this.level.value
  }

  override close(now: number): void {
    this.level.settle(now)
    this.full.settle(now)
  }

  override series(): HeldSeries[] {
    return [{ name: this.name, samples: this.level.samples }]
  }

  override measures(): Measure[] {
    return heldMeasures(this.name, `on ${this.name}`, this.level, () => this.full.mean())
  }
}
