/** Values of a scenario in all their forms, each read with what it rests on. */
import { isBetween } from './between.js'
import { countAsValue, isCount, readChance, readInTime, valueOfCount } from './counts.js'
import { type Guessed, readGuess } from './guess.js'
import { isGuess, type Known, type Spread } from './known.js'
import { type Dimension, dimensions, parseQuantity } from './quantity.js'
import { fault, type Read } from './reading.js'
import { beyondEnds } from './units.js'

/** A value, what it rests on (null: taken as exact), and how the file would write it if nothing but itself were known. */
export interface Told<T> {
  value: T
  known: Known | null
  fixed: unknown
}

/** Bounds in SI; `above` excludes its end, `from` and `to` include theirs. */
export interface Bounds {
  above?: number
  from?: number
  to?: number
}

/** The bound that `value` breaks, in words with the SI unit; null when it keeps them all. */
function outside(value: number, bounds: Bounds, unit: string): string | null {
  const bound = (words: string, end: number) => `${words} ${end} ${unit}`.trim()
  if (bounds.above !== undefined && !(value > bounds.above))
    return bounds.above === 0 ? 'above 0' : bound('more than', bounds.above)
  if (bounds.from !== undefined && !(value >= bounds.from))
    return bounds.from === 0 ? 'not negative' : bound('at least', bounds.from)
  if (bounds.to !== undefined && !(value <= bounds.to)) return bound('at most', bounds.to)
  return Number.isFinite(value) ? null : 'finite'
}

function kept(value: number, bounds: Bounds, dimension: Dimension): Read<number> {
  const { name, si } = dimensions[dimension]
  const rule = outside(value, bounds, si)
  if (rule) return fault('out-of-range', `must be ${rule}`, `use a value that is ${rule}`)
  const beyond = beyondEnds(dimension, value)
  if (beyond === null) return { value }
  const { words, end } = beyond
  return fault(
    'out-of-range',
    `${name} of a line is ${words}`,
    `check the unit; the nearest allowed value is ${end} ${si}`.trim(),
  )
}

/** A quantity without evidence, in SI. */
export function readExact(written: unknown, dimension: Dimension, bounds: Bounds): Read<number> {
  if (dimension === 'time' && isBetween(written))
    return fault(
      'not-a-quantity',
      'a range of two times is allowed only for a time that varies: here one time is needed',
      'give one time, or a guess: `guess` with the most likely value, `between` with the two',
    )
  const parsed = parseQuantity(written, dimension)
  if (!('value' in parsed)) return fault(parsed.code, parsed.rule, parsed.fix)
  return kept(parsed.value, bounds, dimension)
}

/** A guess, or the value alone. */
export function guessedOr<T>(written: unknown, how: Guessed<T>): Read<Told<T>> {
  if (isGuess(written)) {
    const guess = readGuess(written, how)
    return 'fault' in guess ? guess : { value: { ...guess.value, fixed: written.guess } }
  }
  const exact = how.read(written)
  return 'fault' in exact ? exact : { value: { value: exact.value, known: null, fixed: written } }
}

/** What is believed of a guess: a share of a whole stays one, what cannot be negative stays above 0. */
function spreadOf(dimension: Dimension, { above, from, to }: Bounds): Spread {
  if (dimension === 'temperature' || !((above ?? from ?? -1) >= 0)) return 'normal'
  return dimension === 'share' && to !== undefined && to <= 1 ? 'logit-normal' : 'lognormal'
}

/** A quantity with what it rests on, in SI. */
export function readQuantity(written: unknown, dimension: Dimension, bounds: Bounds): Read<Told<number>> {
  const { above, from, to } = bounds
  const ends = { least: from ?? above ?? -Infinity, most: to ?? Infinity }
  if (!isCount(written) || (dimension !== 'share' && dimension !== 'case-rate')) {
    return guessedOr(written, {
      read: (each) => readExact(each, dimension, bounds),
      numberOf: (value) => value,
      spread: spreadOf(dimension, bounds),
      ends,
    })
  }
  const count = dimension === 'share' ? readChance(written, ends) : readInTime(written, 'rate', 0, ends)
  if ('fault' in count) return count
  const value = kept(valueOfCount(count.value), bounds, dimension)
  if ('fault' in value) return value
  return { value: { value: value.value, known: count.value, fixed: countAsValue(count.value) } }
}

/** Regular expression source of a number in per cent. */
export const percentPattern = '^\\s*(\\d+\\.?\\d*|\\.\\d+)\\s*%\\s*$'

/** Whether a text is a number in per cent. */
export const isPercent = (written: unknown): written is string =>
  typeof written === 'string' && written.length <= 200 && new RegExp(percentPattern).test(written)

/** A bare number with what it rests on, from `least` to `most`; `meant` says which number is meant by what was written. */
export function readNumber(
  written: unknown,
  least: number,
  most: number,
  meant = (each: unknown): unknown => each,
): Read<Told<number>> {
  const read = (given: unknown): Read<number> => {
    const each = meant(given)
    if (each === undefined) return fault('not-a-quantity', 'a number', 'add a number')
    if (typeof each !== 'number' || Number.isNaN(each))
      return fault('wrong-type', 'must be a number', 'write a number here')
    if (each >= least && each <= most) return { value: each }
    const bound = each < least ? `at least ${least}` : `at most ${most}`
    return fault('out-of-range', `must be ${bound}`, `use a value of ${bound}`)
  }
  const spread = least < 0 ? 'normal' : 'lognormal'
  return guessedOr(written, { read, numberOf: (value) => value, spread, ends: { least, most } })
}
