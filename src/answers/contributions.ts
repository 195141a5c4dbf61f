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
import { measureNamed, measuresOf, observationsOf, type Simulated, type StudyMeasure } from './figures.js'
import type { Estimates } from './line-result.js'
import { type Draws, layoutOfMeasure } from './with-inputs.js'

/** An end of what an input may be: 5 % or 95 % of what was drawn of it, in SI, of a law its mean; and the figure there, the other inputs as drawn. */
export interface InputEnd {
  input: number
  figure: number
}

/** An input and its part, with what the figure is at its ends. */
export interface ContributionWithEnds extends Contribution {
  low: InputEnd
  high: InputEnd
}

/** The part of an input. */
export interface Contribution {
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
  /** The most first. */
  shares: Contribution[]
}

/** The same with what the figure is at the ends of each input. */
export interface InputEndsTold extends ContributionsTold {
  unit: string
  /** The figure in the middle of the draws, about which the ends lie. */
  middle: number
  shares: ContributionWithEnds[]
}

/** Draws of the inputs as a document tells of them. */
export interface DrawsTold {
  draws: number
  /** Of each draw. */
  shifts: number
  /** Figures whose inputs are told apart; of some nothing can be. */
  contributions: InputEndsTold[]
}

/** Figures that are asked for first. */
const toldApart = [
  'throughput',
  'target-held',
  'time-in-system',
  'cost-per-1000',
] as const satisfies MeasureName[]

/** What a document tells of its draws. `shifts`: those of the study with inputs as they are given, the first of which the draws saw too; none where they saw others. */
export function drawsTold(
  draws: Draws,
  evidence: readonly Evidence[],
  { line, scenario, shifts }: Pick<Simulated, 'line' | 'scenario' | 'shifts'>,
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
      const estimate = estimates.get(name)
      if (!estimate?.inputs) return []
      const layout = layoutOfMeasure(measure, draws)
      const parts = partsOf(layout, draws, evidence)
      if (layout === null || parts === null) return []
      const told = { measure: name, label: measure.label, unit: unitName(measure.unit, currency) }
      const middle = middleOf(measure, estimate, layout, shifts)
      return [{ ...told, ...endsTold(parts, draws, middle, scaleOfMeasure(measure)) }]
    }),
  }
}

const scaleOfMeasure = ({ kind, isTimeOfEvents = false }: StudyMeasure): Scale =>
  kind === 'quantile' ? 'itself' : scaleOf({ kind, isTimeOfEvents })

/** The part of each input, with its slope: what a step of 1 of its normal score brings, in the scale of the measure; `input`: its place in the evidence. */
interface Parts {
  explained: number
  inputs: (Contribution & { slope: number; input: number })[]
}

/** By the layout of the draws of a figure; null where nothing can be told apart. */
function partsOf(layout: Layout | null, draws: Draws, evidence: readonly Evidence[]): Parts | null {
  // of a draw that says nothing there is no row: who is who is not known then
  if (layout === null || layout.means.length !== draws.of.length) return null
  const found = contributionsOf(
    draws.of.map(({ inputs }) => inputs),
    layout.means,
  )
  if (found === null) return null
  // of what the draws differ by a part is luck of their shifts, which no input explains
  const ofInputs = layout.ofDraws > 0 ? (layout.inputs * layout.shifts) / layout.ofDraws : 0
  const all = found.shares.reduce((sum, share) => sum + share, 0)
  const scale = ofInputs > 0 ? 1 / Math.max(ofInputs, all) : 0
  return {
    explained: found.explained,
    inputs: evidence
      .map(({ path, known }, input) => ({
        ...{ path, share: found.shares[input]! * scale, data: dataOf(known) },
        ...{ slope: found.slopes[input]!, input },
      }))
      .sort((a, b) => b.share - a.share),
  }
}

/** What each input adds to what is not known of a figure, by the layout of its draws; null where nothing can be told apart. */
export function contributionsTo(
  told: Pick<ContributionsTold, 'measure' | 'label'>,
  layout: Layout | null,
  draws: Draws,
  evidence: readonly Evidence[],
): ContributionsTold | null {
  const parts = partsOf(layout, draws, evidence)
  if (parts === null) return null
  const shares = parts.inputs.map(({ path, share, data }) => ({ path, share, data }))
  return { ...told, explained: parts.explained, shares }
}

/**
 * The middle of the draws in the scale of the measure: the estimate, and what the draws come to less what the same shifts come to with inputs as they
 * are given. So what these few shifts owe to luck is not taken for the inputs.
 */
function middleOf(
  measure: StudyMeasure,
  estimate: Estimate,
  layout: Layout,
  shifts: readonly ShiftResult[],
): number {
  const ofDraws = mean([...layout.means])
  if (shifts.length < layout.shifts) return ofDraws
  const observed = observationsOf(measure, shifts.slice(0, layout.shifts))
  const given = observed && rowOf(observed)
  if (!given) return ofDraws
  return inScale(estimate.mean, estimate.n, scaleOfMeasure(measure)) + ofDraws - mean([...given])
}

/** The ends of an input: 5 % and 95 % of its draws, where its normal score is as far off. */
const [lowEnd, highEnd] = [0.05, 0.95]

function endsTold(
  { explained, inputs }: Parts,
  draws: Draws,
  middle: number,
  scale: Scale,
): Pick<InputEndsTold, 'explained' | 'middle' | 'shares'> {
  // cases, times and money are not below 0
  const figureAt = (value: number) => Math.max(0, figureOfScale(value, scale))
  return {
    explained,
    middle: figureAt(middle),
    shares: inputs.map(({ slope, input, ...share }) => {
      const drawn = draws.of.map((each) => each.inputs[input]!)
      const end = (at: number): InputEnd => ({
        input: quantile(drawn, at),
        figure: figureAt(middle + slope * standardNormal(at)),
      })
      return { ...share, low: end(lowEnd), high: end(highEnd) }
    }),
  }
}

const dataOf = (known: Known): number | null =>
  known.form === 'count' ? known.events : known.form === 'guess' ? null : known.observations
