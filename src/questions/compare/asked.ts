/** What the options of a comparison ask of its figures, by the names of the measures that its designs have. */

import { amountWritten, measureAsked, requirementOf } from '../../answers/asked.js'
import { type Condition, chanceStops, meanCondition } from '../../answers/condition.js'
import { type DrawsOptions, drawsAsked } from '../../answers/draws.js'
import { measureName, measuresOf, type StudyMeasure } from '../../answers/figures.js'
import type { Requirement } from '../../answers/requirement.js'
import type { DrawsAsked } from '../../answers/with-inputs.js'
import { lineRow, type MeasureKey } from '../../catalogue/of-line.js'
import { currencyOf, unitName } from '../../catalogue/unit-name.js'
import { misuse } from '../../scenario/fault.js'
import { printable, shown } from '../../scenario/printable.js'
import type { Goal } from './best.js'
import type { Design } from './designs.js'
import type { BestResult } from './document.js'

export interface CompareOptions extends DrawsOptions {
  /** Names of the variants that are compared with the base; all of them where nobody says. */
  variants?: readonly string[] | undefined
  /** Measures to compare; the rate, the target, the time in the line and the cost where nobody says. */
  measure?: readonly string[] | undefined
  /** Differences that matter, such as `throughput 0.1 cases/min`. */
  matters?: readonly string[] | undefined
  /** Compare the variants with one another too. */
  pairs?: boolean | undefined
  /** Simulate until the best is known, such as `cost-per-1000`, or `highest equipment.sealer.jams`. */
  best?: string | undefined
  /** With `best`: a difference too small to matter, such as `0.5 EUR`. */
  within?: string | undefined
  /** With `best`: only designs that do this, such as `target-held >= 90 %`. */
  among?: readonly string[] | undefined
  /** `MEASURE SIGN VALUE`, such as `target-held >= 95 %`. */
  require?: readonly string[] | undefined
  /** Plain means and intervals, not narrowed by what is known of the arrivals. */
  plain?: boolean | undefined
}

export interface ComparisonAsked {
  /** Names of the measures that are judged together. */
  measures: string[]
  /** Of each design. */
  requirements: Requirement[][]
  /** The best one that is sought, and the words for it; null where none is. */
  goal:
    | (Omit<Goal, 'confidence' | 'most' | 'names'> & {
        measure: StudyMeasure
        among: BestResult['among']
      })
    | null
  /** Null: inputs are held fixed, or nothing is known of them. While the best is sought they are as given. */
  draws: DrawsAsked | null
  /** Amount of the difference that matters, by measure, in its SI unit. */
  matters: Map<string, number>
}

/** What is compared where nobody says: what a line is bought for, as far as it is known. */
const usualMeasures: readonly MeasureKey[] = ['throughput', 'target-held', 'time-in-system', 'cost-per-1000']

/** Reads the options. Throws `Fault` `asked`. */
export function comparisonAsked(
  options: CompareOptions,
  designs: readonly Design[],
  shifts: number,
): ComparisonAsked {
  const ofEach = designs.map(measuresOf)
  const [base] = ofEach as [StudyMeasure[]]
  const usual = usualMeasures.filter((name) => base.some((measure) => measureName(measure) === name))
  const { measure: named = [], require = [], matters = [] } = options
  const measures =
    named.length > 0 ? named.map((name) => measureName(comparable('--measure', name, base))) : usual
  return {
    measures: [...new Set(measures)],
    requirements: ofEach.map((known) => require.map((text) => requirementOf(text, known))),
    // all designs are drawn, those that are not chosen too: who would be best elsewhere is known of these alone
    draws: drawsAsked(
      options,
      { evidence: designs.flatMap((design) => design.evidence) },
      shifts,
      shiftsOfDraw,
    ),
    goal: goalOf(options, ofEach, currencyOf(designs[0]!.scenario)),
    matters: new Map(matters.map((text) => differenceWritten(text, base, measures))),
  }
}

/** Pairs of shifts differ by little luck, so that fewer of them do for each draw. */
const shiftsOfDraw = 10

/** What `--best`, `--within` and `--among` seek. */
function goalOf(
  { best, within, among = [] }: CompareOptions,
  ofEach: readonly (readonly StudyMeasure[])[],
  currency: string,
): ComparisonAsked['goal'] {
  if (best === undefined) {
    if (within !== undefined || among.length > 0)
      throw misuse('--within and --among belong to --best: add it, such as --best cost-per-1000')
    return null
  }
  if (within === undefined)
    throw misuse(
      '--best needs --within, a difference too small to matter, such as "0.5 EUR"; without it the study might never end',
    )
  const [, word, name = ''] = /^\s*(?:(highest|lowest)\s+)?(.*?)\s*$/.exec(best)!
  const measures = ofEach.map((known) => comparable('--best', name, known))
  const [measure] = measures as [StudyMeasure]
  if (measure.kind === 'share')
    throw misuse(
      `--best ${shown(best)}: ranking by a share of shifts takes very many shifts; choose by throughput, and require the share with --among "${name} >= 95 %"`,
    )
  const conditions = ofEach.map((known) => among.map((text) => conditionOf(text, known)))
  return {
    measure,
    measures,
    stops: ofEach.map(chanceStops),
    isLargerBetter: word === undefined ? isBetterMore(name) : word === 'highest',
    within: amountWritten(`--within ${shown(within)}`, within, measure),
    conditions,
    among: conditions[0]!.map(({ text, near, measure: of }) => ({
      require: text,
      near,
      unit: unitName(of.unit, currency),
    })),
  }
}

function isBetterMore(name: string): boolean {
  const row = lineRow(name)
  // nobody is taken to mean a share without saying so
  if (row && row.unit !== 'share' && row.better !== 'neither') return row.better === 'up'
  throw misuse(`--best ${shown(name)}: is more better, or less? Write "highest ${name}" or "lowest ${name}"`)
}

/** Shares count as either within two points, where nobody says. */
const usualNear = 0.02

/** `MEASURE SIGN VALUE`, and `within AMOUNT` for how near counts as either. */
function conditionOf(text: string, known: readonly StudyMeasure[]): Condition {
  const [, expression = '', near] = /^(.*?)(?:\s+within\s+(.+))?$/.exec(text.trim())!
  const requirement = requirementOf(expression, known, '--among')
  const { measure } = requirement
  const where = `--among ${shown(text)}`
  if (measure.kind === 'quantile')
    throw misuse(`${where}: a quantile has no value for a single shift; use \`target-held\` or \`output\``)
  if (measure.kind === 'share' && !(requirement.value > 0 && requirement.value < 1))
    throw misuse(
      `${where}: no number of shifts can prove 0 % or 100 %; give a value between, such as "${measureName(measure)} >= 99 %"`,
    )
  if (near !== undefined)
    return meanCondition(requirement, amountWritten(where, near, measure), chanceStops(known))
  if (measure.kind === 'share') return meanCondition(requirement, usualNear)
  const [unit = ''] = /\s*[A-Za-z%][^\d]*$/.exec(expression.replace(/^.*[<>]/, '')) ?? []
  throw misuse(
    `${where}: add the miss that does not matter, in the unit of the measure, such as "${printable(expression)} within 0.1${printable(unit)}"`,
  )
}

/** A measure whose difference has an interval. */
function comparable(option: string, name: string, known: readonly StudyMeasure[]): StudyMeasure {
  const measure = measureAsked(option, name, known)
  if (measure.kind === 'quantile')
    throw misuse(
      `${option} ${shown(name)}: there is no interval for the difference of two quantiles; compare \`output\` or \`target-held\``,
    )
  return measure
}

/** `MEASURE AMOUNT`, such as `throughput 0.1 cases/min`. */
function differenceWritten(
  text: string,
  known: readonly StudyMeasure[],
  measures: readonly string[],
): [string, number] {
  const [, name, amount] = /^\s*(\S+)\s+(.+?)\s*$/.exec(text) ?? []
  const where = `--matters ${shown(text)}`
  if (name === undefined || amount === undefined)
    throw misuse(`${where}: it must be a measure and an amount, such as "throughput 0.1 cases/min"`)
  const measure = comparable('--matters', name, known)
  if (!measures.includes(measureName(measure)))
    throw misuse(`${where}: \`${shown(name)}\` is not compared; add --measure ${measureName(measure)}`)
  return [measureName(measure), amountWritten(where, amount, measure)]
}
