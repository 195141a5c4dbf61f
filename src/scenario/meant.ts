/**
 * The nearest fix of a quantity that cannot be read. A quantity is suggested only where it means what was written; where several
 * are possible all of them are named as a question; else a unit is named, or the form by an example with another number.
 */
import { distance } from 'fastest-levenshtein'
import { numeralOf } from './numerals.js'
import { scaleOf, sizeOf } from './spellings.js'
import { type Dimension, dimensions, inSi, unitSize } from './units.js'
import { plainly } from './vaguely.js'

/** The nearest fix of `text`, which is no quantity of the dimension. */
export function quantityFix(text: string, dimension: Dimension): string {
  const written = text.slice(0, 200)
  // how many cases a shift has is not said here
  if (dimension === 'share' && /\bshift\s*$/.test(written))
    return `count it in cases: \`${countIn(written)} per CASES cases\`, with the number of cases in a shift instead of CASES`
  const said = plainly(written)
  if (said?.isGuess) return asGuess(said.text, dimension)
  if (said) return / to /.test(said.text) ? asked([said.text]) : quantityFix(said.text, dimension)
  return (
    ofNumeral(written, dimension) ??
    `write it like \`${exampleApart(dimensions[dimension].example, written)}\``
  )
}

/** The fix of a text that begins with a number; null where it does not, or nothing is near. */
function ofNumeral(written: string, dimension: Dimension): string | null {
  const numeral = numeralOf(written)
  if (numeral === null || numeral.rest.length > 40) return null
  const { rest } = numeral
  const readings = likely(numeral.readings).filter((digits) => Number.isFinite(Number(digits)))
  const meant = readings.map((digits) => sameQuantity(digits, rest, dimension))
  if (rest === '' && readings.length === 1) return withUnits(readings[0]!, dimension)
  if (meant.length > 0 && meant.every((each) => each !== null)) return asked(meant)
  const near = sameQuantity('1', rest, dimension) === null ? nearUnits(rest, dimension) : []
  return near.length > 0 ? `the nearest of these units: ${near.join(', ')}` : null
}

/** The number of stops that a text begins with, in digits or in words, or a word for it. */
function countIn(written: string): string {
  const [number] = /\d+(?:\.\d+)?/.exec(plainly(written)?.text ?? written) ?? []
  return number ?? 'STOPS'
}

/** Three zeros behind a comma part thousands: nobody writes decimals so where both are possible. */
const likely = (readings: readonly string[]): readonly string[] =>
  readings.length > 1 ? readings.filter((digits) => !/\.000$/.test(digits)) : readings

/** A guess of the same quantity, its ends left to those who know them. */
function asGuess(text: string, dimension: Dimension): string {
  const numeral = numeralOf(text)
  const { readings, rest } = numeral ?? { readings: [], rest: '' }
  const meant = likely(readings).map((digits) => sameQuantity(digits, rest, dimension))
  const known = [...new Set(meant.filter((each) => each !== null))]
  const [first] = known
  if (first === undefined) return quantityFix(text, dimension)
  return `${asked(known)} How well you know it can stand beside it: \`{guess: ${first}, between: [LOW, HIGH]}\`, which you believe with 90 % to lie between the two`
}

/** How people write "a shift" behind a number of something, as the source of a regular expression. */
export const aShift = '(?:/|\\bper\\b|\\ban?\\b|\\bin a\\b|\\beach\\b)\\s*shift'

const casesAShift = new RegExp(`^cases?\\s*${aShift}$`, 'i')

/** The same quantity as the format writes it; null where its meaning is not certain. */
function sameQuantity(digits: string, unit: string, dimension: Dimension): string | null {
  if (dimension === 'temperature') {
    const scale = scaleOf(unit)
    return scale === null ? null : `${digits} ${scale}`
  }
  if (dimension === 'case-rate' && casesAShift.test(unit)) return `${digits} ${unit}`
  // a share is best counted in the cases that were named
  const [, cases] =
    dimension === 'share' ? (/^(?:in|of|out of)\s*([1-9]\d{0,11})\s*cases?$/i.exec(unit) ?? []) : []
  if (cases !== undefined) return `${digits} per ${cases} cases`
  const size = sizeOf(dimension, unit)
  if (size === null) return null
  const value = Number(digits) * size
  const units = Object.keys(dimensions[dimension].units)
  // the same number where a unit has the same size; else the shortest text that means the same
  const equal = units.find((each) => isClose(unitSize(dimension, each), size))
  if (equal !== undefined) return `${digits} ${equal}`
  const texts = units.flatMap((each) => {
    const number = Number((value / unitSize(dimension, each)).toPrecision(12))
    return isClose(inSi(dimension, number, each), value) ? [`${number} ${each}`] : []
  })
  return texts.sort((a, b) => a.length - b.length)[0] ?? null
}

/** Equal but for the rounding of twelve digits. */
const isClose = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-11 * Math.abs(b)

/** A number without a unit: the units that it may be meant in. */
function withUnits(digits: string, dimension: Dimension): string {
  return asked(dimensions[dimension].usual.map((unit) => `${digits} ${unit}`))
}

/** What was meant, or which of several. */
function asked(texts: readonly string[]): string {
  const quoted = [...new Set(texts)].map((text) => `\`${text}\``)
  const [first] = quoted
  if (quoted.length === 1) return `did you mean ${first}?`
  return `which of these is meant: ${quoted.slice(0, -1).join(', ')} or ${quoted.at(-1)}?`
}

/** Units that differ from `unit` in a letter or so: not what it means, for one letter makes another unit. */
function nearUnits(unit: string, dimension: Dimension): string[] {
  const most = Math.max(1, Math.floor(unit.length / 3))
  return Object.keys(dimensions[dimension].units).filter(
    (each) => distance(each.toLowerCase(), unit.toLowerCase()) <= Math.min(most, each.length - 1),
  )
}

const numbers = /\d+(?:\.\d+)?/g

/** An example of the form whose number is none that was written, so that nobody takes it for the same quantity. */
export function exampleApart(example: string, written: string): string {
  const taken = new Set((written.match(numbers) ?? []).map(Number))
  const number = Number(example.match(numbers)![0])
  let other = number
  while (taken.has(other)) other *= 2
  return example.replace(String(number), String(other))
}
