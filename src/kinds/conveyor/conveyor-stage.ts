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

  /** Finds for how long its cases cannot leave: `blocked`. */
  protected tellBlocked(): void {
    const { due, gone, first, oldest } = this
    const { mask, from, until } = this.spell
    let blocked = 0
    for (let number = first; number < oldest; number++)
      blocked += gone[number & mask]! - Math.max(from, due[number & mask]!)
    if (this.isShut) blocked += until - Math.max(from, due[oldest & mask]!)
    this.blocked = blocked
  }

  /** At the end of the spell the case at its end cannot leave. */
  private get isShut(): boolean {
    return this.oldest < this.newest && this.due[this.oldest & this.spell.mask]! < this.spell.until
  }

  protected override rests(): void {
    const { entered, due, gone } = this
    const { mask, from } = this.spell
    for (let number = this.first; number < this.newest; number++) {
      this.rest(Math.max(from, gone[(number - 1) & mask]!), entered[number & mask]!)
      this.rest(due[number & mask]!, gone[number & mask]!)
    }
    if (this.oldest === this.newest) this.rest(Math.max(from, gone[(this.newest - 1) & mask]!), Infinity)
  }

  override offer(): void {
    const { counted, unit } = this
    if (this.isShut) counted.isBlocked = !unit.next.offer(counted.first(), unit)
  }
}
