/**
 * The nearest fix of a quantity that cannot be read. A quantity is suggested only where it means what was written; where several
 * are possible all of them are named as a question; else a unit is named, or the form by an example with another number.
 */
import { distance } from 'fastest-levenshtein'
import { numeralOf } from './numerals.js'
import { scaleOf, sizeOf } from './spellings.js'
import { type Dimension, dimensions, inSi, unitSize } from './units.js'

/** The nearest fix of `text`, which is no quantity of the dimension. */
export function quantityFix(text: string, dimension: Dimension): string {
  const written = text.slice(0, 200)
  // how many cases a shift has is not said here
  if (dimension === 'share' && /\bshift\s*$/.test(written))
    return `count it in cases: how many in how many, like \`${exampleApart('36 in 40000 cases', written)}\``
  const numeral = numeralOf(written)
  if (numeral !== null && numeral.rest.length <= 40) {
    const { rest } = numeral
    const readings = numeral.readings.filter((digits) => Number.isFinite(Number(digits)))
    const meant = readings.map((digits) => sameQuantity(digits, rest, dimension))
    if (rest === '' && readings.length === 1) return withUnits(readings[0]!, dimension)
    if (meant.length > 0 && meant.every((each) => each !== null)) return asked(meant)
    const near = sameQuantity('1', rest, dimension) === null ? nearUnits(rest, dimension) : []
    if (near.length > 0) return `the nearest of these units: ${near.join(', ')}`
  }
  return `write it like \`${exampleApart(dimensions[dimension].example, written)}\``
}

/** The same quantity as the format writes it; null where its meaning is not certain. */
function sameQuantity(digits: string, unit: string, dimension: Dimension): string | null {
  if (dimension === 'temperature') {
    const scale = scaleOf(unit)
    return scale === null ? null : `${digits} ${scale}`
  }
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
