/** The figure of a result by the name of its measure. */

import type { Figure } from '../catalogue/figure.js'
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

/** Every figure of a line, in the order of the document. */
export const everyFigure = ({ measures, arrivals, equipment, crew }: LineResult): Figure[] =>
  [
    measures,
    ...Object.values(arrivals),
    ...Object.values(equipment).flatMap((piece) => [
      piece.measures,
      piece.states,
      ...Object.values(piece.heads ?? {}),
      piece.effectiveness ?? {},
    ]),
    ...Object.values(crew),
  ].flatMap((figures) => Object.values(figures))
