/** Whether a design keeps a requirement, told shift by shift with a stated risk: it stops as soon as that is clear. */

import { ln } from '../engine/logarithms.js'
import { allowance, nextLook, spreadOf, firstStage as usualFirstStage } from './evidence.js'
import { Series } from './series.js'

export type Verdict = 'accepted' | 'refused'

/** A test that is fed one shift after the other. */
export interface ConstraintTest {
  /** Takes the number of the next shift, of a ratio also what it is divided by; null as long as nothing is clear. */
  add(value: number, over?: number): Verdict | null
}

/**
 * Sequential test of a share of shifts, each 0 or 1, against `least`, on (0, 1): a share of at least `least + near` is
 * refused with at most about the chance `refused`, one of at most `least - near` accepted with at most `wrongly` (their sum
 * below 1); what lies between may go either way. That zone ends at the latest halfway between `least` and 0 or 1, which
 * keeps the promise and takes more shifts. Wald, Sequential Analysis (1947), ch. 5 (from memory): both chances together
 * are at most the sum of what is asked, and each at most what is asked of it over 1 less the other; what is overshot at
 * the end makes them smaller. Where there is nothing to tell apart: RangeError.
 */
export class ShareTest implements ConstraintTest {
  private sum = 0
  private readonly forHeld: number
  private readonly forMissed: number
  private readonly accepts: number
  private readonly refuses: number

  constructor(least: number, near: number, wrongly: number, refused = wrongly) {
    const low = Math.max(least - near, least / 2)
    const high = Math.min(least + near, (1 + least) / 2)
    if (!(low > 0 && high < 1 && low < high))
      throw new RangeError(`a share of ${least}, ± ${near}, leaves nothing to tell apart`)
    this.forHeld = ln(high / low)
    this.forMissed = ln((1 - high) / (1 - low))
    this.accepts = ln((1 - refused) / wrongly)
    this.refuses = ln(refused / (1 - wrongly))
  }

  add(figure: number): Verdict | null {
    this.sum += figure > 0 ? this.forHeld : this.forMissed
    if (this.sum >= this.accepts) return 'accepted'
    return this.sum <= this.refuses ? 'refused' : null
  }
}

/**
 * Sequential test of the mean over shifts against `least`, or of a ratio as total over total: one of at least `least + near` is
 * refused, one of at most `least - near` accepted, each with at most about the chance `risk`; what lies between may go either way.
 * `near` is above 0. What the shifts have over `least` is judged as a difference from a design that is always just that, see
 * `evidence`: Andradottir & Kim, Naval Research Logistics 57 (2010) 403-421, procedure F with c = 1 (from memory), but with
 * the variance taken anew at each look. `isSeen` says whether the shifts show all that may happen, as far as that matters to
 * the figure, of which it is told.
 */
export class MeanTest implements ConstraintTest {
  private readonly series = new Series()
  private shifts = 0
  private look: number

  constructor(
    private readonly least: number,
    private readonly near: number,
    private readonly risk: number,
    firstStage = usualFirstStage,
    private readonly isSeen: (figure: number) => boolean = () => true,
  ) {
    this.look = firstStage
  }

  add(value: number, over = 1): Verdict | null {
    this.series.add(value, over)
    this.shifts++
    if (this.shifts < this.look) return null
    this.look = nextLook(this.shifts)
    if (!this.isSeen(this.series.figure)) return null
    const spread = spreadOf(
      this.series.linear().map((figure) => figure - this.least),
      this.near,
    )
    const allowed = allowance(spread, this.shifts, this.near, this.risk)
    if (spread.sum >= allowed) return 'accepted'
    return spread.sum <= -allowed ? 'refused' : null
  }
}
