/** Jams of one sealer: which case jams, how long the clearing takes, whether the case is spoilt. */

import type { Draw } from '../../engine/draw.js'
import type { Stream } from '../../engine/stream.js'
import type { Floor } from '../../line/floor.js'
import type { SealerKeys } from './keys.js'

type JamKeys = NonNullable<SealerKeys['jams']>

export class Jams {
  private readonly chance: number
  private readonly draws: Stream
  private readonly lost: Stream
  private readonly lostShare: number
  private readonly clear: Draw

  constructor(
    private readonly floor: Floor,
    owner: string,
    keys: JamKeys,
  ) {
    this.chance = keys.chance * keys['tape-factor']
    this.draws = floor.stream(owner, 'jam')
    this.lost = floor.stream(owner, 'case lost')
    this.lostShare = keys['case-lost']
    this.clear = floor.draws(owner, 'jam clearing', keys.clear)
  }

  /** Whether the next case, of this kind, jams: one draw a case, in the order in which they come. */
  strikes(kind: number): boolean {
    this.draws.advance()
    return this.draws.value < this.chance * this.floor.jamFactors[kind]!
  }

  /** Time to clear it, once somebody is there, s. */
  clearing(): number {
    return this.clear.draw()
  }

  /** Whether a case can be spoilt at all. */
  get maySpoil(): boolean {
    return this.lostShare > 0
  }

  /** Whether the case that jammed is spoilt. */
  spoilsCase(): boolean {
    return this.lost.next() < this.lostShare
  }
}
