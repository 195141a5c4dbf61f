/** In what share of what the inputs may be a design is better than another, or the best of all: they see the same draws and the same shifts. */
import type { DifferenceFigure } from '../../answers/difference-figure.js'
import { measureName, measuresOf, observationsOf, type StudyMeasure } from '../../answers/figures.js'
import type { Draws } from '../../answers/with-inputs.js'
import type { ShiftResult } from '../../line/line.js'
import type { Best, Goal } from './best.js'
import type { Drawn } from './judge.js'

/** What a measure comes to over shifts; NaN where they say nothing. */
function comesTo(measure: StudyMeasure, shifts: readonly ShiftResult[]): number {
  const { values, overs } = observationsOf(measure, shifts)!
  const said = values.filter((value) => !Number.isNaN(value))
  const sum = (numbers: readonly number[]) => numbers.reduce((total, value) => total + value, 0)
  return overs === null ? sum(said) / said.length : sum(values) / sum(overs)
}

/** The difference with the draws in which there is more, and less, of it; as it is where inputs are held fixed, or the measure is none of one design alone. */
export function withDraws(
  figure: DifferenceFigure,
  of: Drawn,
  against: Drawn,
  name: string,
): DifferenceFigure {
  const [here, there] = [of, against].map((each) =>
    measuresOf(each).find((measure) => measureName(measure) === name),
  )
  if (!of.draws || !against.draws || !here || !there || here.kind === 'quantile') return figure
  const others = against.draws.of
  const differences = of.draws.of
    .map(({ shifts }, draw) => comesTo(here, shifts) - comesTo(there, others[draw]!.shifts))
    .filter((difference) => !Number.isNaN(difference))
  const number = (is: (difference: number) => boolean) => differences.filter(is).length
  const acrossDraws = {
    more: number((difference) => difference > 0),
    less: number((difference) => difference < 0),
    draws: differences.length,
  }
  return { ...figure, acrossDraws }
}

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
