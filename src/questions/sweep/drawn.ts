/** Draws of the inputs beside the designs of a sweep: each sees the same draws, and none of what is varied. */
import { drawsAsked, drawsOf, touches } from '../../answers/draws.js'
import type { DrawsAsked } from '../../answers/with-inputs.js'
import type { Evidence } from '../../scenario/known.js'
import type { ReadScenario } from '../../scenario/read.js'
import type { SweepOptions, Varied } from './asked.js'
import type { SweepKind } from './document.js'
import type { Outcome } from './outcomes.js'
import type { Planned } from './points.js'
import type { Sample } from './sample.js'

/**
 * How many draws where nobody says, and shifts of each, by how many designs there are at most. Designs differ by little luck on the same random
 * numbers, so that few shifts do. Of 30 draws the spread of the inputs is known to within 13 % of itself, one standard error, of 20 to within 16 %; Student's
 * factor of so few makes intervals 2 and 5 % wider than 60 would. So many designs cost about as much again as their own 100 shifts. Project rule.
 */
const budgets = [
  { designs: 50, draws: 30, shifts: 5 },
  { designs: Number.POSITIVE_INFINITY, draws: 20, shifts: 4 },
]
/** A curve has few designs, and its band is looked at. */
const ofCurve = { draws: undefined, shifts: 10 }

/** What is asked for; null where inputs are held fixed, or what is known is varied itself. Throws `Fault` `asked`. */
export function sweepDraws(
  { draws, inputs }: SweepOptions,
  { kind, varied, designs }: { kind: SweepKind; varied: readonly Varied[]; designs: number },
  { evidence }: Pick<ReadScenario, 'evidence'>,
  shifts: number,
): DrawsAsked | null {
  const budget = kind === 'curve' ? ofCurve : budgets.find((each) => designs <= each.designs)!
  const held = heldBy(kind, varied, evidence)
  const drawn = { evidence: evidence.filter((each) => !held.includes(each)) }
  const asked = drawsAsked({ draws, inputs }, drawn, shifts, budget.shifts)
  return asked && { ...asked, draws: draws ?? budget.draws ?? asked.draws }
}

const touchedBy = (paths: readonly string[], evidence: readonly Evidence[]): Evidence[] =>
  evidence.filter(({ path }) => paths.some((each) => touches(path, each)))

/** What no design draws: what all of them vary. Of inputs that move one at a time only the design that moves one holds it. */
const heldBy = (kind: SweepKind, varied: readonly Varied[], evidence: readonly Evidence[]): Evidence[] =>
  touchedBy(kind === 'each' ? [] : varied.map(({ path }) => path), evidence)

/** Draws of a sweep: which there are, and what came of them. */
export class SweepDraws {
  private readonly evidence: readonly Evidence[]
  private readonly heldByAll: readonly Evidence[]

  constructor(
    readonly asked: DrawsAsked | null,
    kind: SweepKind,
    varied: readonly Varied[],
    { evidence }: Pick<ReadScenario, 'evidence'>,
  ) {
    this.evidence = evidence
    this.heldByAll = heldBy(kind, varied, evidence)
  }

  /** What is held where a design sets these: that design, and the one that it is held against. */
  heldFor(set: Record<string, unknown>): readonly Evidence[] {
    const own = touchedBy(Object.keys(set), this.evidence)
    return this.evidence.filter((each) => own.includes(each) || this.heldByAll.includes(each))
  }

  /** Draws of a design with that held, by the names under which they are kept. */
  private keyOf({ key }: Planned, held: readonly Evidence[]): string {
    const holding = held.length === 0 ? '' : ` holding ${held.map(({ path }) => path).join(', ')}`
    return `${key}${holding} in ${this.asked?.shifts} shifts`
  }

  /** The draws of each design, as designs of their own after all others; of the scenario as it stands also those that others are held against. */
  planned(designs: readonly Planned[]): Planned[] {
    const { asked } = this
    const [base] = designs
    if (asked === null || base === undefined) return []
    const wanted = new Map<string, { of: Planned; design: number; held: readonly Evidence[] }>()
    const want = (of: Planned, design: number, held: readonly Evidence[]) =>
      wanted.set(this.keyOf(of, held), { of, design, held })
    want(base, 0, this.heldByAll)
    for (const [design, of] of designs.entries()) {
      const held = this.heldFor(of.set)
      want(of, design, held)
      want(base, 0, held)
    }
    return [...wanted].flatMap(([key, { of, design, held }]) => {
      const evidence = this.evidence.filter((each) => !held.includes(each))
      // with all held each draw would be the design itself
      if (evidence.length === 0) return []
      const drawn = drawsOf({ scenario: of.scenario, evidence, key }, asked, design)
      return drawn.map((draw) => ({ set: of.set, at: of.at, shifts: asked.shifts, ...draw }))
    })
  }

  /** Of a design the numbers of its draws, in their order; of one that locks up null. `held`: beside what all hold. */
  samples(
    of: Planned,
    outcomes: ReadonlyMap<string, Outcome>,
    held: readonly Evidence[] = this.heldFor(of.set),
  ): (Record<string, Sample> | null)[] {
    if (held.length === this.evidence.length) return []
    const key = this.keyOf(of, held)
    return Array.from({ length: this.asked?.draws ?? 0 }, (_, index) => {
      const outcome = outcomes.get(`${key} draw ${index + 1}`)
      return outcome && 'samples' in outcome ? outcome.samples : null
    })
  }
}
