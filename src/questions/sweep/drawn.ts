/** Draws of the inputs beside the points of a curve: each point sees the same draws, and none of what is varied. */
import { drawsAsked, drawsOf } from '../../answers/draws.js'
import type { DrawsAsked } from '../../answers/with-inputs.js'
import { misuse } from '../../scenario/fault.js'
import type { ReadScenario } from '../../scenario/read.js'
import type { SweepOptions, Varied } from './asked.js'
import type { SweepKind } from './document.js'
import type { Outcome } from './outcomes.js'
import type { Planned } from './points.js'
import type { Sample } from './sample.js'

/** Points differ by little luck on the same random numbers, so that fewer shifts do for each draw. */
const shiftsOfDraw = 10

/** What is asked for: draws of a curve alone. Throws `Fault` `asked`. */
export function sweepDraws(
  { draws, inputs }: SweepOptions,
  kind: SweepKind,
  varied: readonly Varied[],
  loaded: ReadScenario,
  shifts: number,
): DrawsAsked | null {
  if (kind === 'curve')
    return drawsAsked({ draws, inputs }, { evidence: evidenceOf(varied, loaded) }, shifts, shiftsOfDraw)
  if (draws !== undefined)
    throw misuse(
      '--draws: inputs are drawn along a curve alone, with one --vary; here they are held as they are given',
    )
  return null
}

/** What is not varied, nor a part of it, nor holds it. */
const evidenceOf = (varied: readonly Varied[], { evidence }: ReadScenario) =>
  evidence.filter(({ path }) =>
    varied.every(
      (each) => !`${each.path}.`.startsWith(`${path}.`) && !`${path}.`.startsWith(`${each.path}.`),
    ),
  )

/** The draws of each design, as designs of their own after all others. */
export function drawnPoints(
  designs: readonly Planned[],
  varied: readonly Varied[],
  loaded: ReadScenario,
  asked: DrawsAsked | null,
): Planned[] {
  if (asked === null) return []
  const evidence = evidenceOf(varied, loaded)
  return designs.flatMap(({ scenario, key, set, at }, design) =>
    drawsOf({ scenario, evidence, key }, asked, design).map((draw) => ({
      ...{ set, at, shifts: asked.shifts },
      ...draw,
    })),
  )
}

/** Of a design the numbers of its draws; of one that locks up there are none. */
export const samplesOfDraws = (
  { key }: Planned,
  asked: DrawsAsked | null,
  outcomes: ReadonlyMap<string, Outcome>,
): Record<string, Sample>[] =>
  Array.from({ length: asked?.draws ?? 0 }, (_, index) => outcomes.get(`${key} draw ${index + 1}`)).flatMap(
    (outcome) => (outcome && 'samples' in outcome ? [outcome.samples] : []),
  )
