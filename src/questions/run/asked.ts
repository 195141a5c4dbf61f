/** What a run is asked for: precision and requirements, by the names of the measures of its line. */

import { measureAsked, requirementOf } from '../../answers/asked.js'
import { type DrawsOptions, drawsAsked } from '../../answers/draws.js'
import { type StudyMeasure, studyMeasures } from '../../answers/figures.js'
import { quantityWritten, type Requirement } from '../../answers/requirement.js'
import type { DrawsAsked } from '../../answers/with-inputs.js'
import type { MeasureKey } from '../../catalogue/of-line.js'
import type { Line } from '../../line/line.js'
import { misuse, readAt } from '../../scenario/fault.js'
import { usualShifts } from '../../scenario/limits.js'
import { shown } from '../../scenario/printable.js'
import type { ReadScenario } from '../../scenario/read.js'

export interface RunOptions extends DrawsOptions {
  /** Simulate until plus-minus is at most this share of the figures `of`, such as `1 %`; `shifts` of the scenario are then the most. */
  precision?: string | undefined
  /** Measures that `precision` is about; the throughput where nobody says. */
  of?: readonly string[] | undefined
  /** `MEASURE SIGN VALUE`, such as `target-held >= 95 %`, or `precision`. */
  require?: readonly string[] | undefined
  /** Plain means and intervals, not narrowed by what is known of the arrivals. */
  plain?: boolean | undefined
  /** Keep the cases in each place over the shift; true where nobody says. */
  held?: boolean | undefined
  /** Record some minutes of an ordinary shift; true where nobody says. */
  moment?: boolean | undefined
}

export interface RunAsked {
  precision: { share: number; of: readonly StudyMeasure[]; most: number } | null
  /** `precision` stands for the requirement that the precision asked for was reached. */
  requirements: readonly (Requirement | 'precision')[]
  /** Null: inputs are held fixed, or nothing is known of them. */
  draws: DrawsAsked | null
}

/** Reads the options against the measures that this line has. Throws `Fault` `asked`. */
export function runAsked(options: RunOptions, loaded: ReadScenario, { columns }: Line): RunAsked {
  const { asked, scenario } = loaded
  const { of: named = [], require = [] } = options
  const measures = studyMeasures(columns, scenario.shift.campaign)
  if (named.length > 0 && options.precision === undefined)
    throw misuse('--of belongs to --precision: add it, such as --precision "1 %"')
  const of = (named.length > 0 ? named : ['throughput' satisfies MeasureKey]).map((name) =>
    measureAsked('--of', name, measures),
  )
  const most = asked.shifts ?? usualShifts.untilKnown
  return {
    draws: drawsAsked(options, loaded, options.precision === undefined ? scenario.study.shifts : most),
    requirements: require.map((text) => requirement(text, measures, options)),
    precision: options.precision === undefined ? null : { share: shareOf(options.precision), of, most },
  }
}

/** Reads a share, such as `1 %`, above 0 and below 1. */
const shareOf = (text: string): number =>
  readAt(`--precision ${shown(text)}`, () => {
    const share = quantityWritten(text, 'share')
    if (share > 0 && share < 1) return share
    throw misuse('it must be above 0 % and below 100 %, such as "1 %"')
  })

function requirement(
  text: string,
  measures: readonly StudyMeasure[],
  { precision }: RunOptions,
): Requirement | 'precision' {
  if (text.trim() !== 'precision') return requirementOf(text, measures)
  if (precision === undefined) throw misuse('--require precision needs --precision, such as "1 %"')
  return 'precision'
}
