/** The closure index of each case: the chosen tape, and 2 inch and 3 inch side by side, against a closure known to hold. */

import { weighed } from '../kinds/by-hand.js'
import { headsOf } from '../kinds/sealer/heads.js'
import { drawnOf } from '../kinds/sealer/rolls.js'
import { has } from '../kinds/traits.js'
import { outsideSize } from '../scenario/outside.js'
import type { Scenario } from '../scenario/schema.js'
import { type ClosureIndex, closureIndex, coverage } from '../trade/closure.js'
import { takesTape } from '../trade/head.js'
import { breakEvenFailures } from '../trade/money.js'
import { massPerMetre } from '../trade/tape.js'
import type { LineHand } from './line.js'
import { hasSealer } from './pace.js'

/** The two machine tapes that the choice is mostly between, m: sold as 2 inch and as 3 inch. */
export const twoInch = 0.048
export const threeInch = 0.072

/** One width for one case. What cannot be worked out is null. */
interface WidthCompared {
  case: string
  width: number
  isChosen: boolean
  /** Tape on the flap that has less of it, m. */
  coverage: number | null
  /** Over the reference: above 1 is better. `seam` and `coverage` need the seam's gap and the centring error. */
  index: { leg: number; peel: number; seam: number | null; coverage: number | null } | null
}

/** What a width asks of machine and purse. */
interface WidthCost {
  width: number
  isChosen: boolean
  /** Heads that do not take it. */
  unfit: string[]
  /** kg and money for 1000 cases that pass the heads of one sealer; the price of other widths in proportion. */
  mass: number
  cost: number | null
}

/** 3 inch against 2 inch on this line. */
export interface ClosureComparison {
  reference: NonNullable<Scenario['closure']>['reference'] | null
  rows: WidthCompared[]
  widths: WidthCost[]
  /** Opened cases in 1000 that 3 inch must spare to pay for itself; null where price or value is not given. */
  breakEven: number | null
  /** What the index leans on where the scenario is silent. */
  notes: string[]
}

const widthsOf = ({ tape }: Scenario): number[] =>
  [...new Set([twoInch, threeInch, tape.width])].sort((a, b) => a - b)

/** Compares widths; null where no sealer tapes. */
export function compareClosures(scenario: Scenario, line: LineHand): ClosureComparison | null {
  if (!hasSealer(scenario)) return null
  const widths = widthsOf(scenario).map((width) => widthCost(scenario, line, width))
  const { closure } = scenario
  const kinds = Object.entries(scenario.cases)
  const heaviest = heaviestOf(scenario)
  const rows = kinds.flatMap(([name, kind]) =>
    widths.map(({ width, isChosen }) => compared(scenario, name, kind, width, isChosen, heaviest)),
  )
  const [two, three] = [twoInch, threeInch].map((width) => widths.find((each) => each.width === width)!)
  const value = meanValue(scenario, line)
  return {
    reference: closure?.reference ?? null,
    rows,
    widths,
    breakEven:
      two!.cost !== null && three!.cost !== null && value !== null
        ? breakEvenFailures(three!.cost - two!.cost, value)
        : null,
    notes: notesOf(scenario),
  }
}

function compared(
  { closure, tape }: Scenario,
  name: string,
  kind: Scenario['cases'][string],
  width: number,
  isChosen: boolean,
  heaviest: number | null,
): WidthCompared {
  const gap = closure?.['seam-gap']
  const offset = closure?.['centring-error']
  const isLaid = gap !== undefined && offset !== undefined
  const row: WidthCompared = {
    case: name,
    width,
    isChosen,
    coverage: isLaid ? coverage({ width, gap, offset }) : null,
    index: null,
  }
  const reference = closure?.reference
  if (!reference) return row
  const seam = outsideSize(kind).length
  const index: ClosureIndex = closureIndex(
    { width, leg: tape.leg, gap: gap ?? 0, offset: offset ?? 0, load: loadOf(closure, heaviest, kind), seam },
    {
      width: reference.width,
      leg: reference.leg,
      gap: reference['seam-gap'] ?? 0,
      offset: reference['centring-error'] ?? 0,
      load: 1,
      seam: reference['seam-length'] ?? seam,
    },
  )
  const known = (value: number) => (isLaid && Number.isFinite(value) ? value : null)
  row.index = { leg: index.leg, peel: index.peel, seam: known(index.seam), coverage: known(index.coverage) }
  return row
}

/** Weight of the heaviest case, kg; null where not every case has one. */
function heaviestOf({ cases }: Scenario): number | null {
  const weights = Object.values(cases).map(({ weight }) => weight ?? Number.NaN)
  const heaviest = weights.reduce((most, each) => Math.max(most, each), -Infinity)
  return Number.isNaN(heaviest) ? null : heaviest
}

/** Load on the closure of a case over that on the reference; cases lighter than the heaviest in proportion to their weight. */
function loadOf(
  closure: NonNullable<Scenario['closure']>,
  heaviest: number | null,
  kind: Scenario['cases'][string],
): number {
  const { load, reference } = closure
  if (!load) return 1
  const ofHeaviest = 'share' in load ? load.share : load.newtons / reference!.load!
  return heaviest === null ? ofHeaviest : (ofHeaviest * kind.weight!) / heaviest
}

function widthCost(scenario: Scenario, line: LineHand, width: number): WidthCost {
  const { tape } = scenario
  const sealers = line.pieces.flatMap((piece) => {
    const keys = scenario.line[piece.name]!
    return has(keys, 'tapes') ? [{ piece, heads: headsOf(keys) }] : []
  })
  const total = sealers.reduce((sum, { piece }) => sum + piece.flow, 0)
  const drawn = drawnOf(scenario)
  const perCase = sealers.reduce((sum, { piece, heads }) => {
    const strip = weighed(drawn, piece.mix)
    return sum + (total > 0 ? piece.flow / total : 1 / sealers.length) * heads.length * strip
  }, 0)
  return {
    width,
    isChosen: width === tape.width,
    unfit: sealers.flatMap(({ piece, heads }) =>
      heads.flatMap(([head, { takes }]) =>
        takesTape(takes[0], takes[1], width) ? [] : [`${piece.name} ${head}`],
      ),
    ),
    mass: 1000 * perCase * massPerMetre(width, tape.thickness),
    cost: tape.price ? ((1000 * perCase) / tape.roll) * tape.price.amount * (width / tape.width) : null,
  }
}

/** Mean of what is lost with a case that opens, by share; null where a case that comes to a sealer says nothing. */
function meanValue(scenario: Scenario, line: LineHand): number | null {
  const sealers = line.pieces.filter((piece) => has(piece, 'tapes'))
  const coming = Object.keys(scenario.cases).map((_, index) =>
    sealers.reduce((sum, piece) => sum + piece.flow * piece.mix[index]!, 0),
  )
  const total = coming.reduce((sum, each) => sum + each, 0)
  const kinds = Object.entries(scenario.cases)
  if (total <= 0) return null
  if (kinds.some(([, kind], index) => coming[index]! > 0 && !kind['contents-value'])) return null
  return kinds.reduce(
    (sum, [, kind], index) => sum + (coming[index]! / total) * (kind['contents-value']?.amount ?? 0),
    0,
  )
}

function notesOf({ closure, cases }: Scenario): string[] {
  if (!closure?.reference) return []
  const notes: string[] = []
  if (!closure.load)
    notes.push('No load is given: each case is assumed to load its closure like the reference.')
  else if (Object.values(cases).some(({ weight }) => weight === undefined) && Object.keys(cases).length > 1)
    notes.push('Not every case has a weight: all are assumed to load their closure like the heaviest.')
  if (closure['seam-gap'] === undefined || closure['centring-error'] === undefined)
    notes.push('Without seam-gap and centring-error the seam and the coverage are not compared.')
  else if (closure.reference['seam-gap'] === undefined || closure.reference['centring-error'] === undefined)
    notes.push(
      'The reference has no seam-gap or no centring-error. It is assumed to be closed tight with centred tape, which makes the other closures look worse.',
    )
  if (closure.reference['seam-length'] === undefined)
    notes.push('The reference has no seam-length: its seam is assumed as long as that of the case.')
  return notes
}
