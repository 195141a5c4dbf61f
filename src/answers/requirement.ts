/** Requirements of a result, such as `target-held >= 95 %`: met only where the whole interval says so. */
import { type Figure, wholeOf } from '../catalogue/figure.js'
import { misuse } from '../scenario/fault.js'
import { type Dimension, parseQuantity } from '../scenario/quantity.js'
import { measureNamed, type StudyMeasure } from './figures.js'

const signs = ['>=', '<=', '>', '<'] as const

export interface Requirement {
  /** As the user wrote it. */
  text: string
  measure: StudyMeasure
  sign: (typeof signs)[number]
  /** In the SI unit of the measure. */
  value: number
}

/** What a result says of a requirement: its interval lies wholly on the right side, wholly on the wrong one, or across. */
export type Judgement = 'met' | 'not-met' | 'not-shown'

/** Dimension in which a value of a measure's unit is written; null where it is a bare number. */
const dimensions: Partial<Record<string, Dimension>> = {
  'cases/s': 'case-rate',
  share: 'share',
  s: 'time',
  m: 'length',
  'm/case': 'length',
  kg: 'mass',
}

/** Reads `MEASURE SIGN VALUE`. Throws `Fault` `asked`; where the measure is unknown it calls `unknown` for the words. */
export function parseRequirement(
  text: string,
  measures: readonly StudyMeasure[],
  unknown: (name: string) => string,
): Requirement {
  const match = /^\s*(\S+?)\s*(>=|<=|>|<)\s*(.+?)\s*$/.exec(text)
  if (!match)
    throw misuse('it must be a measure, then >=, <=, > or <, then a value, such as "target-held >= 95 %"')
  const [, name, sign, written] = match as unknown as [string, string, Requirement['sign'], string]
  const measure = measureNamed(measures, name)
  if (!measure) throw misuse(unknown(name))
  return { text, measure, sign, value: valueWritten(written, measure) }
}

/** Reads a quantity of an option, SI. Throws `Fault` `asked`. */
export function quantityWritten(written: string, dimension: Dimension): number {
  const parsed = parseQuantity(written, dimension)
  if ('value' in parsed) return parsed.value
  throw misuse(`${parsed.rule}; ${parsed.fix}`)
}

/** Reads a value in the unit of a measure. Throws `Fault` `asked`. */
export function valueWritten(written: string, { unit }: Pick<StudyMeasure, 'unit'>): number {
  const dimension = dimensions[unit]
  if (dimension) return quantityWritten(written, dimension)
  // cases, counts and money of 1000 cases are numbers; a word after one says what it counts
  const match = /^([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*[A-Za-z/ ]*$/.exec(written)
  if (!match) throw misuse(`\`${written}\` is not a number of ${unit}`)
  return Number(match[1])
}

/** Whether a figure lies on the side of a value that is asked for. */
export const keeps = (figure: number, sign: Requirement['sign'], value: number): boolean =>
  ({ '>=': figure >= value, '<=': figure <= value, '>': figure > value, '<': figure < value })[sign]

/**
 * What the ends of an interval say, of the whole one where inputs were drawn; without an interval nothing is shown. One without width shows nothing either, of
 * a figure that was the same in all shifts, unless the scenario fixes it; the ends of a quantile are two of the shifts themselves,
 * which may be alike.
 */
export function judge(
  { sign, value, measure }: Pick<Requirement, 'sign' | 'value'> & { measure?: Pick<StudyMeasure, 'kind'> },
  figure: Pick<Figure, 'low' | 'high'> & Partial<Pick<Figure, 'isFixed' | 'inputs'>>,
): Judgement {
  const { low, high } = wholeOf(figure)
  if (low === null || high === null || Number.isNaN(low) || Number.isNaN(high)) return 'not-shown'
  if (low === high && !figure.isFixed && measure?.kind !== 'quantile') return 'not-shown'
  const [atLow, atHigh] = [keeps(low, sign, value), keeps(high, sign, value)]
  return atLow && atHigh ? 'met' : atLow || atHigh ? 'not-shown' : 'not-met'
}
