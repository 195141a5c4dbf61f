/** The source of a row while nothing disturbs it: when cases come, and when the first piece takes them. */
import { never } from '../engine/clock.js'
import { justAfter } from '../engine/neighbours.js'
import { unset } from '../engine/unset.js'
import type { Source } from '../line/source.js'
import type { Spell } from './spell.js'
import type { Stage } from './stage.js'

export class Feed {
  /** When the first that stands came, and when it is taken, s. */
  private arrivedAt = unset
  private takenAt = unset

  constructor(
    private readonly spell: Spell,
    readonly source: Source,
    private readonly first: Stage,
  ) {}

  isCalm(): boolean {
    return !this.source.isPaused && !this.source.hasEnded
  }

  /** Brings the next case onto the first piece, before the end of the spell: its number, or -1 where there is none. */
  next(): number {
    const { spell, source, first } = this
    const { cases } = source.floor
    for (;;) {
      if (source.standing.length === 0) {
        if (!(source.dueAt < spell.until)) return -1
        this.arrive()
      }
      const item = source.standing.at(0)
      const number = spell.add(item, cases.length[item]!)
      this.arrivedAt = cases.arrivedAt[item]!
      first.wanted[number & spell.mask] = Math.max(this.arrivedAt, spell.from)
      if (source.whenFull !== 'turn-away') first.enter(number)
      else if (this.turnsAway(number)) continue
      this.takenAt = first.entered[number & spell.mask]!
      if (this.takenAt < spell.until) {
        this.pass()
        return number
      }
      spell.next--
      this.takenAt = spell.until
      this.stands()
      return -1
    }
  }

  /** A case that is not taken at once is turned away with all that came together with it. */
  private turnsAway(number: number): boolean {
    const { spell, source, first, arrivedAt } = this
    const { until } = spell
    // no further than that instant, for it does not wait for what is after it
    spell.until = Math.min(until, justAfter(arrivedAt))
    first.enter(number)
    spell.until = until
    if (first.entered[number & spell.mask] === arrivedAt) return false
    spell.next--
    source.floor.clock.now = arrivedAt
    while (source.standing.length > 0) source.turnAway()
    return true
  }

  /** Cases come, at once where they are late. */
  private arrive(): void {
    const { source } = this
    const { clock, cases } = source.floor
    clock.now = Math.max(clock.now, source.dueAt)
    source.dueAt = never
    for (let left = source.pace.batch; left > 0; left--) source.bring(cases.create(source.kind()))
    if (source.whenFull !== 'wait') source.findNext()
  }

  /** The first that stands is taken. */
  private pass(): void {
    const { source } = this
    this.stands()
    source.standing.shift()
    source.floor.clock.now = this.takenAt
    source.noteStack(-1)
    if (source.whenFull !== 'wait' || source.standing.length > 0) return
    source.noteBlocked()
    source.findNext()
  }

  /** The first stands from when it came until it is taken: behind it more may come, or packers wait. */
  private stands(): void {
    const { source, spell } = this
    if (source.whenFull === 'queue') while (source.dueAt < this.takenAt) this.arrive()
    else if (source.whenFull === 'wait' && this.takenAt > this.arrivedAt) {
      source.floor.clock.now = Math.max(this.arrivedAt, spell.from)
      source.noteBlocked()
    }
  }

  /** The spell is over: who stands is told no. */
  end(): void {
    this.source.tellClock()
    this.source.passOn()
  }
}
