/** A lock that a stop at the end of a shift hides: a piece that is down looks as if all might go on once it is mended. */
import { type Clock, StuckClock } from '../engine/clock.js'
import type { Equipment } from './equipment.js'
import { type Circle, findCircle } from './standstill.js'

/** How a piece stands as a shift ends. */
interface Stand {
  readonly held: number
  readonly taken: number
  /** Since when it has stood at the latest, s: one that is down no less than since it is. */
  readonly since: number
}

/**
 * How the pieces stand as a shift ends. Made before the shift is counted, and asked after: `find` lets breakdowns, breaks, planned work and
 * stops of a log end at that instant, so that cases may go on which stood, and looks who is locked all the same. No case has come
 * to those or gone from them meanwhile, so they are locked in whichever order the stops end. A piece that was at work when its
 * stop began has something to do, and is not locked; nor is one that stands for a jam, whose case may be taken out.
 */
export class ShiftEnd {
  private readonly stands: ReadonlyMap<Equipment, Stand>

  constructor(
    private readonly clock: Clock,
    private readonly equipment: readonly Equipment[],
  ) {
    this.stands = new Map(
      equipment.map((piece) => [
        piece,
        {
          held: piece.held(),
          taken: piece.taken,
          since: piece.isDown ? piece.frozenAt : piece.stateSince,
        },
      ]),
    )
  }

  /** The pieces that are locked; null where there are none. The line stands as it likes afterwards, for each simulation begins anew. */
  find(): Circle | null {
    const { equipment, stands } = this
    const down = equipment.filter((piece) => piece.isDown)
    if (down.length === 0 || !this.goOn(down)) return null
    const isLocked = (piece: Equipment) => {
      const { held, taken } = stands.get(piece)!
      return piece.standsBlocked() && piece.held() === held && piece.taken === taken
    }
    return findCircle(equipment, isLocked, (piece) => stands.get(piece)!.since)
  }

  /** Ends the stops, and does what follows at that instant; false where that has no end. */
  private goOn(down: readonly Equipment[]): boolean {
    try {
      for (const piece of down) piece.goesOn()
      this.clock.run(this.clock.now)
      return true
    } catch (error) {
      if (!(error instanceof StuckClock)) throw error
      return false
    }
  }
}
