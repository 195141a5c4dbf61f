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

/**
 * Running time is the time in state working; the calendar counts every second from one repair to the next breakdown.
 * A breakdown that comes due while the piece stands for something else strikes when it moves again. What is in hand
 * waits and goes on with what was left.
 */
export class Breakdowns {
  private readonly after: Draw
  private readonly repair: Draw
  private readonly countsCalendar: boolean
  /** Running time left, or the instant of the breakdown where the calendar counts. */
  private left = never

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

  /** When the piece, in `state` from `since` to `until`, breaks down if nothing changes; `never` while its clock stands. */
  due(state: State, since: number, until: number): number {
    if (this.countsCalendar) return this.left
    if (state !== State.working) return never
    const due = since + this.left
    return due <= until ? due : never
  }

  /** The piece was in `state` for `passed` seconds. */
  book(state: State, passed: number): void {
    if (!this.countsCalendar && state === State.working) this.left -= passed
  }

  repairTime(): number {
    return this.repair.draw()
  }
}
