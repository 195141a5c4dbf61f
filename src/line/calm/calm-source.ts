/** The source of a row while nothing disturbs it. */
import { never } from '../../engine/clock.js'
import type { Source } from '../source.js'
import type { CalmPiece } from './calm-piece.js'
import type { Row } from './row.js'

export class CalmSource {
  constructor(
    private readonly row: Row,
    readonly source: Source,
    private readonly first: CalmPiece,
  ) {}

  isCalm(): boolean {
    const { source } = this
    return !source.isPaused && !source.hasEnded
  }

  /** The next case goes onto the row, before the end of the spell: its running number; or -1 where none does. */
  next(): number {
    const { row, source, first } = this
    const { cases, clock } = source.floor
    for (;;) {
      if (source.standing.length === 0) {
        if (!(source.dueAt < row.until)) return -1
        this.arrive()
      }
      const item = source.standing.at(0)
      const number = row.bring(item, cases.length[item]!)
      const place = number & row.mask
      const arrived = cases.arrivedAt[item]!
      first.wanted[place] = Math.max(arrived, first.entered[(number - 1) & row.mask]!)
      const isOfferedOnce = source.whenFull === 'turn-away'
      const { until } = row
      // one that is turned away must not be followed beyond that instant
      if (isOfferedOnce) row.until = Math.min(until, arrived * (1 + Number.EPSILON))
      first.enter(number)
      row.until = until
      const at = first.entered[place]!
      if (isOfferedOnce && at > arrived) {
        row.next--
        clock.now = arrived
        while (source.standing.length > 0) source.turnAway()
        continue
      }
      if (!(at < row.until)) {
        row.next--
        if (source.whenFull === 'queue') while (source.dueAt < row.until) this.arrive()
        else this.note(arrived)
        return -1
      }
      if (source.whenFull === 'queue') while (source.dueAt < at) this.arrive()
      else if (at > arrived) this.note(arrived)
      source.standing.shift()
      clock.now = at
      source.noteStack(-1)
      if (source.whenFull === 'wait' && source.standing.length === 0) {
        source.noteBlocked()
        source.findNext()
      }
      return number
    }
  }

  /** Packers stand from when a case came that is not taken yet. */
  private note(arrived: number): void {
    const { source, row } = this
    source.floor.clock.now = Math.max(arrived, row.from)
    source.noteBlocked()
  }

  private arrive(): void {
    const { source } = this
    const { clock, cases } = source.floor
    clock.now = source.dueAt
    source.dueAt = never
    for (let left = source.pace.batch; left > 0; left--) source.bring(cases.create(source.kind()))
    if (source.whenFull !== 'wait') source.findNext()
  }

  end(): void {
    const { source } = this
    source.tellClock()
    source.passOn()
  }
}
