/** Numbers of a log in the way of its country: which sign parts decimals is settled once the whole column is seen. */

import type { Delimiter } from './dialect.js'
import { grainOf } from './grain.js'
import type { Ledger } from './ledger.js'

/** Lengths as a clock shows them, and the size of each part, s. */
export const clockLengths = ['h:mm', 'h:mm:ss', 'm:ss'] as const
type ClockLength = (typeof clockLengths)[number]

/** Units of a column of lengths. */
export type LengthUnit = 's' | 'min' | 'h' | ClockLength

const sizes = {
  s: [1],
  min: [60],
  h: [3600],
  'h:mm': [3600, 60],
  'h:mm:ss': [3600, 60, 1],
  'm:ss': [60, 1],
} as const

/** Grain of lengths in `unit`, s: what they are whole in, or coarser where every one of many is; 0: finer than a second. */
export function grainOfLengths(lengths: readonly number[], unit: LengthUnit): number {
  const finest = sizes[unit].at(-1)!
  const isWhole = lengths.every((length) => Number.isNaN(length) || length % finest === 0)
  return Math.max(isWhole ? finest : 0, grainOf(lengths))
}

export type DecimalSign = 'comma' | 'point'

// thousands may be parted by the other sign, by an apostrophe or by a space, of which there are three
const shapes: Record<DecimalSign, RegExp> = {
  comma: /^[+-]?(?:\d{1,3}(?:[.'’ \u00a0\u202f]\d{3})+|\d+)(?:,\d+)?$/,
  point: /^[+-]?(?:\d{1,3}(?:[,'’ \u00a0\u202f]\d{3})+|\d+)(?:\.\d+)?$/,
}

function numberBy(sign: DecimalSign, text: string): number {
  if (text.length > 40 || !shapes[sign].test(text)) return Number.NaN
  const digits = text.replace(sign === 'comma' ? /[.'’ \u00a0\u202f]/g : /[,'’ \u00a0\u202f]/g, '')
  return Number(digits.replace(',', '.'))
}

/** Length of a text such as `1:05` in `unit`, s; NaN where it is none. */
export function clockLengthOf(text: string, unit: ClockLength): number {
  const parts = text.split(':')
  if (text.length > 40 || parts.length !== sizes[unit].length || !parts.every((part) => /^\d+$/.test(part)))
    return Number.NaN
  return parts.reduce((sum, part, index) => sum + Number(part) * sizes[unit][index]!, 0)
}

const isClockLength = (unit: LengthUnit): unit is ClockLength => unit.includes(':')

/** A column of numbers, read in both ways until it is settled which one is meant. */
export class NumberColumn {
  private readonly readings: Record<DecimalSign, number[]> = { comma: [], point: [] }
  /** Rows that only one sign explains. */
  private readonly only: Record<DecimalSign, number> = { comma: 0, point: 0 }
  /** Rows that mean two different numbers. */
  private either = 0

  constructor(private readonly unit: LengthUnit | null) {}

  /** Takes the next cell; false: it is no number whichever sign is meant. */
  take(text: string): boolean {
    const { unit } = this
    const isClock = unit !== null && isClockLength(unit)
    const of = (sign: DecimalSign) =>
      isClock ? clockLengthOf(text, unit) : numberBy(sign, text) * (unit === null ? 1 : sizes[unit][0])
    const [comma, point] = [of('comma'), of('point')]
    this.readings.comma.push(comma)
    this.readings.point.push(point)
    if (Number.isNaN(comma) && Number.isNaN(point)) return false
    if (Number.isNaN(point)) this.only.comma++
    else if (Number.isNaN(comma)) this.only.point++
    else if (comma !== point) this.either++
    return true
  }

  /**
   * The numbers, row by row; NaN where a row holds none. The sign of decimals is the one that the record says, or that explains most rows; where both do
   * alike, cells between semicolons speak for commas. What is not sure is told.
   */
  values(
    { file, column, said }: { file: string; column: string; said: DecimalSign | undefined },
    delimiter: Delimiter,
    ledger: Ledger,
  ): readonly number[] {
    const { comma, point } = this.only
    const usual = delimiter === ';' ? 'comma' : 'point'
    const sign = said ?? (comma === point ? usual : comma > point ? 'comma' : 'point')
    const isMixed = comma > 0 && point > 0
    if (isMixed || (said === undefined && comma === point && this.either > 0))
      ledger.tell('decimals', {
        file,
        group: column,
        what: [
          column,
          sign,
          isMixed ? ', though some rows have the other sign' : ', because the file does not show which',
        ],
      })
    return this.readings[sign]
  }
}
