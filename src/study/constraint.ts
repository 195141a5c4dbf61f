/** Whether a design keeps a requirement, told shift by shift with a stated risk: it stops as soon as that is clear. */

export type Verdict = 'accepted' | 'refused'

/** A test that is fed one shift after the other. */
export interface ConstraintTest {
  /** Takes the figure of the next shift; null as long as nothing is clear. */
  add(figure: number): Verdict | null
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
      throw new RangeError(`a share of ${least}, give or take ${near}, leaves nothing to tell apart`)
    this.forHeld = Math.log(high / low)
    this.forMissed = Math.log((1 - high) / (1 - low))
    this.accepts = Math.log((1 - refused) / wrongly)
    this.refuses = Math.log(refused / (1 - wrongly))
  }

  add(figure: number): Verdict | null {
    this.sum += figure > 0 ? this.forHeld : this.forMissed
    if (this.sum >= this.accepts) return 'accepted'
    return this.sum <= this.refuses ? 'refused' : null
  }
}

/**
 * Sequential test of a mean over shifts against `least`: a mean of at least `least + near` is refused, one of at most
 * `least - near` accepted, each with at most the chance `risk`; what lies between may go either way. `near` is above 0.
 * The sum of what the shifts have over `least` leaves a triangle, whose size the spread of the first `firstStage`
 * shifts sets. Andradottir & Kim, Naval Research Logistics 57 (2010) 403-421, procedure F with c = 1 (from memory).
 */
export class MeanTest implements ConstraintTest {
  private sum = 0
  private shifts = 0
  private squares = 0
  private average = 0
  private reach = Infinity

  constructor(
    private readonly least: number,
    private readonly near: number,
    private readonly risk: number,
    private readonly firstStage: number,
  ) {}

  add(figure: number): Verdict | null {
    this.shifts++
    this.sum += figure - this.least
    if (this.shifts <= this.firstStage) {
      const from = figure - this.average
      this.average += from / this.shifts
      this.squares += from * (figure - this.average)
    }
    if (this.shifts < this.firstStage) return null
    if (this.shifts === this.firstStage) this.reach = this.reachOf(this.squares / (this.shifts - 1))
    const allowed = Math.max(0, this.reach - (this.near / 2) * this.shifts)
    if (this.sum >= allowed) return 'accepted'
    return this.sum <= -allowed ? 'refused' : null
  }

  /** Half the base of the triangle, from the variance of a shift. */
  private reachOf(variance: number): number {
    const degrees = this.firstStage - 1
    const eta = ((2 * this.risk) ** (-2 / degrees) - 1) / 2
    return (2 * eta * degrees * variance) / (2 * this.near)
  }
}
