/** What each input adds to what is not known of the figures that are asked for first, as documents tell it. */
import type { MeasureName } from '../catalogue/measures.js'
import type { Evidence, Known } from '../scenario/known.js'
import { contributionsOf } from '../statistics/contributions.js'
import type { Layout } from '../statistics/layout.js'
import { measureName, measureNamed, type StudyMeasure } from './figures.js'
import type { Estimates } from './line-result.js'
import { type Draws, layoutOfMeasure } from './with-inputs.js'

/** An input and its part. */
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
  measures: readonly StudyMeasure[],
  estimates: Estimates,
): DrawsTold {
  return {
    draws: draws.draws,
    shifts: draws.shifts,
    contributions: toldApart.flatMap((name) => {
      const measure = measureNamed(measures, name)
      if (!measure || !estimates.get(measureName(measure))?.inputs) return []
      const told = { measure: measureName(measure), label: measure.label }
      return contributionsTo(told, layoutOfMeasure(measure, draws), draws, evidence) ?? []
    }),
  }
}

/** What each input adds to what is not known of a figure, by the layout of its draws; null where nothing can be told apart. */
export function contributionsTo(
  told: Pick<ContributionsTold, 'measure' | 'label'>,
  layout: Layout | null,
  draws: Draws,
  evidence: readonly Evidence[],
): ContributionsTold | null {
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
    ...told,
    explained: found.explained,
    shares: evidence
      .map(({ path, known }, input) => ({ path, share: found.shares[input]! * scale, data: dataOf(known) }))
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
