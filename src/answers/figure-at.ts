/** The figure of a result by the name of its measure. */

import { entriesOf, type Figure, type Figures } from '../catalogue/figure.js'
import type { LineResult } from './line-result.js'

/** The figure of a measure's name or full path, such as `throughput` or `measures.throughput`; undefined where there is none. */
export function figureAt(result: LineResult, name: string): Figure | undefined {
  const find = (within: unknown, steps: readonly string[]): unknown => {
    if (steps.length === 0) return within
    if (typeof within !== 'object' || within === null) return undefined
    const [step, ...rest] = steps as [string, ...string[]]
    const here = within as Record<string, unknown>
    // names of measures leave out the step `measures`
    return find(here[step], rest) ?? (here.measures ? find(here.measures, steps) : undefined)
  }
  return find(result, name.split('.')) as Figure | undefined
}

/** Every figure of a line with its path, in the order of the document. */
export function figuresAt({
  measures,
  arrivals,
  equipment,
  crew,
}: LineResult): [path: string[], figure: Figure][] {
  const at = (path: string[], figures: Figures<string> = {}) =>
    entriesOf(figures).map(([key, figure]): [string[], Figure] => [[...path, key], figure])
  return [
    ...at(['measures'], measures),
    ...Object.entries(arrivals).flatMap(([name, figures]) => at(['arrivals', name], figures)),
    ...Object.entries(equipment).flatMap(([name, piece]) => [
      ...at(['equipment', name, 'measures'], piece.measures),
      ...at(['equipment', name, 'states'], piece.states),
      ...Object.entries(piece.heads ?? {}).flatMap(([head, figures]) =>
        at(['equipment', name, 'heads', head], figures),
      ),
      ...at(['equipment', name, 'effectiveness'], piece.effectiveness),
    ]),
    ...Object.entries(crew).flatMap(([name, figures]) => at(['crew', name], figures)),
  ]
}
