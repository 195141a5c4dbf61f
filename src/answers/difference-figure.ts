/** A difference between two designs as documents tell it. */
import { type FigureOfInputs, wholeOf } from '../catalogue/figure.js'
import type { Estimate, Few, Observations } from '../statistics/estimate.js'
import { family } from '../statistics/family.js'
import type { Layout } from '../statistics/layout.js'
import {
  type PairedDifference,
  pairedDifference,
  pairedRatioDifference,
  pairedShareDifference,
} from '../statistics/paired.js'
import { addedByInputs, isOffNothing } from './difference-with-inputs.js'
import { orNull } from './line-result.js'

/** A figure with its interval; null where nothing is known, or where it never ends. */
export interface Interval {
  mean: number | null
  low: number | null
  high: number | null
}

/** The interval of an estimate, as documents have it. */
export const intervalOf = ({ mean, low, high }: Interval): Interval => ({
  mean: orNull(mean),
  low: orNull(low),
  high: orNull(high),
})

/** The interval that is printed and judged: of a difference of which inputs were drawn with what these add. */
export function wholeInterval(of: Interval & Pick<DifferenceFigure, 'inputs'>): Interval {
  const { low, high } = wholeOf(of)
  return { mean: of.mean, low, high }
}

/** The other way round: what is less by so much is more. */
export function turned({ mean, low, high }: Interval): Interval {
  const minus = (value: number | null) => (value === null ? null : -value)
  return { mean: minus(mean), low: minus(high), high: minus(low) }
}

/** A difference of a measure, design less the other one, as it stands in the document. */
export interface DifferenceFigure extends Interval {
  /** Pairs of shifts. */
  n: number
  /** How many of them differ, where these are too few for an interval. */
  few?: Few
  /** Spread of the differences over shifts. */
  sd: number | null
  unit: string
  label: string
  /** How many comparisons low and high hold for together; null: they hold for this one alone. */
  family: number | null
  /** The interval of this comparison alone. */
  alone: { low: number | null; high: number | null; inputs?: FigureOfInputs }
  /** Where inputs were drawn: the whole interval, with what is not known of them; low and high, p and sd are luck of the simulation alone. */
  inputs?: FigureOfInputs
  /** Least risk at which the family would show this difference; of one that is judged alone its own p-value. */
  p: number | null
  /** The family shows a difference, where inputs were drawn whatever they may be; null where it is judged alone. */
  isShown: boolean | null
  /** Variance with random numbers of their own over that with the same ones; null where that has no end. */
  varianceRatio: number | null
  /** Where inputs were drawn: in how many draws of what they may be the design has more, and less, than the other. */
  acrossDraws?: { more: number; less: number; draws: number }
  /** Of a difference that the user says matters: its amount, and how many shifts would show it, with a chance of 80 %. */
  matters: { amount: number; shifts: number | null } | null
}

/** What is told of the difference of a measure: by itself, with those of its family, and what that shows. */
export const differenceFigure = (
  { unit, label }: Pick<DifferenceFigure, 'unit' | 'label'>,
  alone: PairedDifference,
  together: Pick<Estimate, 'mean' | 'low' | 'high' | 'n'>,
  { p, ...judged }: { p: number } & Pick<DifferenceFigure, 'family' | 'isShown' | 'inputs'>,
  ofAlone: Pick<DifferenceFigure, 'inputs'> = {},
): DifferenceFigure => ({
  ...{ ...intervalOf(together), n: together.n },
  ...(alone.few ? { few: alone.few } : {}),
  ...{ sd: orNull(alone.sd), unit, label, family: judged.family },
  alone: { low: orNull(alone.low), high: orNull(alone.high), ...ofAlone },
  ...(judged.inputs ? { inputs: judged.inputs } : {}),
  ...{ p: orNull(p), isShown: judged.isShown, varianceRatio: orNull(alone.varianceRatio), matters: null },
})

/** One design less another over the same shifts, with its own interval at a confidence. */
export function differenceOf(of: Observations, against: Observations, confidence: number): PairedDifference {
  if (of.kind === 'share') return pairedShareDifference(against.values, of.values, confidence)
  if (of.overs === null || against.overs === null)
    return pairedDifference(against.values, of.values, confidence)
  return pairedRatioDifference(against.values, against.overs, of.values, of.overs, confidence)
}

/** A comparison with the words of the measure that it is of. */
export interface MeasuredComparison {
  measure: Pick<DifferenceFigure, 'unit' | 'label'>
  at: (confidence: number) => PairedDifference
  /** What draws of the inputs say of it; nothing where they are held fixed. */
  layout?: Layout | null
}

/** Judges comparisons together at the confidence of the family. */
export function judgedFigures(
  comparisons: readonly MeasuredComparison[],
  confidence: number,
): DifferenceFigure[] {
  const alone = comparisons.map(({ at }) => at(confidence))
  const judged = family(
    comparisons.map(({ at }, index) => ({ pValue: alone[index]!.pValue, at })),
    confidence,
  )
  const each = 1 - (1 - confidence) / comparisons.length
  return comparisons.map(({ measure, layout }, index) => {
    const { estimate, adjustedP: p, isShown } = judged[index]!
    const added = (of: Estimate, level: number) => addedByInputs(of, layout, measure.unit, level)
    const whole = added(estimate, each)
    const said = {
      ...{ p, family: comparisons.length, ...whole },
      // what luck alone would show, other inputs may turn round
      isShown: isShown && (!whole.inputs || isOffNothing(whole.inputs)),
    }
    return differenceFigure(measure, alone[index]!, estimate, said, added(alone[index]!, confidence))
  })
}
