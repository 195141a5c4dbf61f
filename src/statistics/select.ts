/**
 * Choosing the best of several designs while simulating them, and dropping the others as soon as that is safe. Kim &
 * Nelson, Operations Research 54 (2006) 475-488 (from memory): fully sequential selection with variances that are updated.
 */
import { allowance, fewest, nextLook, spreadOf, firstStage as usualFirstStage } from './evidence.js'
import { tooRareToMatter } from './seen.js'
import { Series } from './series.js'

/** What a selection is asked for. */
export interface Choice {
  /** Chance that the right one is selected, above 1 / (number of designs) and below 1. */
  confidence: number
  /** Indifference amount, above 0, in the unit of the measure: a design so near the best is as good as the best. */
  within: number
  isLargerBetter: boolean
  /** Shifts of every design before the first may be dropped, at least 2. */
  firstStage?: number
  /**
   * Whether the shifts of a design show all that may happen in it, as far as that matters to its figure; `risk` is that of a pair. Asked
   * for at each look; without it they do.
   */
  isSeen?: (design: number, figure: number, risk: number) => boolean
}

/** A design from which another one differs in too few shifts to be told from it. */
interface Alike {
  from: number
  /** In so many shifts they differ. */
  differing: number
}

/**
 * A selection among designs numbered from 0, driven shift by shift. After `firstStage` shifts of each and from then on whenever there
 * are a twentieth more it looks: a design is dropped when its figure lies further behind that of another one than luck explains,
 * which is ever less. No pair is told apart by differences too few to know their spread, nor before both have shown
 * what may happen in them. It is over when one is left, or when those that are left are alike.
 *
 * Guarantee: if the best is better than any other by at least `within`, it is selected with about the confidence asked,
 * whatever the designs have in common. Where others lie nearer, one within `within` of the best is selected with that
 * chance: so the procedure is commonly understood; the paper's proof is of the first alone and holds as `within` gets small, so for both
 * there are tests by simulation. Assumed: shifts are independent and of one law.
 */
export class Selection {
  /** Designs that are still in, by number, in ascending order. */
  survivors: readonly number[]
  /** Shifts that have been added. */
  shifts = 0
  /** Shifts of each design that were used. */
  readonly used: number[]

  private readonly series: Series[]
  private readonly risk: number
  private look: number
  private areAlike = false

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
    this.series = this.survivors.map(() => new Series())
    this.used = new Array<number>(designs).fill(0)
    // the risk is shared out among the rivals of the best, which holds for designs that vary together (Bonferroni)
    this.risk = (1 - confidence) / (designs - 1)
    this.look = firstStage
  }

  get isDone(): boolean {
    return this.survivors.length === 1 || this.areAlike
  }

  /** The design that was selected; null while the selection goes on, and where those that are left are alike. */
  get best(): number | null {
    return this.survivors.length === 1 ? this.survivors[0]! : null
  }

  /** Figure of a design over the shifts of it that were used: their mean, or total over total; NaN where it has none. */
  figure(design: number): number {
    return this.series[design]!.figure
  }

  /** Of a design that is still in the one that it can least be told from, by the number of shifts that differ; null where enough do. */
  alike(of: number): Alike | null {
    const rivals = this.survivors
      .filter((from) => from !== of)
      .map((from) => ({ from, differing: this.series[of]!.differing(this.series[from]!) }))
    const least = Math.min(...rivals.map(({ differing }) => differing))
    return least < fewest ? rivals.find(({ differing }) => differing === least)! : null
  }

  /**
   * Takes the next shift: the number of each survivor in the place of its own, and of a ratio what it is divided by; what stands in
   * the places of others is ignored. A survivor without a number (NaN) gets a RangeError, and so does a shift after the end.
   */
  add(values: ArrayLike<number>, overs?: ArrayLike<number>): void {
    if (this.isDone) throw new RangeError('the selection is over')
    const over = (design: number) => (overs ? overs[design]! : 1)
    const missing = this.survivors.find((design) => !Number.isFinite(values[design]! + over(design)))
    if (missing !== undefined)
      throw new RangeError(`design ${missing} has no figure of shift ${this.shifts + 1}`)
    this.shifts++
    for (const design of this.survivors) {
      this.series[design]!.add(values[design]!, over(design))
      this.used[design]!++
    }
    if (this.shifts < this.look) return
    this.look = nextLook(this.shifts)
    this.screen()
  }

  /** Drops who lies too far behind any that was in before. */
  private screen(): void {
    const before = this.survivors
    const { isSeen = () => true, isLargerBetter } = this.choice
    const shown = before.filter((design) => isSeen(design, this.figure(design), this.risk))
    const linear = new Map(shown.map((design) => [design, this.series[design]!.linear()]))
    const dropped = new Set<number>()
    for (const [place, one] of shown.entries())
      for (const other of shown.slice(place + 1)) {
        const lead = this.lead(linear.get(one)!, linear.get(other)!)
        if (lead !== 0) dropped.add(lead > 0 === isLargerBetter ? other : one)
      }
    this.survivors = before.filter((design) => !dropped.has(design))
    this.areAlike = !this.survivors.some((one) =>
      this.survivors.some((other) => one < other && !this.neverMatters(one, other)),
    )
  }

  /** The sign of what one has over the other, 0 where luck may explain it. */
  private lead(one: readonly number[], other: readonly number[]): number {
    const { within } = this.choice
    const spread = spreadOf(
      one.map((value, shift) => value - other[shift]!),
      within,
    )
    const isTold = Math.abs(spread.sum) > allowance(spread, this.shifts, within, this.risk)
    return isTold ? Math.sign(spread.sum) : 0
  }

  /** Whether two differ so seldom that it could not matter which is taken. */
  private neverMatters(one: number, other: number): boolean {
    const differing = this.series[one]!.differing(this.series[other]!)
    if (differing >= fewest) return false
    const figure = Math.max(Math.abs(this.figure(one)), Math.abs(this.figure(other)))
    return tooRareToMatter(differing, this.shifts, figure, this.choice.within, this.risk)
  }
}
