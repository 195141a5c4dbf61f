/**
 * Choosing the best of several designs while simulating them, and dropping the others as soon as that is safe. Kim &
 * Nelson, ACM Transactions on Modeling and Computer Simulation 11 (2001) 251-273 (from memory).
 */

/** What a selection is asked for. */
export interface Choice {
  /** Chance that the right one is selected, above 1 / (number of designs) and below 1. */
  confidence: number
  /** Indifference amount, above 0, in the unit of the measure: a design so near the best is as good as the best. */
  within: number
  isLargerBetter: boolean
  /** Shifts of every design before the first may be dropped, at least 2. */
  firstStage?: number
}

/** As in Law's advice on the spread of few replications, and as the fewest shifts of a study. */
export const usualFirstStage = 10

/**
 * eta and h^2 of the procedure with its constant c = 1: eta = ((2 alpha / (k - 1))^(-2 / (n0 - 1)) - 1) / 2 and h^2 =
 * 2 eta (n0 - 1). The risk alpha is shared out among the k - 1 rivals of the best (Bonferroni), which holds for
 * designs that vary together, as with common random numbers.
 */
export function selectionConstants(
  designs: number,
  confidence: number,
  firstStage: number,
): { eta: number; hSquared: number } {
  const share = (2 * (1 - confidence)) / (designs - 1)
  const eta = (share ** (-2 / (firstStage - 1)) - 1) / 2
  return { eta, hSquared: 2 * eta * (firstStage - 1) }
}

/**
 * A selection among designs numbered from 0, driven shift by shift. After `firstStage` shifts of each it knows how the
 * pairs of designs vary against each other, and from there on looks after every shift: a design is dropped when its
 * total lies further behind that of another one than luck explains, which is ever less. It ends when one is left, or
 * after `atMost` shifts with the best mean.
 *
 * Guarantee: if the best is better than any other by at least `within`, it is selected with the confidence asked,
 * whatever the designs have in common. Where others lie nearer, one within `within` of the best is selected with that
 * chance: so the procedure is commonly understood; the paper's proof is of the first alone, for the second there is a
 * test by simulation. Assumed: shifts are independent and of one law, and their figures about normal, as means over
 * many cases are.
 */
export class Selection {
  /** Designs that are still in, by number, in ascending order. */
  survivors: readonly number[]
  /** Shifts that have been added. */
  shifts = 0
  /** Most shifts that the selection can take; Infinity until the first stage is over. */
  atMost = Infinity
  /** Shifts of each design that were used. */
  readonly used: number[]

  private readonly totals: Float64Array
  /** h^2 S^2 / within^2 of each pair, the boundary of which shrinks to nothing after so many shifts. */
  private readonly reach: number[][] = []
  private readonly first: Float64Array[] = []
  private readonly firstStage: number
  private readonly hSquared: number

  /** `designs` is their number at the start, at least 1. What `Choice` does not allow gets a RangeError. */
  constructor(
    designs: number,
    private readonly choice: Choice,
  ) {
    const { confidence, within, firstStage = usualFirstStage } = choice
    if (!(designs >= 1)) throw new RangeError(`nothing to select from: ${designs} designs`)
    if (!(confidence > 1 / designs && confidence < 1) && designs > 1)
      throw new RangeError(`a confidence of ${confidence} is not between 1 / ${designs} and 1`)
    if (!(within > 0)) throw new RangeError(`an indifference amount of ${within} is not above 0`)
    if (!(firstStage >= 2)) throw new RangeError(`a first stage of ${firstStage} shifts is not at least 2`)
    this.survivors = Array.from({ length: designs }, (_, design) => design)
    this.totals = new Float64Array(designs)
    this.used = new Array<number>(designs).fill(0)
    this.firstStage = firstStage
    this.hSquared = selectionConstants(designs, confidence, firstStage).hSquared
  }

  get isDone(): boolean {
    return this.survivors.length === 1
  }

  /** The design that was selected; null while the selection goes on. */
  get best(): number | null {
    return this.isDone ? this.survivors[0]! : null
  }

  /** Mean of a design over the shifts of it that were used; NaN before the first. */
  mean(design: number): number {
    return (this.totals[design]! * this.sign) / this.used[design]!
  }

  /**
   * Takes the next shift: the figure of each survivor in the place of its number; what stands in the places of others
   * is ignored. A survivor without a figure (NaN) gets a RangeError, and so does a shift after the end.
   */
  add(figures: ArrayLike<number>): void {
    if (this.isDone) throw new RangeError('the selection is over')
    const missing = this.survivors.find((design) => !Number.isFinite(figures[design]))
    if (missing !== undefined)
      throw new RangeError(`design ${missing} has no figure of shift ${this.shifts + 1}`)
    this.shifts++
    for (const design of this.survivors) {
      this.totals[design]! += this.sign * figures[design]!
      this.used[design]!++
    }
    if (this.shifts <= this.firstStage) this.first.push(Float64Array.from(figures))
    if (this.shifts === this.firstStage) this.measureSpread()
    if (this.shifts >= this.firstStage) this.screen()
  }

  private get sign(): 1 | -1 {
    return this.choice.isLargerBetter ? 1 : -1
  }

  /** Knows from the first stage how each pair varies, and so how long the selection can last. */
  private measureSpread(): void {
    const factor = this.hSquared / this.choice.within ** 2
    for (const one of this.survivors)
      this.reach.push(this.survivors.map((other) => factor * varianceOfDifference(this.first, one, other)))
    const longest = Math.max(...this.reach.flat())
    this.atMost = Math.max(this.firstStage, Math.floor(longest) + 1)
    this.first.length = 0
  }

  /** Drops who lies too far behind any that was in before; at the end all but the best, of equal ones the first. */
  private screen(): void {
    const before = this.survivors
    this.survivors = before.filter((one) =>
      before.every((other) => this.totals[one]! >= this.totals[other]! - this.allowance(one, other)),
    )
    if (this.shifts < this.atMost || this.isDone) return
    const most = Math.max(...this.survivors.map((design) => this.totals[design]!))
    this.survivors = [this.survivors.find((design) => this.totals[design] === most)!]
  }

  /** r W of the paper: how far a total may lie behind another one after r shifts. */
  private allowance(one: number, other: number): number {
    return Math.max(0, (this.choice.within / 2) * (this.reach[one]![other]! - this.shifts))
  }
}

/** Sample variance over shifts of the difference of two designs. */
function varianceOfDifference(shifts: readonly ArrayLike<number>[], one: number, other: number): number {
  const differences = shifts.map((figures) => figures[one]! - figures[other]!)
  const average = differences.reduce((sum, value) => sum + value, 0) / differences.length
  return differences.reduce((sum, value) => sum + (value - average) ** 2, 0) / (differences.length - 1)
}
