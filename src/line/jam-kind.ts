/** One kind of jam of a piece: which cases it strikes, how long its clearing takes, and what is counted of it. */

import type { Draw } from '../engine/draw.js'
import type { Stream } from '../engine/stream.js'
import { unset } from '../engine/unset.js'
import { type Call, jamsBy } from '../scenario/calls.js'
import { isolation, type JamKeys } from '../scenario/jams.js'
import { meanOf, varianceOf } from '../scenario/law.js'
import type { Floor } from './floor.js'

/** Times in s. */
export class JamKind {
  count = 0
  /** From stop to restart; of it the part until somebody is there. */
  time = unset
  wait = unset
  inBreaks = 0
  casesLost = 0
  /** Whom it calls. */
  readonly call: Call
  private readonly chance: number
  private readonly draws: Stream
  private readonly lost: Stream
  private readonly lostShare: number
  private readonly clear: Draw
  private readonly isolation: number

  /** `name` null: the only kind of its piece. Each has streams of its own, so that another one changes none of its draws. */
  constructor(
    private readonly floor: Floor,
    owner: string,
    readonly name: string | null,
    readonly keys: JamKeys,
  ) {
    const purpose = (words: string) => (name === null ? words : `${words}: ${name}`)
    this.chance = keys.chance * keys['tape-factor']
    this.draws = floor.stream(owner, purpose('jam'))
    this.lost = floor.stream(owner, purpose('case lost'))
    this.lostShare = keys['case-lost']
    this.clear = floor.draws(owner, purpose('jam clearing'), keys.clear)
    this.isolation = isolation(keys)
    this.call = jamsBy(keys.by)
  }

  /** Whether the next case, of this kind, jams so: one draw a case, in the order in which they come. */
  strikes(kind: number): boolean {
    this.draws.advance()
    return this.draws.value < this.chance * this.floor.jamFactors[kind]!
  }

  /** Time to clear it, once somebody is there, isolation included. */
  clearing(): number {
    return this.clear.draw() + this.isolation
  }

  /** Whether a case can be spoilt at all. */
  get maySpoil(): boolean {
    return this.lostShare > 0
  }

  /** Whether the case that jammed is spoilt. */
  spoilsCase(): boolean {
    return this.lost.next() < this.lostShare
  }

  /** Counts anew. */
  countAnew(): void {
    this.count = 0
    this.time = 0
    this.wait = 0
    this.inBreaks = 0
    this.casesLost = 0
  }

  /** Books so much of a stop. */
  book(time: number, isWorkedOn: boolean): void {
    this.time += time
    if (!isWorkedOn) this.wait += time
  }
}

/**
 * Of several kinds the rarer one of which a single jam can outweigh all others: that whose times add most to the mean square
 * of a case. Null where that is the one that comes most often.
 */
export function heaviest(kinds: readonly JamKind[]): JamKind | null {
  if (kinds.length < 2) return null
  const weight = ({ keys }: JamKind) =>
    keys.chance * ((meanOf(keys.clear) + isolation(keys)) ** 2 + varianceOf(keys.clear))
  const most = (of: (kind: JamKind) => number) =>
    kinds.reduce((best, each) => (of(each) > of(best) ? each : best))
  const found = most(weight)
  return found.keys.chance < most(({ keys }) => keys.chance).keys.chance ? found : null
}
