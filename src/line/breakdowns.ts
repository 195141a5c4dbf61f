/** Breakdowns of one piece: when the next one comes, on the clock of its running time or of the calendar. */
import { never } from '../engine/clock.js'
import type { Draw } from '../engine/draw.js'
import type { Law } from '../engine/variates.js'
import type { Floor } from './floor.js'
import { State } from './states.js'

export interface BreakdownKeys {
  after: Law
  'counted-in': 'running-time' | 'calendar-time'
  repair: Law
}

/** A piece as its breakdowns see it: in `state` since `stateSince`, s, until `lapsesAt` if nothing changes. */
interface Spell {
  readonly state: State
  readonly stateSince: number
  readonly lapsesAt: number
}

/**
 * Running time is the time in state working, so it stands in planned stops; the calendar counts every second from one repair to the next breakdown.
 * A breakdown that comes due while the piece stands for something else strikes when it moves again. What is in hand
 * waits and goes on with what was left.
 */
export class Breakdowns {
  private readonly after: Draw
  private readonly repair: Draw
  private readonly countsCalendar: boolean
  /** When the piece breaks down if nothing changes, s, as `find` finds it; `never` while its clock stands. */
  dueAt = never
  /** Running time left, or the instant of the breakdown where the calendar counts, s. */
  left = never

  constructor(
    private readonly floor: Floor,
    owner: string,
    keys: BreakdownKeys,
  ) {
    this.after = floor.draws(owner, 'time to breakdown', keys.after)
    this.repair = floor.draws(owner, 'repair', keys.repair)
    this.countsCalendar = keys['counted-in'] === 'calendar-time'
  }

  /** Sound again from now: at the start of a shift and after a repair. */
  begin(): void {
    this.left = this.after.draw() + (this.countsCalendar ? this.floor.clock.now : 0)
  }

  /** Finds when the piece breaks down. */
  find(piece: Spell): void {
    if (this.countsCalendar) this.dueAt = this.left
    else if (piece.state !== State.working) this.dueAt = never
    else {
      const due = piece.stateSince + this.left
      this.dueAt = due <= piece.lapsesAt ? due : never
    }
  }

  /** Time in `state` is taken off what is left. */
  counts(state: State): boolean {
    return !this.countsCalendar && state === State.working
  }

  repairTime(): number {
    return this.repair.draw()
  }
}
