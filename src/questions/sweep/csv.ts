/** Results of a sweep as CSV, unrounded and in SI: a row a design, and a row a difference. */
import type { DifferenceFigure } from '../../answers/difference-figure.js'
import { changesText } from '../../answers/flow.js'
import { type Figure, wholeOf } from '../../catalogue/figure.js'
import { csvText, yesOrNo } from '../../report/csv.js'
import type { SweepResult } from './document.js'

/** A row a design: its values as they were written, and each figure with its interval; the scenario as it stands comes first. */
export function sweepDesignsCsv({ points, measures, base, factors, drawn }: SweepResult): string {
  const head = [
    'design',
    ...(factors.length > 0 ? factors.map(({ path }) => path) : ['changes']),
    ...measures.flatMap(({ name, unit }) => [
      `${name} [${unit}]`,
      `${name}, low`,
      `${name}, high`,
      `${name}, sd`,
      ...(drawn ? [`${name}, low of both kinds`, `${name}, high of both kinds`] : []),
    ]),
  ]
  const figures = (of: Record<string, Figure>) =>
    measures.flatMap(({ name }) => {
      const { mean, low, high, sd } = of[name]!
      const whole = wholeOf(of[name]!)
      return [mean, low, high, sd, ...(drawn ? [whole.low, whole.high] : [])].map((value) => value ?? '')
    })
  const own = factors.map(({ base: value, unit }) => (value === null ? '' : `${value} ${unit}`.trim()))
  const rows = points.map(({ set, measures: of }, index) => [
    index + 1,
    ...(factors.length > 0 ? factors.map(({ path }) => String(set[path])) : [changesText(set, '; ')]),
    ...figures(of),
  ])
  return csvText(
    [head, ['as it stands', ...(factors.length > 0 ? own : ['']), ...figures(base)], ...rows],
    yesOrNo,
  )
}

/** A row a difference that was judged: steps along a curve, inputs moved alone, effects of a plan; none of a grid. */
export function sweepDifferencesCsv(result: SweepResult): string {
  const { curve, each, plan, points, factors, measures, drawn } = result
  const cells = (
    figure: Pick<DifferenceFigure, 'unit' | 'mean' | 'low' | 'high' | 'family' | 'p' | 'isShown' | 'inputs'>,
  ) => {
    const { unit, mean, low, high, family, p, isShown, inputs } = figure
    const both = drawn ? [inputs?.low, inputs?.high] : []
    return [unit, mean, low, high, family, p, isShown, ...both].map((value) => value ?? '')
  }
  const at = (place: number) => `${points[place]!.at[0]} ${factors[0]!.unit}`.trim()
  const along = Object.entries(curve?.measures ?? {}).flatMap(([name, { steps, onward }]) =>
    [...steps, ...onward].map(({ from, to, difference }) => [
      ...[factors[0]!.path, at(from), at(to), name],
      ...cells(difference),
    ]),
  )
  const moved = (each?.inputs ?? []).flatMap((input) =>
    measures.flatMap(({ name }) =>
      (['low', 'high'] as const).flatMap((side) => {
        const difference = input.differences[name]![side]
        return difference ? [[input.path, input.base, input[side], name, ...cells(difference)]] : []
      }),
    ),
  )
  const effects = measures.flatMap(({ name, unit }) => {
    const of = plan?.[name]
    return (of?.effects ?? []).map((effect) => {
      const { values, unit: word } = factors.find(({ path }) => path === effect.path)!
      const [from, to] = values.map((value) => `${value} ${word}`.trim())
      return [effect.path, from, to, name, ...cells({ ...effect, unit, family: of!.family, p: null })]
    })
  })
  const head = [
    ...['input', 'from', 'to', 'measure', 'unit', 'difference', 'low', 'high', 'family', 'p', 'shown'],
    ...(drawn ? ['low of both kinds', 'high of both kinds'] : []),
  ]
  return csvText([head, ...along, ...moved, ...effects], yesOrNo)
}
