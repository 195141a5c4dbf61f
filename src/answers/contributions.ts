/** What each input adds to what is not known of the figures that are asked for first, as documents tell it. */
import { mean, quantile } from 'simple-statistics'
import type { MeasureName } from '../catalogue/measures.js'
import { currencyOf, unitName } from '../catalogue/unit-name.js'
import type { ShiftResult } from '../line/line.js'
import type { Evidence, Known } from '../scenario/known.js'
import { contributionsOf } from '../statistics/contributions.js'
import type { Estimate } from '../statistics/estimate.js'
import { figureOfScale, inScale, type Layout, rowOf, type Scale, scaleOf } from '../statistics/layout.js'
import { standardNormal } from '../statistics/quantile.js'
import {
  measureName,
  measureNamed,
  measuresOf,
  observationsOf,
  type Simulated,
  type StudyMeasure,
} from './figures.js'
import type { Estimates } from './line-result.js'
import { type Draws, layoutOfMeasure } from './with-inputs.js'

/** An end of what an input may be: 5 % or 95 % of what was drawn of it, in SI, of a law its mean; and the figure there, the other inputs as drawn. */
export interface InputEnd {
  input: number
  figure: number
}

/** An input and its part, with what the figure is at its ends. */
export interface Contribution extends InputShare {
  low: InputEnd
  high: InputEnd
}

/** The part of an input. */
export interface InputShare {
  path: string
  /** Of what is not known of the inputs, 0 to 1; the rest is theirs together, or is bent too much for straight lines. */
  share: number
  /** Events or observations that it rests on; null of a guess. */
  data: number | null
}

export interface ContributionsTold {
  measure: MeasureName
  label: string
  /** Share of what the draws differ by that straight lines in the scores of the inputs explain (adjusted R^2). */
  explained: number
  unit: string
  /** The figure in the middle of the draws, about which the ends lie. */
  middle: number
  /** The most first. */
  shares: Contribution[]
}

/** Draws of the inputs as a document tells of them. */
export interface DrawsTold {
  draws: number
  /** Of each draw. */
  shifts: number
  /** Figures whose inputs are told apart; of some nothing can be. */
  contributions: ContributionsTold[]
}

/** Figures that are asked for first. */
const toldApart = [
  'throughput',
  'target-held',
  'time-in-system',
  'cost-per-1000',
] as const satisfies MeasureName[]

/** What a document tells of its draws. */
export function drawsTold(
  draws: Draws,
  evidence: readonly Evidence[],
  {
    line,
    scenario,
    shifts,
  }: Pick<Simulated, 'line' | 'scenario'> & {
    /** Shifts on whose random numbers those of the draws are; null where these have their own. */
    shifts: readonly ShiftResult[] | null
  },
  estimates: Estimates,
): DrawsTold {
  const measures = measuresOf({ line, scenario })
  const currency = currencyOf(scenario)
  return {
    draws: draws.draws,
    shifts: draws.shifts,
    contributions: toldApart.flatMap((name) => {
      const measure = measureNamed(measures, name)
      if (!measure) return []
      const estimate = estimates.get(measureName(measure))
      const layout = layoutOfMeasure(measure, draws)
      if (!estimate?.inputs || layout === null) return []
      const told = {
        measure: measureName(measure),
        label: measure.label,
        unit: unitName(measure.unit, currency),
      }
      const middle = middleOf(measure, estimate, { draws, layout, shifts })
      return contributionsTo(told, { layout, scale: scaleOfMeasure(measure), middle }, draws, evidence) ?? []
    }),
  }
}

export const scaleOfMeasure = ({ kind, isTimeOfEvents = false }: StudyMeasure): Scale =>
  kind === 'quantile' ? 'itself' : scaleOf({ kind, isTimeOfEvents })

/**
 * The middle of the draws in the scale of the measure: the estimate, and what the draws come to less what the same shifts come to with inputs as they
 * are given. So what these few shifts owe to luck is not taken for the inputs. Where the draws have shifts of their own, what they come to.
 */
function middleOf(
  measure: StudyMeasure,
  estimate: Estimate,
  { draws, layout, shifts }: { draws: Draws; layout: Layout; shifts: readonly ShiftResult[] | null },
): number {
  if (shifts === null) return mean([...layout.means])
  const observed = observationsOf(measure, shifts.slice(0, draws.shifts))
  const given = observed && rowOf(observed)
  if (!given) return Number.NaN
  const own = inScale(estimate.mean, estimate.n, scaleOfMeasure(measure))
  return own + mean([...layout.means]) - mean([...given])
}

/** The ends of an input: 5 % and 95 % of its draws, where its normal score is as far off. */
const [lowEnd, highEnd] = [0.05, 0.95]

/** Cases, times and money are not below 0. */
const atLeastNothing = (figure: number): number => Math.max(0, figure)

/** Draws of a figure: their layout, its scale, and their middle in that. */
export interface InScale {
  layout: Layout
  scale: Scale
  middle: number
}

/** What each input adds to what is not known of a figure; null where nothing can be told apart. */
export function contributionsTo(
  told: Pick<ContributionsTold, 'measure' | 'label' | 'unit'>,
  { layout, scale: figureScale, middle }: InScale,
  draws: Draws,
  evidence: readonly Evidence[],
): ContributionsTold | null {
  // of a draw that says nothing there is no row: who is who is not known then
  if (layout.means.length !== draws.of.length) return null
  const found = contributionsOf(
    draws.of.map(({ inputs }) => inputs),
    layout.means,
  )
  if (found === null) return null
  // of what the draws differ by a part is luck of their shifts, which no input explains
  const ofInputs = layout.ofDraws > 0 ? (layout.inputs * layout.shifts) / layout.ofDraws : 0
  const all = found.shares.reduce((sum, share) => sum + share, 0)
  const scale = ofInputs > 0 ? 1 / Math.max(ofInputs, all) : 0
  const end = (input: number, at: number): InputEnd => ({
    input: quantile(
      draws.of.map(({ inputs }) => inputs[input]!),
      at,
    ),
    figure: figureAt(middle + found.slopes[input]! * standardNormal(at)),
  })
  const figureAt = (value: number) => atLeastNothing(figureOfScale(value, figureScale))
  return {
    ...told,
    explained: found.explained,
    middle: figureAt(middle),
    shares: evidence
      .map(({ path, known }, input) => ({
        ...{ path, share: found.shares[input]! * scale, data: dataOf(known) },
        ...{ low: end(input, lowEnd), high: end(input, highEnd) },
      }))
      .sort((a, b) => b.share - a.share),
  }
}

function dataOf(known: Known): number | null {
  switch (known.form) {
    case 'count':
      return known.events
    case 'fitted':
    case 'observed':
      return known.observations
    case 'guess':
      return null
  }
}
