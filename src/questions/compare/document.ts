/** The result document of a comparison: each design as a run would tell it, and what differs between them. */

import { type DifferenceFigure, differenceFigure } from '../../answers/difference-figure.js'
import { addedByInputs } from '../../answers/difference-with-inputs.js'
import { measureName, measuresOf, type Simulated } from '../../answers/figures.js'
import { estimatesOf, type LineResult, lineResult, orNull } from '../../answers/line-result.js'
import { beginOf, type RequirementJudged, type StudyDocument } from '../../answers/made.js'
import { judge, type Requirement } from '../../answers/requirement.js'
import type { InputsTold } from '../../answers/rests-on.js'
import type { DrawsAsked } from '../../answers/with-inputs.js'
import { currencyOf, unitName } from '../../catalogue/unit-name.js'
import { shiftsToShow } from '../../statistics/paired.js'
import type { TapeLayout } from '../../trade/tape-layout.js'
import { type BestAcross, withDraws } from './across-draws.js'
import type { Outcome } from './best.js'
import {
  type Compared,
  comparedMeasure,
  type Drawn,
  differenceAt,
  judgeTogether,
  layoutAt,
  type Pair,
} from './judge.js'
import { costBeforeFailures, runningCost, type Worth, worth } from './worth.js'

/** A design of the comparison: the scenario as it is, or with changes. */
export interface DesignResult extends LineResult {
  note: string
  /** Its changes by dotted path; of the base none. */
  set: Record<string, unknown>
  shifts: number
  requirements: RequirementJudged[]
  /** Its tape and closure by hand; null where nothing tapes. SI. */
  tapeLayout: TapeLayout | null
  /** Against the base; null of the base itself, and where nothing is priced. */
  worth: Worth | null
}

/** The design that was selected, and how. */
export interface BestResult {
  measure: string
  label: string
  unit: string
  isLargerBetter: boolean
  /** A design so near the best is as good as the best. */
  within: number
  /** What a design must keep to be chosen from, and how far off it counts as either. */
  among: { require: string; near: number; unit: string }[]
  confidence: number
  /** Null where no design keeps what is required, or the most shifts allowed did not tell. */
  pick: string | null
  designs: Record<string, Outcome<string>>
  /** Most shifts of each design, and all that were spent. */
  most: number
  spent: number
  /** How it fares where the inputs are others. Not there where inputs are held fixed. */
  across?: BestAcross
}

export interface CompareResult extends StudyDocument<'compare'> {
  target: number | null
  currency: string
  /** Null where no best one was asked for. */
  best: BestResult | null
  /** Measures whose comparisons are judged together, by name. */
  compared: string[]
  /** The base first, then the variants in their order. */
  variants: Record<string, DesignResult>
  /** By variant and measure, the variant less the base: first those that are judged together, then all others of the line, each alone. */
  differences: Record<string, Record<string, DifferenceFigure>>
  /** Draws of the inputs, the same for all designs, and shifts of each. Not there where inputs are held fixed. */
  drawn?: DrawsAsked
  /** Variants against one another, where that was asked for. */
  pairs: { of: string; against: string; differences: Record<string, DifferenceFigure> }[]
}

/** The name that the scenario itself has among its variants. */
export const baseName = 'base'

/** A design that was simulated; with the cases held over the shift, which the shifts do not have any more. */
export interface SimulatedDesign extends Drawn, Pick<DesignResult, 'note' | 'set' | 'held' | 'tapeLayout'> {
  name: string
}

/** What a comparison was asked for and what it is made of. */
interface CompareRecord extends Pick<CompareResult, 'made' | 'best' | 'warnings'> {
  /** The base first. */
  designs: readonly SimulatedDesign[]
  /** Names of the measures to be judged together. */
  measures: readonly string[]
  pairs: readonly Pair[]
  /** Of each design, in its own measures. */
  requirements: readonly (readonly Requirement[])[]
  /** Differences that matter to the user, by measure, in its SI unit. */
  matters: ReadonlyMap<string, number>
  told: Pick<CompareResult, 'about' | 'assumed'> & InputsTold
}

/** Makes the document of `command: compare`. */
export function compareResult(record: CompareRecord): CompareResult {
  const { scenario: base, draws } = record.designs[0]!
  const { differences, pairs } = differencesOf(record)
  return {
    ...beginOf({ command: 'compare' }, base, record),
    target: base.target ?? null,
    currency: currencyOf(base),
    best: record.best,
    compared: [...record.measures],
    variants: variantsOf(record, differences),
    differences,
    pairs,
    ...(draws ? { drawn: { draws: draws.draws, shifts: draws.shifts } } : {}),
    ...record.told,
    notes: [],
    shifts: 'shifts.csv',
  }
}

/** All differences: those from the base, and those of other pairs. */
function differencesOf(record: CompareRecord): Pick<CompareResult, 'differences' | 'pairs'> {
  const { designs, measures: compared, matters } = record
  const { confidence } = record.made
  const measures = [...measuresNamed(designs, compared), runningCost, costBeforeFailures]
  const judged = judgeTogether(designs, record.pairs, measures, confidence)
  const level = 1 - (1 - confidence) / judged.length
  const told: Pick<CompareResult, 'differences' | 'pairs'> = { differences: {}, pairs: [] }
  for (const pair of record.pairs) {
    const [of, against] = [designs[pair.of]!, designs[pair.against]!]
    const figures = Object.fromEntries(
      judged
        .filter((each) => each.pair === pair)
        .map(({ name, figure }) => [
          name,
          withDraws(withMatters(figure, matters.get(name), level), of, against, name),
        ]),
    )
    if (pair.against > 0) told.pairs.push({ of: of.name, against: against.name, differences: figures })
    else told.differences[of.name] = { ...figures, ...others(of, against, compared, confidence) }
  }
  return told
}

/** The designs with their figures, and what each is worth beside the base. */
function variantsOf(
  { designs, made, requirements }: CompareRecord,
  differences: CompareResult['differences'],
): CompareResult['variants'] {
  const how = { confidence: made.confidence, isPlain: made.plain }
  let yearlyCases: number | null = null
  const variants: CompareResult['variants'] = {}
  for (const [index, design] of designs.entries()) {
    const { name, note, set, scenario, shifts } = design
    const estimates = estimatesOf(design, how, design.draws)
    const output = estimates.get('output')!.mean
    if (index === 0) yearlyCases = scenario.money?.shifts ? orNull(output * scenario.money.shifts) : null
    const running = differences[name]?.[runningCost.name]
    const beforeFailures = differences[name]?.[costBeforeFailures.name] ?? null
    variants[name] = {
      note,
      set,
      shifts: shifts.length,
      requirements: requirements[index]!.map((each) => ({
        require: each.text,
        judgement: judge(each, estimates.get(measureName(each.measure))!),
        measure: measureName(each.measure),
      })),
      tapeLayout: design.tapeLayout,
      worth: running ? worth(design, designs[0]!, running, beforeFailures, yearlyCases) : null,
      ...lineResult(design, estimates, design.held),
    }
  }
  return variants
}

/** Measures by name with the words of the first design that has them. */
function measuresNamed(designs: readonly Simulated[], names: readonly string[]): Compared[] {
  const all = designs.flatMap(measuresOf)
  return names.map((name) => {
    const { label, unit } = all.find((measure) => measureName(measure) === name)!
    return comparedMeasure({ name, label, unit })
  })
}

/** Differences of all other measures of the line as a whole, each judged alone. */
function others(
  of: Drawn,
  against: Drawn,
  compared: readonly string[],
  confidence: number,
): Record<string, DifferenceFigure> {
  const currency = currencyOf(against.scenario)
  const measures = measuresOf(of)
    .filter(({ path, kind }) => path[0] === 'measures' && kind !== 'quantile')
    .map((measure) => comparedMeasure({ ...measure, name: measureName(measure) }))
    .filter(({ name }) => !compared.includes(name))
  return Object.fromEntries(
    measures.flatMap((measure) => {
      const found = differenceAt(measure, of, against, confidence)
      if (found === null) return []
      const added = addedByInputs(found, layoutAt(measure, of, against), measure.unit, confidence)
      const { name, label } = measure
      const words = { label, unit: unitName(measure.unit, currency) }
      const judged = { p: found.pValue, family: null, isShown: null, ...added }
      return [[name, differenceFigure(words, found, found, judged, added)]]
    }),
  )
}

/** With what the user says matters, where that is said: how many shifts would show it at this confidence. */
const withMatters = (
  figure: DifferenceFigure,
  amount: number | undefined,
  confidence: number,
): DifferenceFigure =>
  amount === undefined
    ? figure
    : {
        ...figure,
        matters: { amount, shifts: orNull(shiftsToShow(figure.sd ?? Number.NaN, amount, confidence)) },
      }
