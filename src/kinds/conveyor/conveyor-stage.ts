/** What conveyors of both kinds count alike while nothing disturbs them. */
import type { Equipment } from '../../line/equipment.js'
import { CarryingStage } from '../carrying-stage.js'
import type { Spell } from '../spell.js'
import type { AccumulatingConveyor } from './accumulating-conveyor.js'
import type { BeltConveyor } from './belt-conveyor.js'

export abstract class ConveyorStage extends CarryingStage {
  constructor(
    spell: Spell,
    unit: Equipment,
    private readonly counted: AccumulatingConveyor | BeltConveyor,
  ) {
    super(spell, unit)
  }

  /** Counts when it is full. */
  protected abstract tellFull(): void
  /** Finds for how long its cases cannot leave: `blocked`. */
  protected abstract tellBlocked(): void

  override tell(): void {
    const { spell, counted, entered, gone } = this
    const { level, floor } = counted
    this.tellFull()
    floor.clock.now = spell.from
    level.settle()
    this.waiting = -level.timeEmpty
    level.ups = this.newest
    level.downs = this.oldest
    level.tell(entered, gone, spell.mask, spell.next, spell.until)
    floor.clock.now = spell.until
    level.settle()
    this.waiting += level.timeEmpty
    this.newest = level.ups
    this.oldest = level.downs
    this.tellBlocked()
  }

  /** At the end of the spell the case at its end cannot leave. */
  protected get isShut(): boolean {
    return this.oldest < this.newest && this.due[this.oldest & this.spell.mask]! < this.spell.until
  }

  override offer(): void {
    const { counted, unit } = this
    if (this.isShut) counted.isBlocked = !unit.next.offer(counted.first(), unit)
  }
}
