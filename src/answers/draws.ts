/** Draws of the inputs beside a study: how many are asked for, their scenarios, and what they add to its figures. */
import { drawInputs } from '../inputs/draw.js'
import type { ShiftResult } from '../line/line.js'
import { Standstill } from '../line/standstill.js'
import { misuse } from '../scenario/fault.js'
import type { Evidence } from '../scenario/known.js'
import type { Design, Simulation } from '../shifts/simulation.js'
import { ofInputs } from '../statistics/both-kinds.js'
import type { Estimate, Observations } from '../statistics/estimate.js'
import { type Layout, layoutOfDraws, layoutOfQuantiles, scaleOf } from '../statistics/layout.js'
import { observationsOf, type StudyMeasure } from './figures.js'

export interface DrawsOptions {
  /** Draws of the inputs, 10 at least; 60 where nobody says. */
  draws?: number | undefined
  /** `fixed`: the scenario as it is given, as if all of it were known; `drawn` where nobody says. */
  inputs?: string | undefined
}

/** How many draws, and how many shifts of each. */
export interface DrawsAsked {
  draws: number
  shifts: number
}

/** How many are asked for, and how many shifts of each there are at most. Of 60 their spread is known to within 9 % of itself, one standard error. */
const usualDraws = 60
const usualEach = 25

/** What a question is asked of draws; null where inputs are held fixed or nothing is known of any. Throws `Fault` `asked`. */
export function drawsAsked(
  { draws, inputs = 'drawn' }: DrawsOptions,
  { evidence }: { evidence: readonly Evidence[] },
  shifts: number,
  shiftsEach = usualEach,
): DrawsAsked | null {
  if (inputs !== 'drawn' && inputs !== 'fixed')
    throw misuse(`--inputs ${inputs}: inputs are \`drawn\` from what they rest on, or held \`fixed\``)
  if (inputs === 'fixed') {
    if (draws !== undefined) throw misuse('--draws draws inputs, --inputs fixed holds them: choose one')
    return null
  }
  if (evidence.length === 0) {
    if (draws === undefined) return null
    throw misuse(
      '--draws: no value of the scenario says how well it is known, so that there is nothing to draw; write one such as `36 in 40000 cases` or `{guess: 90 s, between: [60 s, 150 s]}`',
    )
  }
  return { draws: draws ?? usualDraws, shifts: Math.min(shiftsEach, shifts) }
}

/** A draw: what was drawn of each input, in the order of the evidence, SI. */
export interface DrawOfInputs extends Design {
  inputs: readonly number[]
}

/** A draw with its shifts. */
export interface SimulatedDraw {
  inputs: readonly number[]
  shifts: readonly ShiftResult[]
}

/** Draws of a study: the shifts of each, and the paths of what was drawn. */
export interface Draws extends DrawsAsked {
  of: readonly SimulatedDraw[]
}

/** The draws of the inputs of a design, as designs of their own; `key`: of its shifts, `design`: its number. None where none are asked for. */
export const drawsOf = (
  of: Parameters<typeof drawInputs>[0] & { key?: string },
  asked: DrawsAsked | null,
  design = 0,
): DrawOfInputs[] =>
  Array.from({ length: asked?.draws ?? 0 }, (_, index) => {
    const { scenario, inputs } = drawInputs(of, of.scenario.study.seed, index + 1)
    return { scenario, inputs, key: [of.key ?? '', `draw ${index + 1}`].join(' ').trim(), drawOf: design }
  })

/** Their shifts; `first`: the number of the first of them among the designs of the simulation. Throws as `Simulation.first` does. */
export async function simulatedDraws(
  drawn: readonly DrawOfInputs[],
  asked: DrawsAsked | null,
  simulation: Simulation,
  first: number,
): Promise<Draws | null> {
  if (asked === null) return null
  const of: SimulatedDraw[] = []
  for (const [index, { inputs }] of drawn.entries()) {
    try {
      of.push({ inputs, shifts: await simulation.first(first + index, asked.shifts) })
    } catch (error) {
      if (!(error instanceof Standstill)) throw error
      const { piece, rule, fix, shift } = error
      throw new Standstill(
        piece,
        `with the inputs of draw ${index + 1} ${rule}`,
        `${fix}; or --inputs fixed, which asks only for the values as they are given`,
        shift,
      )
    }
  }
  return { ...asked, of }
}

/** What the draws say of a measure, in the scale in which it is combined; null where too few of them say anything. */
export function layoutOfMeasure(measure: StudyMeasure, { of }: Draws): Layout | null {
  if (measure.kind === 'quantile')
    return layoutOfQuantiles(
      of.map(({ shifts }) => shifts.map(({ values }) => values[measure.index]!)),
      measure.below!,
    )
  return layoutOfDraws(of.map(({ shifts }) => observationsOf(measure, shifts) as Observations))
}

/** The estimate of a measure with what its inputs add; as it is where it has no interval, or the draws say nothing. */
export function withInputs(
  measure: StudyMeasure,
  estimate: Estimate,
  draws: Draws | null,
  confidence: number,
): Estimate {
  if (draws === null || Number.isNaN(estimate.low) || Number.isNaN(estimate.high)) return estimate
  const layout = layoutOfMeasure(measure, draws)
  if (layout === null) return estimate
  return withLayout(estimate, layout, measure, confidence)
}

/** An estimate with what its inputs add by their layout. */
export function withLayout(
  estimate: Estimate,
  layout: Layout,
  { kind, isTimeOfEvents, unit }: Pick<StudyMeasure, 'kind' | 'isTimeOfEvents'> & { unit: string },
  confidence: number,
): Estimate {
  // nothing that is counted, lasts or costs is below 0, and no share that stays below 1 may pass it
  const ends = [
    Math.min(0, estimate.low),
    unit === 'share' && estimate.high <= 1 ? 1 : Number.POSITIVE_INFINITY,
  ] as const
  const scale = kind === 'quantile' ? 'itself' : scaleOf({ kind, isTimeOfEvents: isTimeOfEvents === true })
  return { ...estimate, inputs: ofInputs(estimate, layout, confidence, { scale, ends }) }
}
