/** What happens in a row of pieces while nothing disturbs it, worked out without events. */
import { never } from '../../engine/clock.js'
import type { Equipment } from '../equipment.js'
import type { Exit } from '../exit.js'
import type { Floor } from '../floor.js'
import type { CalmPiece } from './calm-piece.js'
import type { CalmSource } from './calm-source.js'
import type { Row } from './row.js'

/** Numbers before the first, to which pieces look back. */
const before = 64
/** Cases of a spell, at most, and those for which it is worth while. */
const longest = 512
/** Cases that may be in the row as one begins. */
const mostInside = 1024

export class Calm {
  spells = 0
  cases = 0

  constructor(
    private readonly floor: Floor,
    private readonly row: Row,
    private readonly source: CalmSource,
    private readonly equipment: readonly Equipment[],
    private readonly pieces: readonly CalmPiece[],
    private readonly exit: Exit,
  ) {
    for (let index = 1; index < pieces.length; index++) pieces[index]!.wanted = pieces[index - 1]!.due
  }

  /** Works on from now, up to what disturbs the row or to `end`. */
  work(end: number): void {
    const { floor, row, pieces, source } = this
    if (floor.observer !== null || !source.isCalm()) return
    for (let index = 0; index < pieces.length; index++)
      if (this.equipment[index]!.frozen || !pieces[index]!.isCalm()) return
    if (floor.cases.inUse - source.source.standing.length > mostInside) return
    this.findEnd(end)
    if (row.until - floor.clock.now < 30) return
    this.spells++
    row.from = floor.clock.now
    row.next = before
    for (let index = pieces.length - 1; index >= 0; index--) {
      const from = row.next
      this.equipment[index]!.calmBegins(index > 0 ? this.equipment[index - 1]! : this.source.source)
      pieces[index]!.begin()
      for (let number = from; number < row.next; number++) {
        pieces[index]!.resume(number)
        this.advance(number, index)
      }
    }
    const most = row.next + longest
    for (let number = source.next(); number >= 0; number = source.next()) {
      this.advance(number, 0)
      // what has been drawn up to here has been drawn for times before this
      if (row.next === most) row.until = Math.min(row.until, this.anchor.due[number & row.mask]!)
    }
    this.cases += row.next - before
    this.tell()
  }

  /** The earliest time at which something disturbs the row that is known. */
  private findEnd(end: number): void {
    const { floor, row, equipment } = this
    const { times } = floor.clock
    row.until = end
    for (let slot = this.others; slot < times.length; slot++) row.until = Math.min(row.until, times[slot]!)
    for (let index = 0; index < equipment.length; index++)
      row.until = Math.min(row.until, equipment[index]!.soundUntil())
  }
  /** Slots of the clock from this one on are of others. */
  others = 0
  anchor!: CalmPiece

  /** The case is ready to leave a piece: as far as it comes. */
  private advance(number: number, from: number): void {
    const { pieces, row } = this
    const place = number & row.mask
    let here = pieces[from]!
    for (let index = from + 1; index < pieces.length; index++) {
      const next = pieces[index]!
      if (here.due[place] === never) {
        here.left[place] = never
        next.entered[place] = never
        next.due[place] = never
      } else {
        next.enter(number)
        here.left[place] = next.entered[place]!
      }
      here.leaves(number)
      here = next
    }
    here.left[place] = here.due[place]!
    here.leaves(number)
  }

  private tell(): void {
    const { floor, row, pieces, equipment, exit } = this
    const { clock } = floor
    const { until } = row
    for (let index = 0; index < pieces.length; index++) pieces[index]!.tell()
    const last = pieces[pieces.length - 1]!
    for (let number = before; number < row.next; number++) {
      if (!(last.left[number & row.mask]! < until)) break
      clock.now = last.left[number & row.mask]!
      exit.offer(row.items[number & row.mask]!)
    }
    // the last instant before its end
    clock.now = until * (1 - Number.EPSILON)
    for (let index = pieces.length - 1; index >= 0; index--) {
      pieces[index]!.end()
      pieces[index]!.tellSpans()
      equipment[index]!.calmEnds(until, pieces[index]!)
    }
    for (let index = pieces.length - 1; index >= 0; index--) pieces[index]!.ended()
    for (let index = pieces.length - 1; index >= 0; index--) equipment[index]!.goOnByEvents()
    this.source.end()
  }
}
