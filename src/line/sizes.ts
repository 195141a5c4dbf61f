/** Outside sizes of the cases as they come: those of their kinds, or drawn for each case where a kind is made to measure. Lengths in m. */
import type { Draw } from '../engine/draw.js'
import type { Law } from '../engine/variates.js'
import type { CaseKind } from '../scenario/case-keys.js'
import { lengthsOf, sideOf, sizeEnds, varies } from '../scenario/outside.js'
import type { Scenario } from '../scenario/schema.js'
import { drawnLength } from '../trade/tape.js'

/** The sides of a kind; one that does not vary draws nothing. */
interface Sides {
  length: Draw
  width: Draw
  height: Draw
}

/** Where the sizes of cases are kept, by their numbers in the pool. */
interface Kept {
  length: Float64Array
  strip: Float64Array
  width: Float64Array
  height: Float64Array
}

/** Gives a law drawn from a stream of its own. */
type Draws = (owner: string, purpose: string, law: Law) => Draw

export class Sizes {
  /** By kind, outside length along the travel, and the tape that one head draws for that off the roll; where it varies of the mean. */
  readonly lengths: Float64Array
  readonly strips: Float64Array
  /** Lengths of the shortest and the longest case that may come. */
  readonly shortest: number
  readonly longest: number
  /** By kind; null where no kind varies. */
  private readonly sides: readonly Sides[] | null
  private readonly leg: number
  private readonly stretch: number

  constructor(scenario: Scenario, draws: Draws) {
    const { cases, tape } = scenario
    const kinds = Object.entries(cases)
    this.leg = tape.leg
    this.stretch = tape.stretch
    this.lengths = Float64Array.from(lengthsOf(scenario))
    this.strips = this.lengths.map((length) => drawnLength(length, tape.leg, tape.stretch))
    this.shortest = kinds.reduce((least, [, kind]) => Math.min(least, sizeEnds(kind).least.length), Infinity)
    this.longest = kinds.reduce((most, [, kind]) => Math.max(most, sizeEnds(kind).most.length), 0)
    this.sides = kinds.some(([, kind]) => varies(kind))
      ? kinds.map(([name, kind]) => sidesOf(draws, name, kind))
      : null
  }

  /** Whether cases of a kind come in different sizes: then each has its own width and height too. */
  get vary(): boolean {
    return this.sides !== null
  }

  /** Gives a case of `kind` that arrives now its size. */
  give(cases: Kept, item: number, kind: number): void {
    if (this.sides === null) {
      cases.length[item] = this.lengths[kind]!
      cases.strip[item] = this.strips[kind]!
      return
    }
    const { length, width, height } = this.sides[kind]!
    length.next()
    width.next()
    height.next()
    cases.length[item] = length.value
    cases.strip[item] = drawnLength(length.value, this.leg, this.stretch)
    cases.width[item] = width.value
    cases.height[item] = height.value
  }
}

/** One stream a kind and side, so that no other one changes what is drawn. */
function sidesOf(draws: Draws, name: string, kind: CaseKind): Sides {
  const drawn = (side: keyof Sides) => {
    const given = sideOf(kind, side)
    const law = typeof given === 'number' ? { law: 'constant' as const, value: given } : given
    return draws(`cases.${name}`, side, law)
  }
  return { length: drawn('length'), width: drawn('width'), height: drawn('height') }
}
