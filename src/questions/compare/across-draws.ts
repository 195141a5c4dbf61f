/** In what share of what the inputs may be a design is better than another: both see the same draws and the same shifts. */
import type { DifferenceFigure } from '../../answers/difference-figure.js'
import { measureName, measuresOf, observationsOf, type StudyMeasure } from '../../answers/figures.js'
import type { ShiftResult } from '../../line/line.js'
import type { Drawn } from './judge.js'

/** What a measure comes to over shifts; NaN where they say nothing. */
export function comesTo(measure: StudyMeasure, shifts: readonly ShiftResult[]): number {
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
