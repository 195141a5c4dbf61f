/** What a straight line through the designs of a plan says: effect of each factor, and how much of it all that explains. */
import type { Shown } from '../../answers/difference.js'
import { halfWidth } from '../../answers/inputs-words.js'
import { figures as ofFigures, words as ofWords } from '../../report/cell.js'
import { grouped, listed, percentText } from '../../report/format.js'
import type { Table } from '../../report/report.js'
import type { PlanOf, SweepMeasure, SweepResult } from './document.js'
import {
  differenceCell,
  differenceWords,
  measureSubject,
  measureWords,
  pointCell,
  rangeWords,
  valueText,
} from './words.js'

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

/** Effects of a measure, the largest first. */
export const rankedEffects = ({ effects }: PlanOf) =>
  [...effects].sort((a, b) => Math.abs(b.mean) - Math.abs(a.mean))

/** Below this share explained a straight line says little. Project rule. */
const little = 0.5

const explainedWords = (share: number) =>
  share > 0.9995 ? 'nearly all' : percentText(Math.round(share * 1000) / 1000)

/** The sentences at the head of the report: one a measure. */
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
      .slice(0, 3)
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
