/** What moving inputs does, one at a time or all at once by a plan: which of them are shown to change each measure, and by how much. */
import { differenceUnit, type Shown } from '../../answers/difference.js'
import { halfWidth } from '../../answers/inputs-words.js'
import { briefly } from '../../catalogue/unit-name.js'
import { figures as ofFigures, words as ofWords } from '../../report/cell.js'
import { counted, grouped, listed, percentText } from '../../report/format.js'
import type { Table } from '../../report/report.js'
import type { EachInput, PlanOf, SweepMeasure, SweepResult } from './document.js'
import {
  differenceCell,
  differenceWords,
  measureSubject,
  measureWords,
  pointCell,
  rangeWords,
  valueText,
} from './words.js'

/** Inputs shown and drawn of each measure. */
export const mostInputs = 20

/** Of inputs and effects those that a sentence names. */
const mostNamed = 3

/** An input with its ends as one measure sees them, the largest first. */
export function rankedInputs({ each }: SweepResult, { name }: SweepMeasure): EachInput[] {
  const { inputs, order } = each!
  const known = new Map(inputs.map((input) => [input.path, input]))
  return order[name]!.map((path) => known.get(path)!)
}

/** Those of which a difference of either end is shown. */
export const shownInputs = (result: SweepResult, measure: SweepMeasure): EachInput[] =>
  rankedInputs(result, measure).filter(({ differences }) => {
    const { low, high } = differences[measure.name]!
    return low?.isShown || high?.isShown
  })

/** The sentences at the head of the report of inputs that move alone: one a measure. */
export function eachHeadline(result: SweepResult): string[] {
  return result.measures.map((measure) => {
    const { length: all } = rankedInputs(result, measure)
    const shown = shownInputs(result, measure)
    const subject = measureSubject(measure)
    if (shown.length === 0) return `${subject}: none of the ${counted(all, 'input')} is shown to change it.`
    const top = shown
      .slice(0, mostNamed)
      .map((input) => `${input.path} (${endsWords(input, measure, result)})`)
    const rest = all - shown.length
    return `${subject}: changed most by ${listed(top)}. ${counted(shown.length, 'input')} of ${all} ${shown.length === 1 ? 'is' : 'are'} shown to change it${rest > 0 ? `, ${rest} not` : ''}.`
  })
}

/** `6.4 s to 5.76 s: +0.9 ± 0.1 cases/min; to 7.04 s: -0.8 ± 0.1 cases/min`. */
function endsWords(input: EachInput, { name }: SweepMeasure, result: SweepResult): string {
  const ends = (['low', 'high'] as const).flatMap((side) => {
    const difference = input.differences[name]![side]
    return difference ? [`${input[side]}: ${differenceWords(difference, result)}`] : []
  })
  return ends.join('; ')
}

/** A table of inputs a measure. */
export function eachTables(result: SweepResult): Table[] {
  return result.measures.map((measure): Table => {
    const ranked = rankedInputs(result, measure)
    const shown = ranked.slice(0, mostInputs)
    const { word } = differenceUnit(briefly(measure).unit, result.display)
    const inUnit = word === '' ? '' : `, ${word}`
    return {
      title: `${measureSubject(measure)}: effect of each input alone`,
      // `5.76 s: +0.96 ± 0.03`: the unit stands above
      note: `In brackets: not shown.${shown.length < ranked.length ? ` The first ${shown.length} of ${ranked.length}; differences.csv has all.` : ''}`,
      columns: ofWords('input', 'as it stands', `lower${inUnit}`, `higher${inUnit}`),
      behind: 'each',
      rows: shown.map((input) => [
        { path: input.path },
        input.base,
        ...(['low', 'high'] as const).map((side) => {
          const difference = input.differences[measure.name]![side]
          return difference ? `${input[side]}: ${differenceCell(difference, result, '').join(' ')}` : null
        }),
      ]),
    }
  })
}

/** An effect as a difference, so that it is printed like one. */
export const effectFigure = (effect: PlanOf['effects'][number], { unit }: SweepMeasure): Shown => ({
  ...effect,
  unit,
})

/** Half-width in standard deviations, with what is not known of the inputs. */
function standardisedHalf(effect: PlanOf['effects'][number]): number {
  const { standardisedHalf: ofLuck, inputs, mean, low, high } = effect
  return inputs && high > low
    ? (ofLuck * halfWidth({ mean }, inputs)) / halfWidth({ mean }, { low, high })
    : ofLuck
}

/** Effects of a measure, the largest first; none where no straight line was fitted. */
export const rankedEffects = (of: PlanOf | null | undefined): PlanOf['effects'] =>
  (of?.effects ?? []).toSorted((a, b) => Math.abs(b.mean) - Math.abs(a.mean))

/** Below this share explained a straight line says little. Project rule. */
const little = 0.5

const explainedWords = (share: number) =>
  share > 0.9995 ? 'nearly all' : percentText(Math.round(share * 1000) / 1000)

/** The sentences at the head of the report of a plan: one a measure. */
export function planHeadline(result: SweepResult): string[] {
  return result.measures.map((measure) => {
    const subject = measureSubject(measure)
    const of = result.plan![measure.name]
    if (!of)
      return `${subject}: no linear regression can be fitted to these designs; take more designs, or factors that do not depend on each other.`
    if (of.explained === null) return `${subject}: the same in every design.`
    const shown = rankedEffects(of).filter(({ isShown }) => isShown)
    const explained = `a linear regression explains ${explainedWords(of.explained)} of the differences between designs (R²)${of.explained < little ? ', so look at single factors as curves' : ''}`
    if (shown.length === 0) return `${subject}: no factor is shown to change it; ${explained}.`
    const words = shown
      .slice(0, mostNamed)
      .map((effect) => `${effect.path} ${differenceWords(effectFigure(effect, measure), result)}`)
    return `${subject}: from its lowest to its highest value ${listed(words)}; ${explained}.`
  })
}

/** A table of effects a measure, and all designs. */
export function planTables(result: SweepResult): Table[] {
  const { factors, measures, points } = result
  const range = (path: string) => rangeWords(factors.find((each) => each.path === path)!)
  return [
    ...measures.flatMap((measure): Table[] => {
      const of = result.plan![measure.name]
      if (!of || of.explained === null) return []
      return [
        {
          title: `${measureSubject(measure)}: effect of each factor`,
          note: `In brackets: not shown. The linear regression explains ${explainedWords(of.explained)} (R²), with ${of.degreesOfFreedom} degrees of freedom.`,
          columns: [...ofWords('factor', 'over'), ...ofFigures('brings', 'standardised')],
          behind: 'plan',
          rows: rankedEffects(of).map((effect) => [
            { path: effect.path },
            range(effect.path),
            differenceCell(effectFigure(effect, measure), result),
            `${grouped(effect.standardised, 2)} ± ${grouped(standardisedHalf(effect), 2)}`,
          ]),
        },
      ]
    }),
    {
      title: 'All designs',
      columns: [
        ...ofWords('design'),
        ...ofFigures(...factors.map(({ path }) => path), ...measures.map(measureWords)),
      ],
      rows: points.map(({ at, measures: figures }, index) => [
        String(index + 1),
        ...at.map((value, place) => valueText(value, factors[place]!, 4)),
        ...measures.map(({ name }) => pointCell(figures[name], name)),
      ]),
    },
  ]
}
