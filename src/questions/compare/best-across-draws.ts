/** In what share of what the inputs may be each design is the best one: all see the same draws. */
import { measureName, type StudyMeasure } from '../../answers/figures.js'
import type { Draws } from '../../answers/with-inputs.js'
import { comesTo } from './across-draws.js'
import type { Best, Goal } from './best.js'

/** How the choice fares where the inputs are others. */
export interface BestAcross {
  /** Draws in which a figure of the measure is known. */
  draws: number
  /** By design, in how many of them it is the best or within the amount of the best; none of those that do not keep what is required. */
  best: Record<string, number>
  /** How far the pick lies behind the best where it lies farthest, in the unit of the measure; null where none is picked. */
  behind: number | null
  /** What the designs must keep, each with the name of its measure. */
  among: { require: string; measure: string }[]
}

type Sought = Pick<Goal, 'measures' | 'isLargerBetter' | 'within' | 'conditions'>

/** How far each design lies behind the best of the draw, 0 of that itself; NaN of one of which nothing is known. */
export function behindBest(figures: readonly number[], isLargerBetter: boolean): number[] {
  const known = figures.filter((figure) => !Number.isNaN(figure))
  const best = isLargerBetter ? Math.max(...known) : Math.min(...known)
  return figures.map((figure) => Math.abs(figure - best))
}

/** Of designs in their order, with their draws. Which of them keep what is required was told with inputs as they are given. */
export function bestAcross(
  { measures, isLargerBetter, within, conditions }: Sought,
  { pick, designs }: Best,
  names: readonly string[],
  draws: readonly Draws[],
): BestAcross {
  const left = designs.flatMap(({ verdict }, design) => (verdict === 'refused' ? [] : [design]))
  const figureOf = (design: number, draw: number) =>
    comesTo(measures[design] as StudyMeasure, draws[design]!.of[draw]!.shifts)
  const behind = Array.from({ length: draws[0]!.of.length }, (_, draw) =>
    behindBest(
      left.map((design) => figureOf(design, draw)),
      isLargerBetter,
    ),
  ).filter((each) => each.some((far) => !Number.isNaN(far)))
  const place = pick === null ? -1 : left.indexOf(pick)
  const ofPick = place < 0 ? [] : behind.map((each) => each[place]!).filter((far) => !Number.isNaN(far))
  return {
    draws: behind.length,
    best: Object.fromEntries(
      left.map((design, at) => [names[design]!, behind.filter((each) => each[at]! <= within).length]),
    ),
    behind: ofPick.length === 0 ? null : Math.max(...ofPick),
    among: (conditions[0] ?? []).map(({ text, measure }) => ({
      require: text,
      measure: measureName(measure),
    })),
  }
}
