/** A row of pieces that is worked ahead of the clock while nothing disturbs it. */
import { never } from '../engine/clock.js'
import { justAfter, justBefore } from '../engine/neighbours.js'
import type { Equipment } from '../line/equipment.js'
import type { Exit } from '../line/exit.js'
import type { Floor } from '../line/floor.js'
import type { Feed } from './feed.js'
import { before, type Spell } from './spell.js'
import type { Stage } from './stage.js'

/** Cases that come in a spell, about, and those that may be inside as it begins. */
export const longest = 512
export const mostInside = 800
/** A spell that lasts less is left to the events, s: to begin and end it takes as long as some cases. */
const least = 30

/** A piece and what is worked out of it. */
export interface Member {
  readonly unit: Equipment
  readonly stage: Stage
}

/**
 * Pieces one behind the other, from the source to the exit, in which cases keep their order. From an instant at which nothing is out of order until something
 * may be (a case that jams or finds no tape, a breakdown, a break, anything that others have on the clock) each case is worked out
 * on its own, from piece to piece, from the times of those ahead of it: no event, no state that changes to and fro. Then the times are counted,
 * and the pieces are put as events would have left them: those have the disturbance, and all that comes of it.
 */
export class Row {
  /** Cases of this simulation that came in spells. */
  worked = 0
  private readonly stages: readonly Stage[]
  private readonly units: readonly Equipment[]
  private readonly dues: readonly Float64Array[]

  constructor(
    private readonly floor: Floor,
    private readonly spell: Spell,
    private readonly feed: Feed,
    members: readonly Member[],
    /** The last that draws what may be disturbed: with the time at which a case leaves it, all drawn for those up to it is past. */
    private readonly anchor: Stage,
    private readonly exit: Exit,
    /** Slots of the clock from this one on are of others than the row. */
    private readonly others: number,
  ) {
    this.stages = members.map(({ stage }) => stage)
    this.units = members.map(({ unit }) => unit)
    this.dues = this.stages.map(({ due }) => due)
    for (const [index, stage] of this.stages.entries()) stage.wanted = this.dues[index - 1] ?? spell.ring()
  }

  /** A simulation begins. */
  reset(): void {
    this.worked = 0
  }

  /** Works ahead from now, if it can: no further than `end`, s. */
  workAhead(end: number): void {
    if (!this.isCalm()) return
    const { spell, stages, feed } = this
    const { clock } = this.floor
    this.findEnd(end)
    if (spell.until - clock.now < least) return
    spell.from = clock.now
    spell.next = before
    feed.begin()
    for (let index = stages.length - 1; index >= 0; index--) this.takeUp(index)
    const inside = spell.next
    this.bring()
    this.worked += spell.next - inside
    this.tell()
    this.end()
  }

  private isCalm(): boolean {
    const { floor, feed, units, stages } = this
    if (floor.observer !== null || !feed.isCalm()) return false
    if (floor.cases.inUse - feed.standing() > mostInside) return false
    for (let index = 0; index < stages.length; index++)
      if (units[index]!.frozen || !stages[index]!.isCalm()) return false
    return true
  }

  /** The earliest instant at which something may disturb the row, as far as is known. */
  private findEnd(end: number): void {
    const { floor, spell, units } = this
    const { times } = floor.clock
    let until = end
    for (let slot = this.others; slot < times.length; slot++) until = Math.min(until, times[slot]!)
    for (let index = 0; index < units.length; index++) until = Math.min(until, units[index]!.soundUntil)
    spell.until = until
  }

  /** Cases that are on a piece go on from there. */
  private takeUp(index: number): void {
    const { spell, stages, units, dues } = this
    const first = spell.next
    units[index]!.calmBegins(units[index - 1] ?? this.feed.sources[0]!)
    stages[index]!.begin()
    for (let number = first; number < spell.next; number++) {
      stages[index]!.resume(number)
      const place = number & spell.mask
      if (dues[index]![place]! < spell.from) dues[index]![place] = spell.from
      this.advance(number, index)
    }
  }

  private bring(): void {
    const { spell, feed } = this
    const last = spell.next + longest
    for (let number = feed.next(); number >= 0; number = feed.next()) {
      this.advance(number, 0)
      if (number === last) this.isLong(number)
    }
  }

  /** The spell has its length: all that comes before this case has left the anchor belongs to it, and the case itself. */
  private isLong(number: number): void {
    const { spell, anchor } = this
    const place = number & spell.mask
    const end = Math.max(anchor.due[place]!, justAfter(anchor.entered[place]!))
    spell.until = Math.min(spell.until, end)
  }

  /** From a piece on, from which it is known when the case is ready to leave. */
  private advance(number: number, from: number): void {
    const { stages, dues } = this
    const place = number & this.spell.mask
    let stage = stages[from]!
    for (let index = from + 1; index < stages.length; index++) {
      const next = stages[index]!
      if (dues[index - 1]![place] === never) {
        next.entered[place] = never
        next.due[place] = never
      } else {
        next.findEntry(number)
        next.comes(number)
      }
      stage.gone[place] = next.entered[place]!
      stage.leave(number)
      stage = next
    }
    stage.gone[place] = stage.due[place]!
    stage.leave(number)
  }

  private tell(): void {
    const { floor, spell, stages, exit } = this
    for (let index = 0; index < stages.length; index++) stages[index]!.tell()
    const { gone } = stages[stages.length - 1]!
    for (let number = before; number < spell.next; number++) {
      const at = gone[number & spell.mask]!
      if (!(at < spell.until)) return
      floor.clock.now = at
      exit.offer(spell.items[number & spell.mask]!)
    }
  }

  private end(): void {
    const { floor, spell, stages, units } = this
    floor.clock.now = justBefore(spell.until)
    for (let index = stages.length - 1; index >= 0; index--) {
      stages[index]!.tellWork()
      stages[index]!.end()
      units[index]!.calmEnds(spell.until, stages[index]!)
    }
    for (let index = stages.length - 1; index >= 0; index--) stages[index]!.offer()
    for (let index = stages.length - 1; index >= 0; index--) units[index]!.goesOnByEvents()
    this.feed.end()
  }
}
